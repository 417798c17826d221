import { html, nothing } from 'lit';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { practiceWords } from '../../words/practice.ts';
import { problemWords } from '../../words/problem.ts';
import type { PracticeRoom } from './practice-room.ts';
import type { WarmUpRun } from './warm-up-run.ts';
import { warmUpStyles } from './warm-up-styles.ts';

const words = practiceWords.page;

const Base = element({
  room: data<PracticeRoom>(),
  run: data<WarmUpRun>(),
  /** What was done last, in words. */
  status: state(''),
});

/** How it goes on once the answer is there: the next problem or pass, back, a sheet, the code. */
export class WrRunFoot extends Base {
  static override styles = [sharedStyles, warmUpStyles];

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  protected override render(): unknown {
    const { room, run } = this;
    return html`<div class="row">
      ${this.#onward()}
      ${room.canGoBack ? html`<wr-button look="quiet" @click=${() => room.back()}>${words.back}</wr-button>` : nothing}
      <wr-button look="quiet" @click=${this.#toSheet}>${problemWords.toSheet}</wr-button>
      ${
        run.item.code === undefined
          ? nothing
          : html`<wr-button look="quiet" @click=${this.#copyCode}>${problemWords.copyCode}</wr-button>`
      }
      <span role="status" class="soft">${this.status}</span>
    </div>`;
  }

  /** In an exchange the next pass is what comes next, elsewhere the next problem. */
  #onward(): unknown {
    const { room, run } = this;
    const { over, whole, step, isReopened, about } = run;
    if (isReopened) return html`<wr-button look="main" @click=${() => room.leave()}>${words.leaveDeal}</wr-button>`;
    const isExchange = about.isExchange === true;
    const goOn =
      over || !whole || room.sitting !== null
        ? nothing
        : html`<wr-button look=${isExchange ? 'main' : 'plain'} @click=${() => run.goOn()}
            >${step === 'courtesy' ? words.finish : words.goOn}</wr-button
          >`;
    const next =
      isExchange && !over
        ? nothing
        : html`<wr-button look="main" @click=${() => room.next()}>${words.skipDone}</wr-button>`;
    return html`${next} ${goOn}`;
  }

  #toSheet(): void {
    this.room.sheets.add([this.run.item]);
    this.status = problemWords.onSheet;
  }

  async #copyCode(): Promise<void> {
    try {
      await navigator.clipboard.writeText(this.run.item.code ?? '');
      this.status = problemWords.copied;
    } catch {
      this.status = problemWords.notCopied;
    }
  }
}

customElements.define('wr-run-foot', WrRunFoot);

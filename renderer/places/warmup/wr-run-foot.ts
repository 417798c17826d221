import { html, nothing } from 'lit';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { PracticeRoom } from './practice-room.ts';
import type { WarmUpRun } from './warm-up-run.ts';
import { warmUpStyles } from './warm-up-styles.ts';

const words = warmUpWords.run;

const Base = element({
  room: data<PracticeRoom>(),
  run: data<WarmUpRun>(),
  /** What was done last, in words. */
  status: state(''),
});

/** The actions once the answer is there: play on, the next deal, a sheet, the code. */
export class WrRunFoot extends Base {
  static override styles = [sharedStyles, warmUpStyles];

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  protected override render(): unknown {
    const { answer, over, item } = this.run;
    return html`<div class="row">
      ${this.#goOn()}
      <wr-button look="main" ?disabled=${answer === null && !over} @click=${() => this.room.next()}
        >${words.another}</wr-button
      >
      <wr-button look="quiet" @click=${this.#toSheet}>${words.toSheet}</wr-button>
      ${
        item.code === undefined
          ? nothing
          : html`<wr-button look="quiet" @click=${this.#copyCode}>${words.copyCode}</wr-button>`
      }
      <span role="status" class="soft">${this.status}</span>
    </div>`;
  }

  #goOn(): unknown {
    const { answer, over, whole, step } = this.run;
    if (over || !whole) return nothing;
    return html`<wr-button ?disabled=${answer === null} @click=${() => this.run.goOn()}
      >${step === 'courtesy' ? words.finish : words.goOn}</wr-button
    >`;
  }

  #toSheet(): void {
    this.room.sheets.add([this.run.item]);
    this.status = words.onSheet;
  }

  async #copyCode(): Promise<void> {
    try {
      await navigator.clipboard.writeText(this.run.item.code ?? '');
      this.status = words.copied;
    } catch {
      this.status = words.notCopied;
    }
  }
}

customElements.define('wr-run-foot', WrRunFoot);

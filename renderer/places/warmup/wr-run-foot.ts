import { html, nothing } from 'lit';
import { data, element } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { practiceWords } from '../../words/practice.ts';
import type { PracticeRoom } from './practice-room.ts';
import type { WarmUpRun } from './warm-up-run.ts';
import { warmUpStyles } from './warm-up-styles.ts';
import './wr-make-problem.ts';

const words = practiceWords.page;

const Base = element({
  room: data<PracticeRoom>(),
  run: data<WarmUpRun>(),
});

/** How it goes on once the answer is there: the next problem or pass, back, a problem for others. */
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
      ${run.over ? nothing : html`<wr-make-problem .item=${run.itemNow}></wr-make-problem>`}
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
}

customElements.define('wr-run-foot', WrRunFoot);

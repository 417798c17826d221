import { html, nothing } from 'lit';
import { PASS_SIZE, PASS_SIZES } from '../../../core/exchange/steps.ts';
import { blindNow, mayStop } from '../../../core/warmup/warm-up.ts';
import { data, element, numeric, text } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { columnStyles } from '../../tokens/layout.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { PracticeRoom } from './practice-room.ts';
import type { WarmUpRun } from './warm-up-run.ts';
import { warmUpStyles } from './warm-up-styles.ts';

const words = warmUpWords.run;

const Base = element({
  room: data<PracticeRoom>(),
  run: data<WarmUpRun>(),
  /** Why the choice is illegal, in words. */
  refusal: text(),
  /** Tiles chosen in the rack. */
  count: numeric(),
  /** Tiles to be handed on unseen. */
  blind: numeric(),
});

/** How many tiles go unseen, how many are chosen, and the buttons that settle the pass. */
export class WrAskPass extends Base {
  static override styles = [sharedStyles, warmUpStyles, columnStyles];

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  protected override render(): unknown {
    const { step, warmUp } = this.run;
    const courtesy = step === 'courtesy';
    const due = PASS_SIZE - this.blind;
    return html`<p role="status">${courtesy ? words.courtesyChosen(this.count) : words.chosen(this.count, due)}</p>
      ${blindNow(warmUp) === 0 ? nothing : this.#blindChoice()}
      <p class="bad" role="alert">${this.refusal}</p>
      <div class="row">
        <wr-button
          look="main"
          ?disabled=${!courtesy && this.count !== due}
          @click=${() => emit(this, 'pass-chosen', null)}
          >${words.give(courtesy ? this.count : due)}</wr-button
        >
        ${mayStop(warmUp) ? html`<wr-button @click=${() => this.run.stopped()}>${words.stop}</wr-button>` : nothing}
        <slot></slot>
      </div>`;
  }

  #blindChoice(): unknown {
    return html`<wr-choice
      label=${words.blind}
      .options=${PASS_SIZES.map((blind) => ({ value: `${blind}`, label: `${blind}` }))}
      .value=${String(this.blind)}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => emit(this, 'blind-chosen', Number(detail.value))}
    ></wr-choice>`;
  }
}

customElements.define('wr-ask-pass', WrAskPass);

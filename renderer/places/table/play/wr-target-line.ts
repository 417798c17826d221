import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { emit } from '../../../parts/emit.ts';
import '../../../parts/wr-button.ts';
import '../../../parts/wr-explain.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { percent } from '../../../words/numbers.ts';
import { playWords } from '../../../words/play.ts';
import { tableWords } from '../../../words/table.ts';
import type { HandView } from '../../../worker/calls.ts';
import { handName } from '../hand-name.ts';
import { reachExplained } from '../hand-row.ts';
import { panelStyles } from '../panel-styles.ts';
import { type TargetAdvice, targetAdvice } from './target.ts';

const words = playWords.target;

/** The hand aimed at, and when to change it. The first best hand is the target until the person takes another. */
export class WrTargetLine extends LitElement {
  static override properties = {
    app: { attribute: false },
    target: { state: true },
    game: { state: true },
  };

  declare app: AppContext;
  /** The line aimed at; null before the first reading. */
  declare protected target: { readonly line: string; readonly name: string } | null;
  declare protected game: string;

  static override styles = [
    sharedStyles,
    panelStyles,
    css`
      p {
        max-width: none;
        --explain-wrap: normal;
      }

      wr-explain {
        max-width: calc(100% + 0.5em);
        margin-inline-start: -0.5em;
      }

      .line {
        min-height: var(--target);
      }
    `,
  ];

  constructor() {
    super();
    this.target = null;
    this.game = '';
    new StoreController(this, () => [this.app.analysis]);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    const { session, analysis } = this.app;
    if (this.game !== session.id) {
      this.game = session.id;
      this.target = null;
    }
    const [best] = analysis.reading.value?.byReach ?? [];
    if (this.target === null && best !== undefined) this.target = { line: best.line, name: handName(best) };
  }

  protected override render(): unknown {
    const { value } = this.app.analysis.reading;
    if (value === null) return nothing;
    const advice = targetAdvice(this.target?.line ?? null, value);
    const { best, verdict } = advice;
    return html`<div class="row line">
      <p aria-live="polite">${best === null ? words.none : this.#told(advice, best)}</p>
      ${
        best !== null && verdict !== 'stay'
          ? html`<wr-button @click=${() => this.#aim(best)}>${words.aim(handName(best))}</wr-button>`
          : nothing
      }
    </div>`;
  }

  /** The advice, which explains the reach that it names last. */
  #told(advice: TargetAdvice, best: HandView): unknown {
    const reach = advice.verdict === 'stay' ? advice.reach : best.reach;
    return html`<wr-explain .value=${this.#sentence(advice, best)} .heading=${tableWords.reading.reachHeading}
      >${reachExplained(reach)}</wr-explain
    >`;
  }

  #aim(hand: HandView): void {
    this.target = { line: hand.line, name: handName(hand) };
    emit(this, 'advice-taken', null);
  }

  #sentence({ verdict, reach }: TargetAdvice, best: HandView): string {
    const name = this.target?.name ?? '';
    const [to, is] = [handName(best), percent(best.reach)];
    if (verdict === 'dead') return words.dead(name, to, is);
    return verdict === 'change' ? words.change(name, percent(reach), to, is) : words.stay(name, percent(reach));
  }
}

customElements.define('wr-target-line', WrTargetLine);

declare global {
  interface HTMLElementTagNameMap {
    'wr-target-line': WrTargetLine;
  }
}

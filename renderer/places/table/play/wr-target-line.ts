import { css, html, nothing, type PropertyValues } from 'lit';
import type { HandDocument } from '../../../../core/engine/documents.ts';
import { data, element, state } from '../../../parts/element.ts';
import { emit } from '../../../parts/emit.ts';
import '../../../parts/wr-button.ts';
import '../../../parts/wr-explain.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { percent } from '../../../words/numbers.ts';
import { playWords } from '../../../words/play.ts';
import { tableWords } from '../../../words/table.ts';
import { reachExplained } from '../hand-row.ts';
import { panelStyles } from '../panel-styles.ts';
import { type TargetAdvice, targetAdvice } from './target.ts';

const words = playWords.target;

const Base = element({
  app: data<AppContext>(),
  /** The line aimed at; null before the first reading. */
  target: state<{ readonly line: string; readonly name: string } | null>(null),
  game: state(''),
});

/** The hand aimed at, and when to change it. The first best hand is the target until the person takes another. */
export class WrTargetLine extends Base {
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

      /* Kept free for the first reading, too, so that nothing below moves when it comes. */
      .line {
        min-height: var(--target);
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.app.analysis]);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    const { session, analysis } = this.app;
    if (this.game !== session.id) {
      this.game = session.id;
      this.target = null;
    }
    const [best] = analysis.reading.value?.hands ?? [];
    if (this.target === null && best !== undefined) this.target = { line: best.line, name: best.name };
  }

  protected override render(): unknown {
    const { value } = this.app.analysis.reading;
    if (value === null) return html`<div class="row line"></div>`;
    const advice = targetAdvice(this.target?.line ?? null, value);
    const { best, verdict } = advice;
    return html`<div class="row line">
      <p aria-live="polite">${best === null ? words.none : this.#standingWords(advice, best)}</p>
      ${
        best !== null && verdict !== 'stay'
          ? html`<wr-button @click=${() => this.#aim(best)}>${words.aim(best.name)}</wr-button>`
          : nothing
      }
    </div>`;
  }

  /** The advice, which explains the reach that it names last. */
  #standingWords(advice: TargetAdvice, best: HandDocument): unknown {
    const reach = advice.verdict === 'stay' ? advice.reach : best.reach;
    return html`<wr-explain .value=${this.#sentence(advice, best)} .heading=${tableWords.reading.reachHeading}
      >${
        advice.verdict === 'change'
          ? html`<p>
              ${words.reaches(this.target?.name ?? '', percent(advice.reach), best.name, percent(best.reach))}
            </p>`
          : nothing
      }
      <p>${tableWords.reading.alone} ${reachExplained(reach)}</p></wr-explain
    >`;
  }

  #aim(hand: HandDocument): void {
    this.target = { line: hand.line, name: hand.name };
    emit(this, 'advice-taken', null);
  }

  #sentence({ verdict }: TargetAdvice, best: HandDocument): string {
    const name = this.target?.name ?? '';
    if (verdict === 'dead') return words.dead(name, best.name);
    return verdict === 'change' ? words.change(name, best.name) : words.stay(name);
  }
}

customElements.define('wr-target-line', WrTargetLine);

import { css, html, nothing } from 'lit';
import type { AdviceDocument, AdvisedDocument } from '../../../../core/engine/documents.ts';
import { isRight } from '../../../../core/review/decision.ts';
import { data, element, state } from '../../../parts/element.ts';
import { tileRow } from '../../../parts/tile/tile-row.ts';
import '../../../parts/wr-button.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { isOwnDead } from '../aids.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { playWords } from '../../../words/play.ts';
import { panelStyles } from '../panel-styles.ts';
import { actionWords, buttonOf, riskWords, takeAdvice } from './advised.ts';
import { costPart } from './cost-part.ts';

const words = playWords.advice;

/** Choices that are shown before more are asked for; their room is kept while they are weighed. */
const FIRST_CHOICES = 3;

const Base = element({
  app: data<AppContext>(),
  more: state(false),
  refusal: state(''),
});

/** What else can be done in play, best first, each with what it costs. Sends what `takeAdvice` sends. */
export class WrAdviceList extends Base {
  static override styles = [
    sharedStyles,
    panelStyles,
    css`
      .head {
        min-height: calc(var(--target) + 1px);
        border-bottom: 1px solid var(--hairline);
      }

      ol {
        min-height: calc(${FIRST_CHOICES} * (var(--target) + 2 * var(--space-1) + 1px));
      }

      li {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 var(--space-3);
        min-height: calc(var(--target) + 2 * var(--space-1) + 1px);
        padding-inline: var(--space-2);
        border-bottom: 1px solid var(--hairline);
      }

      li wr-button {
        margin-inline-start: auto;
      }

      .equal {
        background: var(--accent-wash);
      }

      .tiles {
        --tile-width: 30px;
        display: inline-flex;
        gap: 3px;
      }

      .cost {
        --explain-wrap: normal;
        font-size: var(--text-small);
      }

      wr-explain p + p {
        margin-top: var(--space-2);
      }

      .refusal:empty {
        display: none;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.app.session, this.app.analysis]);
  }

  protected override updated(): void {
    if (this.more) this.app.analysis.adviseAll();
  }

  protected override render(): unknown {
    const { status, value } = this.app.analysis.advice;
    if (status === 'none') return nothing;
    // The first one is offered above, once it is weighed.
    const below = this.app.analysis.waits || isOwnDead(this.app) ? 0 : 1;
    const others = status === 'done' ? (value?.choices.slice(below) ?? []).toSorted(byCost) : [];
    const shown = this.more ? others : others.slice(0, FIRST_CHOICES);
    return html`<section aria-label=${words.otherwise} aria-busy=${status === 'pending'}>
      <div class="row spread head">
        <h2>${words.otherwise}</h2>
        ${
          others.length > FIRST_CHOICES
            ? html`<wr-button look="quiet" @click=${this.#toggleMore}
                >${this.more ? words.fewer : words.more}</wr-button
              >`
            : nothing
        }
      </div>
      <ol>
        ${value === null ? nothing : shown.map((choice) => html`<li class=${groundOf(choice)}>${this.#row(choice, value)}</li>`)}
      </ol>
      <p class="refusal" role="alert">${this.refusal}</p>
    </section>`;
  }

  #toggleMore(): void {
    this.more = !this.more;
  }

  #row(choice: AdvisedDocument, { offered }: AdviceDocument): unknown {
    const { session } = this.app;
    const what = actionWords(session, choice);
    const [name, label] = buttonOf(session, choice);
    return html`${choice.tiles.length === 0 ? nothing : tileRow(choice.tiles)}
      ${what === '' ? nothing : html`<strong>${what}</strong>`} ${isOwnDead(this.app) ? nothing : costPart(choice)}
      <span class="soft">${riskWords(choice)}</span> ${
        name === ''
          ? nothing
          : html`<wr-button label=${label} @click=${() => (this.refusal = takeAdvice(session, this, choice, offered))}
              >${name}</wr-button
            >`
      }`;
  }
}

/** By what they cost, the least first; what is not known yet comes last, in the order of the ranking. */
function byCost(one: AdvisedDocument, other: AdvisedDocument): number {
  const known = ({ verdict, cost }: AdvisedDocument): number => (verdict === null ? Infinity : cost);
  const [first, second] = [known(one), known(other)];
  return first === second ? 0 : first - second;
}

function groundOf({ verdict }: AdvisedDocument): string {
  return verdict !== null && isRight(verdict) ? 'equal' : '';
}

customElements.define('wr-advice-list', WrAdviceList);

import { css, html, nothing } from 'lit';
import type { GameRecord } from '../../../core/game/record.ts';
import type { Decision } from '../../../core/review/decision.ts';
import { PART_WORDS, wholeLedger } from '../../../core/review/ledger.ts';
import type { Review } from '../../../core/review/review.ts';
import { AGAINST, decidedSentence, momentsOf, NOTHING_COST, startSentence } from '../../../core/review/story.ts';
import { paperStyles } from '../../charts/chart-styles.ts';
import { data, element } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import { howCounted } from '../../parts/how-counted.ts';
import '../../parts/wr-button.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { foldStyles } from '../../tokens/fold.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { countedWords } from '../../words/counted.ts';
import { lookbackWords } from '../../words/lookback.ts';
import { signed } from '../../words/numbers.ts';
import { choicesTable } from './choices-table.ts';
import { bestDone, decisionName, done, forPaper, momentTitle, quoted } from './decision-words.ts';
import { lookbackStyles } from './lookback-styles.ts';
import { addressOfItem } from '../warmup/item-route.ts';
import '../warmup/wr-make-problem.ts';
import { practiceItem } from './practice-item.ts';
import { rackThen } from './tile-row.ts';

const words = lookbackWords.story;

/** What `choice-wanted` carries: the choice to be shown in the list of all. */
export interface ChoiceWanted {
  readonly decision: Decision;
}

const Base = element({
  review: data<Review>(),
  record: data<GameRecord>(),
});

/**
 * The look-back as a short story: where such a game starts and what decided it, the parts in one line, and the few
 * moments that mattered. Sends `choice-wanted`.
 */
export class WrStory extends Base {
  static override styles = [
    sharedStyles,
    placeStyles,
    lookbackStyles,
    foldStyles,
    paperStyles,
    css`
      :host {
        gap: var(--space-4);
      }

      :host > p {
        max-width: none;
      }

      .parts {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-1) var(--space-5);
        padding: 0;
        list-style: none;
      }

      .parts strong {
        font-size: var(--text-lead);
        font-variant-numeric: tabular-nums;
      }

      article {
        display: grid;
        grid-template-columns: minmax(0, 1fr) max-content;
        align-items: start;
        gap: var(--space-2) var(--space-4);
        padding: clamp(12px, 3cqi, var(--space-4));
        background: var(--sheet);
        border: 1px solid var(--hairline);
        border-radius: var(--round-large);
      }

      article > .told {
        display: flex;
        flex-direction: column;
        gap: var(--space-2);
        min-width: 0;
      }

      .ways {
        display: flex;
        flex-direction: column;
        align-items: start;
      }

      /* In line with the link, whose words begin at its edge. */
      .ways wr-button,
      .ways wr-make-problem {
        --room: 0px;
      }

      .label {
        color: var(--ink-soft);
      }

      .pair {
        gap: var(--space-2) var(--space-5);
      }

      .pair > span {
        display: inline-flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-2);
      }

      @container (width < 34rem) {
        article {
          grid-template-columns: minmax(0, 1fr);
        }

        .ways {
          flex-flow: row wrap;
          gap: 0 var(--space-6);
        }
      }

      @media print {
        article {
          padding: 4pt 0;
          border: 0;
          border-top: 1px solid var(--hairline);
          border-radius: 0;
          background: none;
          break-inside: avoid;
        }

        .ways {
          display: none;
        }
      }
    `,
  ];

  protected override render(): unknown {
    const { review, record } = this;
    const { decisions, ledger } = review;
    const moments = momentsOf(decisions);
    return html`<p>${startSentence(ledger, record.events)} ${decidedSentence(ledger, record.events)}</p>
      <ul class="parts" aria-label=${words.parts}>
        ${wholeLedger(ledger).parts.map(
          ({ kind, amount }) => html`<li>${PART_WORDS[kind]} <strong>${signed(amount)}</strong></li>`,
        )}
      </ul>
      <p class="soft">${words.unit} ${words.kind(review.chance.kind)} ${AGAINST}</p>
      ${howCounted(countedWords.ledger)}
      <h2>${words.moments(moments.length)}</h2>
      ${moments.map((decision) => this.#moment(decision))}
      ${
        moments.length > 0
          ? nothing
          : html`<p>${decisions.length === 0 ? lookbackWords.choices.none : `${NOTHING_COST} ${words.allRight}`}</p>`
      }
      ${this.#notesBeside(moments)}
      <div class="paper">${choicesTable(forPaper(decisions), null)}</div>`;
  }

  /** What the player noted about choices that are no moment of the story. */
  #notesBeside(moments: readonly Decision[]): unknown {
    const noted = this.review.decisions.filter((decision) => decision.notes.length > 0 && !moments.includes(decision));
    if (noted.length === 0) return nothing;
    return html`<h2>${lookbackWords.choices.noted}</h2>
      <ul>
        ${noted.map((decision) => html`<li>${decisionName(decision)}: ${quoted(decision)}</li>`)}
      </ul>`;
  }

  #moment(decision: Decision): unknown {
    const { events } = this.record;
    const better = bestDone(decision);
    const item = practiceItem(this.record, decision);
    const { id } = this.record;
    return html`<article>
      <div class="told">
        <h3>${momentTitle(decision, events)}</h3>
        ${rackThen(decision, events)}
        <div class="row pair">
          <span><span class="label">${words.you}</span> ${done(decision, decision.chosen)}</span>
          ${better === null ? nothing : html`<span><span class="label">${words.better}</span> ${better}</span>`}
        </div>
        <p>${decision.why.join(' ')}</p>
        ${decision.notes.length === 0 ? nothing : html`<p>${lookbackWords.choices.noted}: ${quoted(decision)}</p>`}
      </div>
      <div class="ways">
        ${
          item === null
            ? nothing
            : html`<a class="plain" href=${addressOfItem(item, 'practise', id)}>${words.practise}</a>
                <wr-make-problem .item=${item} .source=${id}></wr-make-problem>`
        }
        <wr-button look="quiet" @click=${() => emit<ChoiceWanted>(this, 'choice-wanted', { decision })}
          >${words.more}</wr-button
        >
      </div>
    </article>`;
  }
}

customElements.define('wr-story', WrStory);

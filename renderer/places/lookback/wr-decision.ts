import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import type { GameRecord } from '../../../core/game/record.ts';
import type { StageTerms } from '../../../core/reading/stage-terms.ts';
import type { Decision } from '../../../core/review/decision.ts';
import { judgementOf } from '../../../core/review/judgement.ts';
import { emit } from '../../parts/emit.ts';
import { howCounted } from '../../parts/how-counted.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { countedWords } from '../../words/counted.ts';
import { lookbackWords } from '../../words/lookback.ts';
import type { WorkerClient } from '../../worker/client.ts';
import type { JournalCalls } from '../../worker/journal-calls.ts';
import { chance, choiceRow, costRows, roundRow } from './cost-part.ts';
import { isSameChoice, verdictWords } from './decision-words.ts';
import { lookbackStyles } from './lookback-styles.ts';
import { practiceLinks } from './practice-links.ts';
import { kindsIn, tileRow, tileWords } from './tile-row.ts';
import './wr-try.ts';

const words = lookbackWords.choices;

/** What `note-written` carries. */
export interface NoteWritten {
  readonly text: string;
  /** The place of the event that it speaks of. */
  readonly about: number;
}

/** One choice: the tiles then, what was chosen, the best, the cost, why, and a note. Sends `note-written`. */
export class WrDecision extends LitElement {
  static override properties = {
    decision: { attribute: false },
    stages: { attribute: false },
    record: { attribute: false },
    worker: { attribute: false },
    awaited: { type: Boolean },
    draft: { state: true },
  };

  declare decision: Decision;
  declare stages: StageTerms;
  declare record: GameRecord;
  declare worker: WorkerClient<JournalCalls>;
  /** Whether the look ahead is still on its way. */
  declare awaited: boolean;
  declare protected draft: string;

  static override styles = [
    sharedStyles,
    placeStyles,
    lookbackStyles,
    css`
      :host {
        gap: var(--space-4);
      }

      .rack wr-tile {
        --tile-width: clamp(40px, 2.4rem, 56px);
      }

      .rack .given {
        outline: 3px solid var(--accent);
        outline-offset: 1px;
        border-radius: 8px;
        transform: translateY(-8px);
      }

      .rack {
        padding-top: 10px;
      }

      .others {
        margin: 0;
        padding-inline-start: 1.6em;
      }

      .others li {
        padding-block: var(--space-1);
      }
    `,
  ];

  constructor() {
    super();
    this.draft = '';
    this.awaited = false;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    if (changed.has('decision') && !isSameChoice(changed.get('decision'), this.decision)) this.draft = '';
  }

  protected override render(): unknown {
    const { decision } = this;
    const isRound = decision.kind === 'second-round';
    const row = isRound ? roundRow : choiceRow;
    return html`<p><span class="verdict ${judgementOf(decision).verdict}">${verdictWords(decision)}</span></p>
      ${this.#rack()}
      <dl>
        <dt>${words.chosen}</dt>
        <dd class="row">${row(decision.chosen)}</dd>
        ${costRows(decision, this.awaited)}
        <dt>${words.why}</dt>
        <dd>${decision.why.join(' ')}</dd>
        ${
          isRound && decision.best.tiles !== ''
            ? html`<dt>${words.bestPass}</dt>
                <dd class="row">${tileRow(decision.best.tiles)}</dd>`
            : nothing
        }
        ${
          decision.notes.length === 0
            ? nothing
            : html`<dt>${words.noted}</dt>
                <dd>${decision.notes.map((note) => html`<q>${note}</q> `)}</dd>`
        }
      </dl>
      ${this.#others()}
      ${
        decision.kind === 'pass' || decision.kind === 'courtesy' || decision.kind === 'discard'
          ? html`<wr-try
              .record=${this.record}
              .decision=${decision}
              .stages=${this.stages}
              .worker=${this.worker}
            ></wr-try>`
          : nothing
      }
      ${this.#practice()} ${this.#note()}
      <p class="soft">
        ${words.equalNote} ${isRound ? words.roundNote : words.exactNote}
        ${decision.ahead === null && !this.awaited ? nothing : lookbackWords.ahead.note}
      </p>`;
  }

  /** The tiles as they were, those given lifted. */
  #rack(): unknown {
    const kinds = kindsIn(this.decision.rack);
    const given = this.decision.kind === 'second-round' ? [] : [...kindsIn(this.decision.chosen.tiles)];
    const tiles = kinds.map((kind) => {
      const place = given.indexOf(kind);
      if (place >= 0) given.splice(place, 1);
      return html`<wr-tile class=${place >= 0 ? 'given' : ''} .kind=${kind} aria-hidden="true"></wr-tile>`;
    });
    return html`<div>
      <h3>${words.rack}</h3>
      <span class="tiles rack" role="img" aria-label=${words.rackWords(tileWords(kinds))}>${tiles}</span>
    </div>`;
  }

  #others(): unknown {
    const { top } = this.decision;
    const best = top[0]?.worth ?? 0;
    if (top.length < 2) return nothing;
    return html`<div>
      <h3>${this.decision.ahead === null ? words.others : words.othersNow}</h3>
      ${howCounted(countedWords.reachThen)}
      <ol class="others">
        ${top.map(
          ({ tiles, worth }) =>
            html`<li>
              <div class="row">
                ${tileRow(tiles)} <span>${words.other(chance(worth), (100 * (best - worth)).toFixed(1))}</span>
              </div>
            </li>`,
        )}
      </ol>
    </div>`;
  }

  /** From life to practice: this pass as a problem of the Warm-up. */
  #practice(): unknown {
    const links = practiceLinks(this.record, this.decision);
    if (links === null) return nothing;
    return html`<p class="row">
      <a class="plain" href=${links.practise}>${lookbackWords.practice.again}</a>
      <a class="plain" href=${links.sheet}>${lookbackWords.practice.sheet}</a>
    </p>`;
  }

  #note(): unknown {
    return html`<div>
      <wr-field
        label=${lookbackWords.notes.about}
        .lines=${2}
        .value=${this.draft}
        @field-typed=${({ detail }: CustomEvent<FieldText>) => (this.draft = detail.value)}
      ></wr-field>
      <wr-button ?disabled=${this.draft.trim() === ''} @click=${() => this.#write()}
        >${lookbackWords.notes.keep}</wr-button
      >
    </div>`;
  }

  #write(): void {
    emit<NoteWritten>(this, 'note-written', { text: this.draft.trim(), about: this.decision.place });
    this.draft = '';
  }
}

customElements.define('wr-decision', WrDecision);

declare global {
  interface HTMLElementTagNameMap {
    'wr-decision': WrDecision;
  }
}

import { css, html, nothing, type PropertyValues } from 'lit';
import type { GameRecord } from '../../../core/game/record.ts';
import { type Decision, EQUAL_WITHIN, judgementOf } from '../../../core/review/decision.ts';
import { data, element, flag, state } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import { howCounted } from '../../parts/how-counted.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { countedWords } from '../../words/counted.ts';
import { differenceInGames, percent } from '../../words/numbers.ts';
import { lookbackWords } from '../../words/lookback.ts';
import {
  choiceRow,
  costRows,
  done,
  isSameChoice,
  quoted,
  roundRow,
  verdictWords,
  wholeChance,
} from './decision-words.ts';
import type { TryAnother } from './lookback-store.ts';
import { lookbackStyles } from './lookback-styles.ts';
import { practiceItem } from './practice-item.ts';
import { addressOfItem } from '../warmup/item-route.ts';
import '../warmup/wr-make-problem.ts';
import { choiceTiles, rackThen } from './tile-row.ts';
import './wr-try.ts';

const words = lookbackWords.choices;

/** What `note-written` carries. */
export interface NoteWritten {
  readonly text: string;
  /** The place of the event that it speaks of. */
  readonly about: number;
}

const Base = element({
  decision: data<Decision>(),
  record: data<GameRecord>(),
  tryAnother: data<TryAnother>(),
  /** Whether the look ahead is still on its way. */
  awaited: flag(),
  draft: state(''),
});

/** One choice: the tiles then, what was chosen, the best, the cost, why, and a note. Sends `note-written`. */
export class WrDecision extends Base {
  static override styles = [
    sharedStyles,
    placeStyles,
    lookbackStyles,
    css`
      :host {
        gap: var(--space-4);
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

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    if (changed.has('decision') && !isSameChoice(changed.get('decision'), this.decision)) this.draft = '';
  }

  protected override render(): unknown {
    const { decision } = this;
    const isRound = decision.kind === 'second-round';
    const { step } = decision;
    return html`<p><span class="verdict ${judgementOf(decision).verdict}">${verdictWords(decision)}</span></p>
      ${this.#rack()}
      <dl>
        <dt>${words.chosen}</dt>
        <dd class="row">${isRound ? roundRow(decision.chosen) : choiceRow(decision, decision.chosen)}</dd>
        ${costRows(decision, this.awaited)}
        ${
          decision.why.length === 0
            ? nothing
            : html`<dt>${words.why}</dt>
                <dd>${decision.why.join(' ')}</dd>`
        }
        ${
          isRound && decision.best.tiles !== ''
            ? html`<dt>${words.bestPass}</dt>
                <dd class="row">${choiceTiles(decision.best.tiles)}</dd>`
            : nothing
        }
        ${
          decision.notes.length === 0
            ? nothing
            : html`<dt>${words.noted}</dt>
                <dd>${quoted(decision)}</dd>`
        }
      </dl>
      ${this.#others()}
      ${
        decision.kind === 'pass' || decision.kind === 'courtesy' || decision.kind === 'discard'
          ? html`<wr-try .decision=${decision} .tryAnother=${this.tryAnother}></wr-try>`
          : nothing
      }
      ${this.#practice()} ${this.#note()}
      <p class="soft">
        ${step === null ? words.playNote : words.equalNote}
        ${isRound ? words.roundNote : step === null ? nothing : words.exactNote}
        ${decision.ahead === null && !this.awaited ? nothing : lookbackWords.ahead.note}
      </p>`;
  }

  /** The tiles as they were, those of the choice raised. */
  #rack(): unknown {
    return html`<div>
      <h3>${words.rack}</h3>
      ${rackThen(this.decision, this.record.events)}
    </div>`;
  }

  #others(): unknown {
    const { top, step } = this.decision;
    const best = top[0]?.worth ?? 0;
    if (top.length < 2) return nothing;
    return html`<div>
      <h3>${this.decision.ahead === null ? words.others : words.othersNow}</h3>
      ${howCounted(step === null ? countedWords.chanceThen : countedWords.reachThen)}
      <ol class="others">
        ${top.map(
          (choice) =>
            html`<li>
              <div class="row">
                ${done(this.decision, choice)}
                <span
                  >${
                    step === null
                      ? wholeChance(choice.worth)
                      : words.other(
                          percent(choice.worth),
                          best - choice.worth > EQUAL_WITHIN ? differenceInGames(best - choice.worth) : '',
                        )
                  }</span
                >
              </div>
            </li>`,
        )}
      </ol>
    </div>`;
  }

  /** From life to practice: this pass as a problem of the Warm-up. */
  #practice(): unknown {
    const item = practiceItem(this.record, this.decision);
    if (item === null) return nothing;
    const { id } = this.record;
    return html`<p class="row">
      <a class="plain" href=${addressOfItem(item, 'practise', id)}>${lookbackWords.practice.again}</a>
      <wr-make-problem .item=${item} .source=${id}></wr-make-problem>
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

import { css, html, nothing } from 'lit';
import { PRACTICE } from '../../../core/warmup/progress.ts';
import type { AnswerEntry } from '../../../core/warmup/history-file.ts';
import { phaseOf } from '../../../core/warmup/history.ts';
import { type Return, returnsOf } from '../../../core/warmup/returns.ts';
import { givenUpBy, sittingsOf } from '../../../core/warmup/sitting.ts';
import { type PracticeWeek, weeksOf } from '../../../core/warmup/weeks.ts';
import { data, element, state } from '../../parts/element.ts';
import { howCounted } from '../../parts/how-counted.ts';
import '../../parts/wr-button.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { countedWords } from '../../words/counted.ts';
import { differenceAlone, differenceInGames, percent } from '../../words/numbers.ts';
import { practiceWords } from '../../words/practice.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { PracticeRoom } from './practice-room.ts';
import { today } from './room-parts.ts';
import { warmUpStyles } from './warm-up-styles.ts';
import './wr-practice-summary.ts';

const words = practiceWords.progress;
const SHOWN_WEEKS = 12;
const SHOWN_RETURNS = 8;
const SHOWN_SITTINGS = 10;
const DAY = 86_400_000;

const Base = element({
  room: data<PracticeRoom>(),
  /** The earlier practice that is looked at, by its place from the newest; null for none. */
  opened: state<number | null>(null),
});

/** How practice went week by week, what comes back and when, and earlier practices with their answers. */
export class WrPracticeWeeks extends Base {
  static override styles = [
    sharedStyles,
    warmUpStyles,
    css`
      li {
        padding-block: var(--space-1);
        border-bottom: 1px solid var(--hairline);
      }

      .when {
        font-weight: 600;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  protected override render(): unknown {
    const { history } = this.room;
    return html`<div class="stack">
      ${this.#weeks(weeksOf(history))} ${this.#returns(returnsOf({ history }))} ${this.#sittings(sittingsOf(history))}
    </div>`;
  }

  #weeks(weeks: readonly PracticeWeek[]): unknown {
    return html`<section class="panel">
      <h2>${words.weeks}</h2>
      ${howCounted(countedWords.weeks)}
      ${
        weeks.length === 0
          ? html`<p>${words.weeksNone}</p>`
          : html`<p class="soft">${words.weeksLead}</p>
              <div class="scroll" tabindex="0" role="group" aria-label=${words.weeks}>
                <table>
                  <thead>
                    <tr>
                      <th scope="col">${words.week}</th>
                      <th scope="col" class="number">${words.decisions}</th>
                      <th scope="col">${words.right}</th>
                      <th scope="col">${words.cost}</th>
                    </tr>
                  </thead>
                  <tbody>
                    ${weeks.slice(-SHOWN_WEEKS).map(weekRow)}
                  </tbody>
                </table>
              </div>`
      }
    </section>`;
  }

  #returns(all: readonly Return[]): unknown {
    const left = all.length - SHOWN_RETURNS;
    return html`<section class="panel">
      <h2>${words.back}</h2>
      ${
        all.length === 0
          ? html`<p>${words.backNone}</p>`
          : html`<p class="soft">${words.backLead}</p>
              ${howCounted(countedWords.gaveUp)}
              <ul>
                ${all.slice(0, SHOWN_RETURNS).map(returnRow)}
              </ul>
              ${left > 0 ? html`<p class="soft">${words.backMore(left)}</p>` : nothing}`
      }
    </section>`;
  }

  #sittings(all: readonly (readonly AnswerEntry[])[]): unknown {
    if (all.length === 0) return nothing;
    const opened = this.opened === null ? undefined : all[this.opened];
    return html`<section class="panel">
        <h2>${words.sittings}</h2>
        ${howCounted(countedWords.gaveUp)}
        <ul>
          ${all.slice(0, SHOWN_SITTINGS).map(
            (answers, place) =>
              html`<li class="row spread">
                <span>${sittingWords(answers)}</span>
                <wr-button
                  look="quiet"
                  label=${words.openOf(dayWords(answers[0]?.day ?? 0))}
                  .pressed=${place === this.opened}
                  @click=${() => (this.opened = place === this.opened ? null : place)}
                  >${words.openSitting}</wr-button
                >
              </li>`,
          )}
        </ul>
      </section>
      ${
        opened === undefined
          ? nothing
          : html`<wr-practice-summary .room=${this.room} .answers=${opened} .past=${true}></wr-practice-summary>`
      }`;
  }
}

function weekRow({ monday, right, cost, halfWidth }: PracticeWeek): unknown {
  const within = halfWidth === null ? null : differenceAlone(halfWidth);
  return html`<tr>
    <th scope="row">${dayWords(monday)}</th>
    <td class="number">${right.of}</td>
    <td>${right.hits} (${percent(right.low)} – ${percent(right.high)})</td>
    <td>${words.costCell(costWords(cost), within)}</td>
  </tr>`;
}

function returnRow({ miss, due, rightInARow }: Return): unknown {
  const what = practiceWords.phaseOnKind(practiceWords.phases[phaseOf(miss.step)], warmUpWords.kinds[miss.kind]);
  const from = words.from(miss.source !== PRACTICE);
  return html`<li>
    <span class="when">${whenWords(due - today())}:</span>
    ${words.backRow(what, differenceInGames(miss.cost), from)}${words.because(rightInARow)}
  </li>`;
}

function sittingWords(answers: readonly AnswerEntry[]): string {
  const said = answers[0]?.sitting === undefined ? words.single : words.sitting;
  return said(dayWords(answers[0]?.day ?? 0), answers.length, practiceWords.summary.costAlone(givenUpBy(answers)));
}

/** Below half a game nothing is given up that counts. */
function costWords(cost: number): string {
  return cost < 0.0005 ? '0' : differenceAlone(cost);
}

function whenWords(days: number): string {
  if (days <= 0) return words.today;
  return days === 1 ? words.tomorrow : words.inDays(days);
}

/** A whole local day since 1970 as a person writes it. */
function dayWords(day: number): string {
  const style = { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' } as const;
  return new Intl.DateTimeFormat(undefined, style).format(new Date(day * DAY));
}

customElements.define('wr-practice-weeks', WrPracticeWeeks);

import { html, nothing } from 'lit';
import type { Rate } from '../../../core/base/statistics.ts';
import { type Calibration, calibrationsOf, scoreCourse } from '../../../core/warmup/estimate.ts';
import { type KindCost, type Progress, progressOf, throwProgress } from '../../../core/warmup/progress.ts';
import { dueMisses } from '../../../core/warmup/returns.ts';
import { data, element } from '../../parts/element.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { howCounted } from '../../parts/how-counted.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { countedWords } from '../../words/counted.ts';
import { differenceAlone, percent } from '../../words/numbers.ts';
import { practiceWords } from '../../words/practice.ts';
import { throwWords } from '../../words/throw.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { PracticeRoom } from './practice-room.ts';
import { today } from './room-parts.ts';
import { warmUpStyles } from './warm-up-styles.ts';
import './wr-practice-weeks.ts';

const words = warmUpWords.progress;
/** Rows of the table of kinds. */
const SHOWN_KINDS = 8;

const Base = element({
  room: data<PracticeRoom>(),
});

/** How practice goes: first answers after a day, what costs most, and how well guesses fit. */
export class WrPracticeProgress extends Base {
  static override styles = [sharedStyles, warmUpStyles];

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  protected override render(): unknown {
    const { history } = this.room;
    const progress = progressOf(history);
    return html`<div class="stack">
      <wr-practice-weeks .room=${this.room}></wr-practice-weeks>
      ${this.#throws()} ${this.#firsts(progress)} ${this.#kinds(progress.kinds)}
      ${this.#guesses(calibrationsOf(history))}
    </div>`;
  }

  #firsts({ all, halves }: Progress): unknown {
    const due = dueMisses({ history: this.room.history, today: today() }).length;
    return html`<section class="panel">
      <h2>${words.firsts}</h2>
      ${howCounted(countedWords.firsts)}
      ${
        all.share === null
          ? html`<p>${words.none}</p>`
          : html`<p>
                <strong>${words.right(all.hits, all.of)}</strong>.
                ${words.interval(percent(all.low), percent(all.high))}
              </p>
              <p class="soft">
                ${halves === null ? words.noTrend : words.halves(rateText(halves.older), rateText(halves.newer))}
              </p>`
      }
      ${due === 0 ? nothing : html`<p>${words.due(due)}</p>`}
    </section>`;
  }

  #throws(): unknown {
    const thrown = throwProgress(this.room.history);
    return html`<section class="panel">
      <h2>${throwWords.progress}</h2>
      ${howCounted(countedWords.throws)}
      <p>${thrown.rate.of === 0 ? throwWords.progressNone : throwWords.progressWords(thrown)}</p>
    </section>`;
  }

  #kinds(kinds: readonly KindCost[]): unknown {
    return html`<section class="panel">
      <h2>${words.kinds}</h2>
      ${howCounted(countedWords.kinds)}
      ${
        kinds.length === 0
          ? html`<p>${words.kindsNone}</p>`
          : html`<div class="scroll" tabindex="0" role="group" aria-label=${words.kinds}>
              <table>
                <thead>
                  <tr>
                    <th scope="col">${words.kind}</th>
                    <th scope="col" class="number">${words.decisions}</th>
                    <th scope="col" class="number">${practiceWords.progress.inAll}</th>
                    <th scope="col">${words.rate}</th>
                  </tr>
                </thead>
                <tbody>
                  ${kinds.slice(0, SHOWN_KINDS).map(
                    ({ phase, kind, decisions, cost, rate }) =>
                      html`<tr>
                        <th scope="row">
                          ${practiceWords.phaseOnKind(practiceWords.phases[phase], warmUpWords.kinds[kind])}
                        </th>
                        <td class="number">${decisions}</td>
                        <td class="number">${cost === 0 ? '0' : differenceAlone(cost)}</td>
                        <td>${rateText(rate)}</td>
                      </tr>`,
                  )}
                </tbody>
              </table>
            </div>`
      }
    </section>`;
  }

  #guesses(calibrations: readonly Calibration[]): unknown {
    const [all] = calibrations;
    if (all === undefined || all.score === null) {
      return html`<section class="panel">
        <h2>${words.guesses}</h2>
        <p>${words.guessesNone}</p>
      </section>`;
    }
    const course = scoreCourse(this.room.history);
    return html`<section class="panel">
      <h2>${words.guesses}</h2>
      ${howCounted(countedWords.guesses)}
      <p>${words.score(all.score.toFixed(2))} ${words.scoreSource}</p>
      ${course.length < 2 ? nothing : html`<p>${words.course}: ${course.map((score) => score.toFixed(2)).join(', ')}</p>`}
      <div class="scroll" tabindex="0" role="group" aria-label=${words.guesses}>
        <table>
          <thead>
            <tr>
              <th scope="col">${words.sort}</th>
              <th scope="col">${words.sure}</th>
              <th scope="col">${words.came}</th>
            </tr>
          </thead>
          <tbody>
            ${calibrations.flatMap(({ what, steps }) =>
              steps.map(
                ({ sure, rate }) =>
                  html`<tr>
                    <th scope="row">${words.what[what]}</th>
                    <td>${percent(sure)}</td>
                    <td>${rateText(rate)}</td>
                  </tr>`,
              ),
            )}
          </tbody>
        </table>
      </div>
    </section>`;
  }
}

/** "3 of 4 right (30 % to 95 %)". */
function rateText({ hits, of, share, low, high }: Rate): string {
  return share === null ? '–' : `${words.right(hits, of)} (${percent(low)} – ${percent(high)})`;
}

customElements.define('wr-practice-progress', WrPracticeProgress);

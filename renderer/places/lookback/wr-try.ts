import { html, LitElement, nothing, type PropertyValues } from 'lit';
import type { GameRecord } from '../../../core/game/record.ts';
import { type Decision, EQUAL_WITHIN } from '../../../core/review/decision.ts';
import type { StageTerms } from '../../../core/reading/stage-terms.ts';
import type { TriedChoice } from '../../../core/review/try-choice.ts';
import { JOKER } from '../../../core/tiles/kinds.ts';
import { formatTileList } from '../../../core/tiles/text.ts';
import '../../parts/wr-button.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { lookbackWords } from '../../words/lookback.ts';
import { percent } from '../../words/numbers.ts';
import type { WorkerClient } from '../../worker/client.ts';
import type { JournalCalls } from '../../worker/journal-calls.ts';
import { isSameChoice } from './decision-words.ts';
import { lookbackStyles } from './lookback-styles.ts';
import { kindsIn } from './tile-row.ts';
import './wr-tile-toggles.ts';
import type { TogglesChanged } from './wr-tile-toggles.ts';

const words = lookbackWords.tries;

/** Another choice tried: what it would have led to on average, and with the tiles that really came. */
export class WrTry extends LitElement {
  static override properties = {
    record: { attribute: false },
    decision: { attribute: false },
    stages: { attribute: false },
    worker: { attribute: false },
    chosen: { state: true },
    tried: { state: true },
    really: { state: true },
    looking: { state: true },
    trouble: { state: true },
  };

  declare record: GameRecord;
  declare decision: Decision;
  /** The terms of reach that the look-back was made with. */
  declare stages: StageTerms;
  declare worker: WorkerClient<JournalCalls>;
  declare protected chosen: readonly number[];
  declare protected tried: TriedChoice | null;
  /** The same of the choice that was made. */
  declare protected really: TriedChoice | null;
  declare protected looking: boolean;
  declare protected trouble: string;

  static override styles = [sharedStyles, placeStyles, lookbackStyles];

  constructor() {
    super();
    this.#reset();
    this.looking = false;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    if (changed.has('decision') && !isSameChoice(changed.get('decision'), this.decision)) this.#reset();
  }

  protected override render(): unknown {
    const isPass = this.decision.step !== null;
    const kinds = this.#kinds();
    return html`<details>
      <summary>${words.title}</summary>
      <p>${words.lead(this.#many())}</p>
      <wr-tile-toggles
        label=${words.label}
        .kinds=${kinds}
        .chosen=${this.chosen}
        @toggles-changed=${({ detail }: CustomEvent<TogglesChanged>) => this.#choose(detail.chosen)}
      ></wr-tile-toggles>
      <p>
        <wr-button ?disabled=${!this.#isRight() || this.looking} @click=${() => this.#look()}
          >${this.looking ? words.looking : words.look}</wr-button
        >
      </p>
      <div role="status">
        ${this.trouble === '' ? nothing : html`<p>${this.trouble}</p>`}
        ${this.tried === null || this.really === null ? nothing : this.#answer(this.tried, this.really, isPass)}
      </div>
    </details>`;
  }

  #answer(tried: TriedChoice, really: TriedChoice, isPass: boolean): unknown {
    const by = Math.abs(tried.average - really.average);
    const shown = lookbackWords.choices.inHundred(by);
    const told =
      by <= EQUAL_WITHIN ? words.equal : tried.average > really.average ? words.better(shown) : words.worse(shown);
    const row = (name: string, { average, same }: TriedChoice): unknown =>
      html`<tr>
        <th scope="row">${name}</th>
        <td class="number">${percentTenth(average)}</td>
        ${isPass ? html`<td class="number">${same === null ? words.noSame : percentTenth(same)}</td>` : nothing}
      </tr>`;
    return html`<p>${told}</p>
      <div class="scroll" tabindex="0" role="region" aria-label=${words.title}>
        <table>
          <thead>
            <tr>
              ${words.head.slice(0, isPass ? 3 : 2).map((cell) => html`<th scope="col">${cell}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${row(words.tried, tried)} ${row(words.yours, really)}
          </tbody>
        </table>
      </div>`;
  }

  /** The tiles that may be chosen: a joker is never passed. */
  #kinds(): readonly ReturnType<typeof kindsIn>[number][] {
    const kinds = kindsIn(this.decision.rack);
    return this.decision.step === null ? kinds : kinds.filter((kind) => kind !== JOKER);
  }

  #many(): string {
    if (this.decision.step === null) return words.one;
    if (this.#mayBeFewer()) return words.upTo;
    return words.number(this.#due());
  }

  #isRight(): boolean {
    if (this.decision.step !== null && this.#mayBeFewer()) return this.chosen.length <= 3;
    return this.chosen.length === this.#due();
  }

  #due(): number {
    if (this.decision.step === null) return 1;
    return this.decision.kind === 'courtesy' ? kindsIn(this.decision.chosen.tiles).length : 3;
  }

  /** The last pass of a round may be made with fewer tiles, the rest unseen. */
  #mayBeFewer(): boolean {
    return this.decision.step === 'left' || this.decision.step === 'right2';
  }

  #choose(chosen: readonly number[]): void {
    this.chosen = chosen;
    this.tried = null;
  }

  async #look(): Promise<void> {
    const { record, decision, stages, worker } = this;
    const kinds = this.#kinds();
    const tiles = formatTileList(this.chosen.flatMap((place) => kinds[place] ?? []));
    this.looking = true;
    this.trouble = '';
    const answers = await Promise.all(
      [tiles, decision.chosen.tiles].map((each) =>
        worker.ask('try', { record, stages, place: decision.place, tiles: each }),
      ),
    );
    this.looking = false;
    if (!isSameChoice(decision, this.decision)) return;
    const [tried, really] = answers.map((answer) =>
      answer.status === 'done' && answer.value.ok ? answer.value.value : null,
    );
    this.tried = tried ?? null;
    this.really = really ?? null;
    const [first] = answers;
    if (first?.status === 'done' && !first.value.ok) this.trouble = first.value.message;
    if (first?.status === 'failed') this.trouble = first.message;
  }

  #reset(): void {
    this.chosen = [];
    this.tried = null;
    this.really = null;
    this.trouble = '';
  }
}

/** A chance with one decimal, so that close choices can be told apart: "12.3 %". */
function percentTenth(chance: number): string {
  return chance > 0 && chance < 0.001 ? percent(chance) : `${(100 * chance).toFixed(1)} %`;
}

customElements.define('wr-try', WrTry);

declare global {
  interface HTMLElementTagNameMap {
    'wr-try': WrTry;
  }
}

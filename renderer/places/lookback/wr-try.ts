import { html, nothing, type PropertyValues } from 'lit';
import { mayBeBlind, mayBePassed, PASS_SIZE } from '../../../core/exchange/steps.ts';
import { type Decision, EQUAL_WITHIN } from '../../../core/review/decision.ts';
import type { Followed, TriedChoice } from '../../../core/review/try-choice.ts';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { kindsOf } from '../../../core/tiles/text.ts';
import { Tiles } from '../../../core/tiles/tiles.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { lookbackWords } from '../../words/lookback.ts';
import { percent } from '../../words/numbers.ts';
import { isSameChoice } from './decision-words.ts';
import type { TryAnother } from './lookback-store.ts';
import { lookbackStyles } from './lookback-styles.ts';
import './wr-tile-toggles.ts';
import type { TogglesChanged } from './wr-tile-toggles.ts';

const words = lookbackWords.tries;

const Base = element({
  decision: data<Decision>(),
  tryAnother: data<TryAnother>(),
  chosen: state<readonly number[]>(),
  tried: state<TriedChoice | null>(),
  looking: state(false),
  trouble: state<string>(),
});

/** Another choice tried: what it would have led to on average, and with the tiles that really came. */
export class WrTry extends Base {
  static override styles = [sharedStyles, placeStyles, lookbackStyles];

  constructor() {
    super();
    this.#reset();
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
        ${this.tried === null ? nothing : this.#answer(this.tried, isPass)}
      </div>
    </details>`;
  }

  #answer({ tried, made, gain }: TriedChoice, isPass: boolean): unknown {
    const by = Math.abs(gain);
    const shown = lookbackWords.choices.inHundred(by);
    const sentence = by <= EQUAL_WITHIN ? words.equal : gain > 0 ? words.better(shown) : words.worse(shown);
    const row = (name: string, { average, same }: Followed): unknown =>
      html`<tr>
        <th scope="row">${name}</th>
        <td class="number">${percent(average)}</td>
        ${isPass ? html`<td class="number">${same === null ? words.noSame : percent(same)}</td>` : nothing}
      </tr>`;
    return html`<p>${sentence}</p>
      <div class="scroll" tabindex="0" role="region" aria-label=${words.title}>
        <table>
          <thead>
            <tr>
              ${words.head.slice(0, isPass ? 3 : 2).map((cell) => html`<th scope="col">${cell}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${row(words.tried, tried)} ${row(words.yours, made)}
          </tbody>
        </table>
      </div>`;
  }

  /** The tiles that may be chosen: a joker is never passed. */
  #kinds(): readonly Kind[] {
    const kinds = kindsOf(this.decision.rack);
    return this.decision.step === null ? kinds : kinds.filter(mayBePassed);
  }

  #many(): string {
    if (this.decision.step === null) return words.one;
    if (this.#mayBeFewer()) return words.upTo;
    return words.number(this.#due());
  }

  #isRight(): boolean {
    if (this.decision.step !== null && this.#mayBeFewer()) return this.chosen.length <= PASS_SIZE;
    return this.chosen.length === this.#due();
  }

  #due(): number {
    if (this.decision.step === null) return 1;
    return this.decision.kind === 'courtesy' ? kindsOf(this.decision.chosen.tiles).length : PASS_SIZE;
  }

  /** The last pass of a round may be made with fewer tiles, the rest unseen. */
  #mayBeFewer(): boolean {
    return mayBeBlind(this.decision.step);
  }

  #choose(chosen: readonly number[]): void {
    this.chosen = chosen;
    this.tried = null;
  }

  async #look(): Promise<void> {
    const { decision } = this;
    const kinds = this.#kinds();
    const tiles = Tiles.of(this.chosen.flatMap((place) => kinds[place] ?? []));
    this.looking = true;
    this.trouble = '';
    const tried = await this.tryAnother(decision.place, tiles);
    if (!isSameChoice(decision, this.decision)) return;
    this.looking = false;
    this.tried = tried.ok ? tried.value : null;
    if (!tried.ok) this.trouble = tried.problem.message;
  }

  #reset(): void {
    this.chosen = [];
    this.tried = null;
    this.looking = false;
    this.trouble = '';
  }
}

customElements.define('wr-try', WrTry);

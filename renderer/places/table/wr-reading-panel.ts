import { html, nothing, type PropertyValues } from 'lit';
import { nameOf } from '../../../core/tiles/names.ts';
import type { HandDocument, ReadingDocument } from '../../../core/engine/documents.ts';
import type { TurningTile } from '../../../core/reading/one-tile.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/tile/wr-tile.ts';
import '../../parts/wr-button.ts';
import type { LeanShare } from '../../parts/shares.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-explain.ts';
import '../../parts/wr-hand.ts';
import '../../parts/wr-lean.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { isOwnDead } from './aids.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { differenceAlone, differenceInGames, percent } from '../../words/numbers.ts';
import { playWords } from '../../words/play.ts';
import { tableWords } from '../../words/table.ts';
import { failed } from './work-part.ts';
import { handRow } from './hand-row.ts';
import { Growth } from './growth.ts';
import { panelStyles } from './panel-styles.ts';
import { readingStyles } from './reading-styles.ts';

const words = tableWords.reading;

/** Hands that are shown before more are asked for. */
const FIRST_HANDS = 6;
/** Hands that are shown of each section when they are grouped. */
const SECTION_HANDS = 2;

type Order = 'reach' | 'away';

const Base = element({
  app: data<AppContext>(),
  order: state<Order>('reach'),
  grouped: state(false),
  /** Whether all hands are shown. */
  all: state(false),
});

/** The reading: the hands that the rack can still become, best first, each as its 14 places. */
export class WrReadingPanel extends Base {
  static override styles = [sharedStyles, panelStyles, readingStyles];

  readonly #growth = new Growth(this, FIRST_HANDS);

  constructor() {
    super();
    new StoreController(
      this,
      () => [this.app.analysis],
      () => {
        const { reading, tiles, dead } = this.app.analysis;
        return [reading, tiles, dead.seats];
      },
    );
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    if (!this.all && !this.grouped) this.#growth.restart();
  }

  protected override render(): unknown {
    const { status, value, late, message } = this.app.analysis.reading;
    if (isOwnDead(this.app)) {
      return html`<section class="reading stack" aria-label=${words.title}>
        <div class="head"><h2>${words.title}</h2></div>
        <p>${playWords.advice.noHandNow}</p>
      </section>`;
    }
    return html`<section class="reading stack" aria-label=${words.title} aria-busy=${status === 'pending'}>
      <div class="head">
        <h2>${words.title}</h2>
        ${leanLine(value === null || value.ways === 0 ? [] : value.lean)}
        ${value !== null && late ? html`<p class="busy" role="status">${words.pending}</p>` : nothing}
      </div>
      ${status === 'failed' ? failed(words.failed, message, () => this.app.analysis.again()) : nothing}
      ${value === null ? html`<p class="soft">${status === 'failed' ? '' : words.pending}</p>` : this.#hands(value)}
      ${value === null ? nothing : struckOut(value.struck)} ${turningList(this.app.analysis.tiles.value?.turning ?? [])}
    </section>`;
  }

  #options(): unknown {
    return html`<wr-choice
        label=${words.sort}
        labelHidden
        .options=${[
          { value: 'reach', label: words.byReach },
          { value: 'away', label: words.byAway },
        ]}
        .value=${this.order}
        @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) =>
          (this.order = detail.value === 'away' ? 'away' : 'reach')}
      ></wr-choice>
      <wr-button look="quiet" .pressed=${this.grouped} @click=${() => (this.grouped = !this.grouped)}
        >${words.group}</wr-button
      >`;
  }

  #hands(reading: ReadingDocument): unknown {
    if (reading.hands.length === 0) {
      return html`<p>${reading.ways === 0 ? words.noLine : playWords.advice.noHandNow}</p>`;
    }
    const hands = this.order === 'reach' ? reading.hands : reading.byAway;
    if (this.grouped) return this.#sections(reading, hands);
    const shown = this.all ? hands : hands.slice(0, FIRST_HANDS);
    return html`${list(reading, this.#growth.part(shown, 0))}
      <div class="row">
        ${
          hands.length > FIRST_HANDS
            ? html`<wr-button look="quiet" @click=${() => (this.all = !this.all)}
                >${this.all ? words.fewer : words.more}</wr-button
              >`
            : nothing
        }
        ${this.#options()}
      </div>`;
  }

  #sections(reading: ReadingDocument, hands: readonly HandDocument[]): unknown {
    const sections = [...new Set(hands.map(({ section }) => section))];
    let before = 0;
    const shown = sections.map((section) => {
      const best = hands.filter((hand) => hand.section === section).slice(0, SECTION_HANDS);
      const drawn = this.#growth.part(best, before);
      before += best.length;
      return html`<div class="stack section">
        <h3>${section}</h3>
        ${list(reading, drawn)}
      </div>`;
    });
    return html`${shown}
      <div class="row">${this.#options()}</div>`;
  }
}

/** Sections that are shown by themselves; more would be slivers. */
const SHOWN_SHARES = 5;

/** How the rack leans, in a line that opens. */
function leanLine(lean: readonly LeanShare[]): unknown {
  const [first, second] = lean;
  if (first === undefined) return nothing;
  const line =
    second === undefined ? tableWords.lean.only(first.section) : tableWords.lean.mostly(first.section, second.section);
  return html`<details class="lean">
    <summary>${line}</summary>
    <wr-lean label=${tableWords.lean.title} .shares=${mainShares(lean)}></wr-lean>
    <p class="soft">${tableWords.lean.words}</p>
  </details>`;
}

/** The largest shares, and the others as one. */
function mainShares(lean: readonly LeanShare[]): LeanShare[] {
  if (lean.length <= SHOWN_SHARES + 1) return [...lean];
  const others = lean.slice(SHOWN_SHARES);
  const share = others.reduce((sum, { share: each }) => sum + each, 0);
  return [...lean.slice(0, SHOWN_SHARES), { section: tableWords.lean.others(others.length), share }];
}

/** The tiles that would change most, if they came. */
function turningList(turning: readonly TurningTile[]): unknown {
  const helping = turning.filter(({ gain }) => gain > 0);
  if (helping.length === 0) return nothing;
  return html`<div class="turning">
    <h3>${words.turning}</h3>
    <p class="soft">${words.turningUnit}</p>
    <ul class="row">
      ${helping.map(
        ({ kind, unseen, gain, shift }) =>
          html`<li>
            <wr-tile .kind=${kind}></wr-tile>
            <wr-explain .value=${words.gain(differenceAlone(gain))} .heading=${words.turningHeading}
              >${words.turningWords(nameOf(kind), unseen, differenceInGames(gain), percent(shift))}</wr-explain
            >
          </li>`,
      )}
    </ul>
  </div>`;
}

/** The hands that can't be made any more, struck out, each with the reason. */
function struckOut(struck: ReadingDocument['struck']): unknown {
  if (struck.length === 0) return nothing;
  return html`<details>
    <summary>${playWords.struck.title(struck.length)}</summary>
    <ul>
      ${struck.map((hand) => html`<li><s>${hand.name}</s>: ${playWords.struck.why[hand.why]}</li>`)}
    </ul>
  </details>`;
}

/** Rows stay, and take on what is in their place now: a row that moved would be laid out anew with all its parts. */
function list(reading: ReadingDocument, hands: readonly HandDocument[]): unknown {
  return html`<ol class="hands">
    ${hands.map((hand) => html`<li>${handRow(hand, reading.draws)}</li>`)}
  </ol>`;
}

customElements.define('wr-reading-panel', WrReadingPanel);

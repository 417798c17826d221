import { css, html, nothing } from 'lit';
import type { SeatDocument } from '../../../../core/engine/others-document.ts';
import type { Exposure } from '../../../../core/game/game-state.ts';
import { groupKinds } from '../../../../core/game/hand-view.ts';
import { nameOf } from '../../../../core/tiles/names.ts';
import { data, element } from '../../../parts/element.ts';
import { tileRow } from '../../../parts/tile/tile-row.ts';
import '../../../parts/wr-explain.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { inHundred, inHundredShort } from '../../../words/numbers.ts';
import { othersWords as words } from '../../../words/others.ts';
import { panelStyles } from '../panel-styles.ts';
import { failed } from '../work-part.ts';
import { inChairOrder, seatName } from './seat-names.ts';
import './wr-tile-risks.ts';

/** Lines named at a glance: as many as are likely together, three at most. */
const NAMED = 3;
const NAMED_SHARE = 0.8;
/** A tile is wanted at a glance if it is likelier wanted than not; so many are shown at most. */
const WANTED = 0.5;
const WANTED_TILES = 4;

const Base = element({
  app: data<AppContext>(),
});

/** What each other seat can be playing, in one line with all of it in a fold, and what the own tiles risk. */
export class WrOthers extends Base {
  static override styles = [
    sharedStyles,
    panelStyles,
    css`
      .head {
        min-height: calc(var(--target) + 1px);
        border-bottom: 1px solid var(--hairline);
      }

      .seats {
        min-height: calc(3 * (var(--target) + 1px));
        padding: 0;
        list-style: none;
      }

      .seats > li {
        border-bottom: 1px solid var(--hairline);
      }

      summary {
        min-height: var(--target);
      }

      .glance,
      .lines {
        --tile-width: 24px;
      }

      .group {
        display: inline-block;
        margin-inline-end: var(--space-1);
      }

      .glance span {
        font-weight: 400;
      }

      .lines {
        padding-inline-start: var(--space-4);
        list-style: none;
      }

      .lines li {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 var(--space-2);
        min-height: var(--target);
      }

      .lines wr-explain {
        margin-inline-start: auto;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.app.session, this.app.analysis]);
  }

  protected override render(): unknown {
    const { session, analysis } = this.app;
    const { status, value, message } = analysis.others;
    const seats = inChairOrder(session).flatMap((seat) => value?.seats.filter((each) => each.seat === seat) ?? []);
    return html`<section aria-label=${words.title} aria-busy=${status === 'pending'}>
      <div class="row head"><h2>${words.title}</h2></div>
      ${status === 'failed' ? failed(words.failed, message, () => analysis.again()) : nothing}
      <ul class="seats">
        ${value === null && status === 'pending' ? html`<li class="soft">${words.pending}</li>` : nothing}
        ${seats.map((seat) => html`<li>${this.#seat(seat)}</li>`)}
      </ul>
      ${value === null ? nothing : html`<wr-tile-risks .app=${this.app} .risks=${value.tiles}></wr-tile-risks>`}
    </section>`;
  }

  #seat(seat: SeatDocument): unknown {
    const { session } = this.app;
    const who = seatName(session, seat.seat);
    const groups = session.state.exposures.filter((each) => each.seat === seat.seat);
    return html`<details>
      <summary>
        <span class="glance"><strong>${who}</strong> ${groupsOf(groups)} ${glance(seat)}</span>
      </summary>
      <div class="lines">
        <h3>${words.linesTitle}</h3>
        <ul class="lines">
          ${seat.lines.map(({ name, weight }) => html`<li>${name} ${likely(who, name, weight)}</li>`)}
        </ul>
        <h3>${words.wantsTitle}</h3>
        <p>${seat.wants.map(({ kind, unseen }) => words.wanted(nameOf(kind), unseen)).join('; ')}</p>
      </div>
    </details>`;
  }
}

function groupsOf(groups: readonly Exposure[]): unknown {
  return groups.length === 0
    ? html`<span class="soft">${words.none}</span>`
    : groups.map((group) => html`<span class="group">${tileRow(groupKinds(group))}</span> `);
}

/** What is said at once: nothing that isn't known. */
function glance({ dead, early, lines, wants }: SeatDocument): unknown {
  if (dead) return html`<span>${words.dead}</span>`;
  if (early) return html`<span class="soft">${words.early}</span>`;
  const wanted = wants.filter(({ weight }) => weight >= WANTED).slice(0, WANTED_TILES);
  return html`<span>${words.lines(namesOf(lines))};</span> ${
      wanted.length === 0
        ? html`<span>${words.noWants}</span>`
        : html`<span>${words.wants}</span> ${tileRow(wanted.map(({ kind }) => kind))}`
    }`;
}

function namesOf(lines: SeatDocument['lines']): string[] {
  const names: string[] = [];
  let share = 0;
  for (const { name, weight } of lines) {
    if (names.length === NAMED || share >= NAMED_SHARE) break;
    names.push(name);
    share += weight;
  }
  return names;
}

function likely(who: string, name: string, weight: number): unknown {
  return html`<wr-explain value=${inHundredShort(weight)} heading=${words.lineHeading}
    >${words.lineWords(who, name, inHundred(weight))}</wr-explain
  >`;
}

customElements.define('wr-others', WrOthers);

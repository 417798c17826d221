import { css, html, nothing } from 'lit';
import type { SeatDocument } from '../../../../core/engine/others-document.ts';
import type { Seat } from '../../../../core/exchange/steps.ts';
import { groupKinds } from '../../../../core/game/hand-view.ts';
import { TELLING_GROUPS } from '../../../../core/others/fit-shape.ts';
import { nameOf } from '../../../../core/tiles/names.ts';
import { tileRow } from '../../../parts/tile/tile-row.ts';
import '../../../parts/wr-explain.ts';
import type { GameSession } from '../../../session/game-session.ts';
import { inHundred, inHundredShort } from '../../../words/numbers.ts';
import { othersWords as words } from '../../../words/others.ts';
import { inChairOrder, seatName } from './seat-names.ts';

/** Lines named at a glance: as many as are likely together, three at most. */
const NAMED = 3;
const NAMED_SHARE = 0.8;
/** A tile is wanted at a glance if it is likelier wanted than not; so many are shown at most. */
const WANTED = 0.5;
const WANTED_TILES = 4;

export const seatRowStyles = css`
  .seats {
    min-height: calc(3 * (var(--target) + 1px));
    padding: 0;
    list-style: none;
  }

  .seats > li {
    border-bottom: 1px solid var(--hairline);
  }

  .seats summary {
    min-height: var(--target);
  }

  /* Two lines, which the names of lines may take. */
  .seats summary.telling {
    min-height: calc(2 * var(--target));
  }

  .group {
    display: inline-block;
    margin-inline-end: var(--space-1);
  }

  .glance span {
    font-weight: 400;
  }

  .glance,
  .lines {
    --tile-width: 24px;
  }

  .lines {
    padding-inline-start: var(--space-3);
    --explain-wrap: normal;
  }

  .lines ul {
    padding: 0;
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
    max-width: 100%;
    margin-inline-start: auto;
  }
`;

type Table = Pick<GameSession, 'state' | 'players'>;

/**
 * What each other seat can be playing, in one line with all of it in a fold, in the order of the chairs. Groups are shown
 * at once, and there is room for what is said of them while that is worked out.
 */
export function seatRows(table: Table, seats: readonly SeatDocument[]): unknown {
  const others = inChairOrder(table).filter((seat) => seat !== table.state.seat);
  return html`<ul class="seats">
    ${others.map(
      (seat) =>
        html`<li>
          ${seatRow(
            table,
            seat,
            seats.find((each) => each.seat === seat),
          )}
        </li>`,
    )}
  </ul>`;
}

function seatRow(table: Table, seat: Seat, said: SeatDocument | undefined): unknown {
  const who = seatName(table, seat);
  const groups = table.state.exposures.filter((each) => each.seat === seat).length;
  return html`<details>
    <summary class=${groups >= TELLING_GROUPS ? 'telling' : ''}>
      <span class="glance"
        ><strong>${who}</strong> ${groupsShown(table, seat)}
        ${said === undefined || groups === 0 ? '' : glance(said)}</span
      >
    </summary>
    <div class="lines">${said === undefined ? nothing : inside(who, said)}</div>
  </details>`;
}

/** All that is known of a seat's lines; where that is little, only so much. */
function inside(who: string, { dead, early, lines, wants }: SeatDocument): unknown {
  if (early) return html`<p>${words.earlyWords}</p>`;
  if (dead || lines.length === 0) return html`<p>${dead ? words.dead : words.whole}</p>`;
  return html`<h3>${words.linesTitle}</h3>
    <ul>
      ${lines.map(({ name, weight }) => html`<li>${name} ${likely(who, name, weight)}</li>`)}
    </ul>
    <h3>${words.wantsTitle}</h3>
    <p>${wants.map(({ kind, unseen }) => words.wanted(nameOf(kind), unseen)).join('; ') || words.noWants}</p>`;
}

/** The groups that a seat has laid open, small. */
export function groupsShown({ state }: Table, seat: Seat): unknown {
  const groups = state.exposures.filter((each) => each.seat === seat);
  if (groups.length === 0) return html`<span class="soft">${words.none}</span>`;
  return groups.map((group) => html`<span class="group">${tileRow(groupKinds(group))}</span> `);
}

/** What is said at once: nothing that isn't known. */
function glance({ dead, early, lines, wants }: SeatDocument): unknown {
  if (dead) return html`<span>${words.dead}</span>`;
  if (early) return html`<span class="soft">${words.early}</span>`;
  if (lines.length === 0) return html`<span>${words.whole}</span>`;
  const likely = wants.filter(({ weight }) => weight >= WANTED);
  const said = likely.length > 0 ? words.wants : wants.length > 0 ? words.mayWant : words.noWants;
  const shown = (likely.length > 0 ? likely : wants).slice(0, WANTED_TILES);
  return html`<span>${words.lines(namesOf(lines))};</span>
    <span>${said}</span> ${shown.length === 0 ? nothing : tileRow(shown.map(({ kind }) => kind))}`;
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

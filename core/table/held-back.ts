import { KIND_COUNT } from '../tiles/kinds.ts';
import { openWays, shownTiles } from './open-ways.ts';
import type { SeatView, ShownGroup } from './policy.ts';
import { needKindOf, needPlainOf, needWildOf, type TableCard } from './table-card.ts';
import { SEAT_COUNT } from './table.ts';

/** Exposures from which a player guesses what another wants. */
const TELLING = 2;
/** A tile is held back if so many of the other's open ways want it. */
const SHARE = 1 / 4;

/** Which tiles a careful player does not discard: those that much of what another seat may still make wants. */
export class HeldBack {
  readonly #card: TableCard;
  /** By the exposures, which are a new list whenever they change. */
  readonly #wanted = new WeakMap<readonly ShownGroup[], Uint8Array>();

  constructor(card: TableCard) {
    this.#card = card;
  }

  /** Writes 1 into `held` for each kind that some other seat seems to want, otherwise 0. */
  mark(view: SeatView, held: Uint8Array): void {
    held.fill(0);
    for (let seat = 0; seat < SEAT_COUNT; seat += 1) {
      const exposures = view.exposuresOf(seat);
      if (seat === view.seat || exposures.length < TELLING) continue;
      const wanted = this.#wantedBy(exposures);
      for (let kind = 0; kind < KIND_COUNT; kind += 1) held[kind] = (held[kind] as number) | (wanted[kind] as number);
    }
  }

  #wantedBy(exposures: readonly ShownGroup[]): Uint8Array {
    const known = this.#wanted.get(exposures);
    if (known !== undefined) return known;
    const wanted = this.#count(exposures);
    this.#wanted.set(exposures, wanted);
    return wanted;
  }

  #count(exposures: readonly ShownGroup[]): Uint8Array {
    const { compiled, needs } = this.#card;
    const { starts } = compiled;
    const shown = shownTiles(exposures);
    const open = openWays(this.#card, exposures);
    const users = new Uint32Array(KIND_COUNT);
    for (const way of open) {
      const end = starts[way + 1] as number;
      for (let place = starts[way] as number; place < end; place += 1) {
        const need = needs[place] as number;
        const kind = needKindOf(need);
        if (needPlainOf(need) + needWildOf(need) > (shown[kind] as number)) users[kind] = (users[kind] as number) + 1;
      }
    }
    return Uint8Array.from(users, (count) => (count > 0 && count >= SHARE * open.length ? 1 : 0));
  }
}

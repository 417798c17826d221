import type { Way } from '../../core/card/way.ts';
import type { PassStep } from '../../core/exchange/steps.ts';
import type { CompiledCard } from '../../core/reading/compiled.ts';
import type { TableEvent } from '../../core/table/trace.ts';
import { JOKER, type Kind, SET_SIZE } from '../../core/tiles/kinds.ts';
import { Tiles } from '../../core/tiles/tiles.ts';

/**
 * A slow and plain referee: it follows a trace with every tile as an item in some list, and throws
 * at the first event that core/RULES.md doesn't allow. It shares nothing with the simulated table but
 * the tiles, the card's ways and the form of the events.
 */
export class Referee {
  readonly racks: Kind[][] = [[], [], [], []];
  readonly exposures: { seat: number; kind: Kind; tiles: Kind[] }[] = [];
  readonly discards: Kind[] = [];
  ended = false;
  readonly #card: CompiledCard;
  readonly #mayErr: boolean;
  readonly #unseen: Kind[] = Tiles.fullSet.toKinds();
  /** Passes under way: what each seat gave, and how many it still has to receive. */
  #passing:
    | { step: PassStep; gave: (Kind[] | undefined)[]; received: number; pool: Kind[]; blind: boolean }
    | undefined;
  #step = 0;
  #stopped = false;
  #turn = 0;
  /** What may come next in play. */
  #stage: 'dealing' | 'exchange' | 'draw' | 'drawn' | 'called' | 'discarded' = 'dealing';
  #smallKinds: readonly (readonly Kind[])[] | undefined;
  /** Seats whose exposures no open hand holds. */
  readonly dead = new Set<number>();
  #last: { tile: Kind; seat: number } | undefined;

  /** Wins may be overlooked and hands go dead at a club or a relaxed table (TB-26, TB-32), and only there. */
  constructor(card: CompiledCard, mayErr = false) {
    this.#card = card;
    this.#mayErr = mayErr;
  }

  follow(events: readonly TableEvent[]): void {
    for (const [place, event] of events.entries()) {
      try {
        this.#apply(event);
        this.#countTiles();
      } catch (error) {
        throw new Error(`event ${place} (${JSON.stringify(event)}): ${(error as Error).message}`, { cause: error });
      }
    }
    check(this.ended, 'the game has an end');
  }

  #apply(event: TableEvent): void {
    check(!this.ended, 'nothing happens after the end');
    switch (event.type) {
      case 'dealt':
        return this.#dealt(event);
      case 'gave':
        return this.#gave(event);
      case 'received':
        return this.#received(event);
      case 'stopped':
        check(this.#stage === 'exchange' && this.#step === 3 && !this.#passing, 'TB-6: a stop before the second round');
        this.#stopped = true;
        this.#step = 6;
        return;
      case 'drew':
        return this.#drew(event);
      case 'swapped':
        return this.#swapped(event);
      case 'discarded':
        return this.#discarded(event);
      case 'called':
        return this.#called(event);
      case 'won':
        return this.#won(event);
      case 'wallGame':
        this.#noOneCouldWin();
        check(this.#stage === 'discarded' && this.#unseen.length === 0, 'TB-18: a wall game when the wall is empty');
        this.ended = true;
    }
  }

  #dealt({ seat, tiles }: Extract<TableEvent, { type: 'dealt' }>): void {
    check(this.#stage === 'dealing' && this.#turn === seat, 'TB-2: dealt in turn');
    check(tiles.length === (seat === 0 ? 14 : 13), 'TB-2: East 14 tiles, the others 13');
    for (const tile of tiles) this.racks[seat]!.push(take(this.#unseen, tile));
    this.#turn = seat + 1;
    if (this.#turn === 4) this.#stage = 'exchange';
  }

  #gave({ seat, step, tiles, blind, asked, offered }: Extract<TableEvent, { type: 'gave' }>): void {
    check(this.#stage === 'exchange' && ORDER[this.#step] === step, 'TB-3, TB-6: steps in order');
    this.#passing ??= { step, gave: [undefined, undefined, undefined, undefined], received: 0, pool: [], blind: false };
    check(this.#passing.gave[seat] === undefined, 'each seat gives once a step');
    check(!tiles.includes(JOKER), 'TB-4: no joker is passed');
    if (step === 'courtesy')
      check(blind === 0 && tiles.length === Math.min(asked ?? 9, offered ?? 9), 'TB-7: the smaller number counts');
    else check(tiles.length + blind === 3 && blind >= 0, 'TB-3: three tiles');
    check(tiles.length <= 3, 'TB-7: three tiles at most');
    check(blind === 0 || step === 'left' || step === 'right2', 'TB-5: blind on first left and second right only');
    this.#passing.gave[seat] = [...tiles];
    this.#passing.blind ||= blind > 0;
    for (const tile of tiles) this.#passing.pool.push(take(this.racks[seat]!, tile));
  }

  #received({ seat, step, tiles }: Extract<TableEvent, { type: 'received' }>): void {
    const passing = this.#passing;
    check(passing !== undefined && passing.step === step && !passing.gave.includes(undefined), 'all give at once');
    check(tiles.length === passing.gave[seat]!.length, 'TB-8: as many tiles as before');
    const giver = (seat + 4 - STEPS_ON[step]) % 4;
    if (!passing.blind)
      check(same(tiles, passing.gave[giver]!), 'TB-3: the tiles of the right neighbour in the right direction');
    for (const tile of tiles) this.racks[seat]!.push(take(passing.pool, tile));
    passing.received += 1;
    if (passing.received < 4) return;
    check(passing.pool.length === 0, 'every tile passed arrives');
    for (const [place, rack] of this.racks.entries())
      check(rack.length === (place === 0 ? 14 : 13), 'TB-8: 14 and 13 tiles');
    this.#passing = undefined;
    this.#step += 1;
    if (this.#step === ORDER.length) this.#beginPlay();
  }

  #beginPlay(): void {
    this.#stage = 'called';
    this.#turn = 0;
  }

  #drew({ seat, tile }: Extract<TableEvent, { type: 'drew' }>): void {
    this.#noOneCouldWin();
    check(this.#stage === 'discarded' && seat === this.#turn, 'TB-9: a draw in turn, and East begins without');
    this.racks[seat]!.push(take(this.#unseen, tile));
    this.#stage = 'drawn';
  }

  #swapped({ seat, owner, tile }: Extract<TableEvent, { type: 'swapped' }>): void {
    check(
      (this.#stage === 'drawn' || this.#stage === 'called') && seat === this.#turn,
      'TB-10: a swap before the own discard',
    );
    this.#stage = 'drawn';
    check(!this.dead.has(seat), 'TB-33: a dead hand swaps no more');
    check(!this.#winsWith(seat, undefined), 'TB-17: who can win does');
    const exposure = this.exposures.find(
      (each) => each.seat === owner && each.kind === tile && each.tiles.includes(JOKER),
    );
    check(exposure !== undefined, 'TB-10: there is such a joker');
    exposure.tiles.push(take(this.racks[seat]!, tile));
    this.racks[seat]!.push(take(exposure.tiles, JOKER));
  }

  #discarded({ seat, tile }: Extract<TableEvent, { type: 'discarded' }>): void {
    check((this.#stage === 'drawn' || this.#stage === 'called') && seat === this.#turn, 'TB-9: a discard in turn');
    if (this.#stage === 'drawn' || this.discards.length + this.exposures.length === 0)
      check(this.#mayErr || !this.#winsWith(seat, undefined), 'TB-17: who can win does');
    this.discards.push(take(this.racks[seat]!, tile));
    this.#last = { tile, seat };
    this.#stage = 'discarded';
    this.#turn = (seat + 1) % 4;
  }

  #called({ seat, from, tile, group }: Extract<TableEvent, { type: 'called' }>): void {
    this.#noOneCouldWin();
    check(
      this.#stage === 'discarded' && this.#last?.tile === tile && this.#last.seat === from && from !== seat,
      'TB-11: the last discard of another',
    );
    check(tile !== JOKER, 'TB-16: a discarded joker is dead');
    check(
      group.length >= 3 && group.every((each) => each === tile || each === JOKER),
      'TB-11, TB-19: a group of three or more',
    );
    const own = [...group];
    take(own, tile);
    const tiles = [take(this.discards, tile)];
    for (const each of own) tiles.push(take(this.racks[seat]!, each));
    this.exposures.push({ seat, kind: tile, tiles });
    check(!this.dead.has(seat), 'TB-33: a dead hand calls no more');
    const fits = this.#card.ways.some((way, place) => !this.#card.concealed[place] && this.#groupsLeft(way, seat));
    check(fits || this.#mayErr, 'TB-14, TB-15: an open hand fits');
    if (!fits) this.dead.add(seat);
    this.#stage = 'called';
    this.#turn = seat;
  }

  #won({ seat, from, tile, way }: Extract<TableEvent, { type: 'won' }>): void {
    check(!this.dead.has(seat), 'TB-33: a dead hand never wins');
    if (from === undefined) check(this.#stage === 'drawn' || this.discards.length === 0, 'TB-17: a win by own draw');
    else {
      check(
        this.#stage === 'discarded' && this.#last?.seat === from && this.#last.tile === tile,
        'TB-12: a win on the last discard',
      );
      check(this.#mayErr || seat === this.#firstWinner(), 'TB-13: the first in turn order wins');
      this.racks[seat]!.push(take(this.discards, tile));
    }
    check(this.#makes(way, seat, this.racks[seat]!), 'TB-17: the tiles make the hand');
    const most = Math.max(...this.#made(seat, this.racks[seat]!).map((each) => this.#points(each)));
    check(this.#points(way) === most, 'TB-17: the hand of most points');
    this.ended = true;
  }

  #points(way: number): number {
    return this.#card.lines[this.#card.lineOf[way]!]!.points;
  }

  #noOneCouldWin(): void {
    check(this.#mayErr || this.#firstWinner() === undefined, 'TB-13, TB-17: who can win on a discard does');
  }

  #firstWinner(): number | undefined {
    if (this.#stage !== 'discarded' || this.#last === undefined || this.#last.tile === JOKER) return undefined;
    const { tile, seat } = this.#last;
    return [1, 2, 3].map((step) => (seat + step) % 4).find((other) => this.#winsWith(other, tile));
  }

  #winsWith(seat: number, tile: Kind | undefined): boolean {
    return this.#made(seat, tile === undefined ? this.racks[seat]! : [...this.racks[seat]!, tile]).length > 0;
  }

  #made(seat: number, rack: readonly Kind[]): number[] {
    // A way whose singles and pairs aren't all there needs no closer look.
    const has = Tiles.of(rack);
    const possible = [...this.#card.ways.keys()].filter((way) => this.#small(way).every((kind) => has.count(kind) > 0));
    return possible.filter((way) => this.#makes(way, seat, rack));
  }

  /** The kinds of a way's singles and pairs. */
  #small(way: number): readonly Kind[] {
    this.#smallKinds ??= this.#card.ways.map(({ groups }) =>
      groups.filter(({ size }) => size < 3).map(({ kind }) => kind),
    );
    return this.#smallKinds[way]!;
  }

  /** The groups of a way that are not exposed yet; undefined if an exposure is not among its groups. */
  #groupsLeft(way: Way, seat: number): { kind: Kind; size: number }[] | undefined {
    const groups = [...way.groups];
    for (const { kind, tiles } of this.exposures.filter((each) => each.seat === seat)) {
      const place = groups.findIndex((group) => group.kind === kind && group.size === tiles.length);
      if (place < 0) return undefined;
      groups.splice(place, 1);
    }
    return groups;
  }

  /** Whether a seat's exposures and these tiles are the way, group by group, small groups first. */
  #makes(place: number, seat: number, rack: readonly Kind[]): boolean {
    if (this.#card.concealed[place] === 1 && this.exposures.some((each) => each.seat === seat)) return false;
    const groups = this.#groupsLeft(this.#card.ways[place]!, seat);
    if (groups === undefined) return false;
    const counts = Tiles.of(rack).toCounts();
    for (const { kind, size } of groups.toSorted((one, other) => one.size - other.size)) {
      const naturals = Math.min(size, counts[kind]!);
      const jokers = size - naturals;
      if (jokers > 0 && (size < 3 || jokers > counts[JOKER]!)) return false;
      counts[kind]! -= naturals;
      counts[JOKER]! -= jokers;
    }
    return counts.every((count) => count === 0);
  }

  /** TB-20: all tiles are in exactly one place, and every kind as often as the set has it. */
  #countTiles(): void {
    const all = [...this.racks.flat(), ...this.exposures.flatMap(({ tiles }) => tiles), ...this.discards];
    all.push(...this.#unseen, ...(this.#passing?.pool ?? []));
    check(all.length === SET_SIZE && Tiles.of(all).equals(Tiles.fullSet), 'TB-20: all 152 tiles in exactly one place');
    check(!this.#stopped || this.#step >= 6, 'TB-6: no second round after a stop');
  }
}

const ORDER: readonly PassStep[] = ['right', 'across', 'left', 'left2', 'across2', 'right2', 'courtesy'];
const STEPS_ON = { right: 1, across: 2, left: 3, left2: 3, across2: 2, right2: 1, courtesy: 2 } as const;

function take(from: Kind[], tile: Kind): Kind {
  const place = from.indexOf(tile);
  check(place >= 0, 'the tile is where it is taken from');
  from.splice(place, 1);
  return tile;
}

function same(one: readonly Kind[], other: readonly Kind[]): boolean {
  return Tiles.of(one).equals(Tiles.of(other));
}

function check(holds: boolean, rule: string): asserts holds {
  if (!holds) throw new Error(`broken: ${rule}`);
}

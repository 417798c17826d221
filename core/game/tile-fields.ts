import { failure, type Problem, type Result, success } from '../base/result.ts';
import type { ExposedGroup } from '../card/way.ts';
import type { ExchangeCode } from '../exchange/state.ts';
import { JOKER, type Kind, supplyOf } from '../tiles/kinds.ts';
import { pluralNameOf } from '../tiles/names.ts';
import { parseTileList, parseTiles } from '../tiles/text.ts';
import type { Tiles } from '../tiles/tiles.ts';

/** Why an event is refused; the exchange's own reasons among them. */
export type GameCode =
  | ExchangeCode
  | 'bad-tiles'
  | 'not-dealt'
  | 'already-dealt'
  | 'play-begun'
  | 'bad-group'
  | 'no-exposure'
  | 'own-discard'
  | 'bad-result'
  | 'bad-note'
  | 'ended';
export type GameProblem = Problem<GameCode>;

export type Refusal = { readonly ok: false; readonly problem: GameProblem };

/** An event refused, with one sentence for the player. */
export function refuse(code: GameCode, message: string): Refusal {
  return failure(code, message);
}

/** The tiles of an event's field, in the order written. */
export function tileListField(text: string): Result<Kind[], GameProblem> {
  const list = parseTileList(text);
  return list.ok ? list : refuse('bad-tiles', list.problem.message);
}

/** The tiles of an event's field as a multiset. */
export function tilesField(text: string): Result<Tiles, GameProblem> {
  const tiles = parseTiles(text);
  return tiles.ok ? tiles : refuse('bad-tiles', tiles.problem.message);
}

/** The one tile of an event's field. */
export function tileField(text: string): Result<Kind, GameProblem> {
  const list = tileListField(text);
  if (!list.ok) return list;
  const [kind, ...others] = list.value;
  if (kind === undefined || others.length > 0) {
    return refuse('bad-tiles', `One tile belongs here, but "${text}" names ${list.value.length}: name just one.`);
  }
  return success(kind);
}

/** The group of an event's field, which `kind` was called for. */
export function groupField(text: string, kind: Kind): Result<ExposedGroup, GameProblem> {
  const tiles = tilesField(text);
  if (!tiles.ok) return tiles;
  const { size } = tiles.value;
  const jokers = tiles.value.count(JOKER);
  const naturals = tiles.value.count(kind);
  if (kind === JOKER) return refuse('bad-group', 'A discarded joker is dead: nobody can call it.');
  if (size < 3 || size > 6) {
    return refuse('bad-group', `A called group has three to six tiles, not ${size}: a single or a pair can only win.`);
  }
  if (naturals === 0 || naturals + jokers !== size) {
    return refuse(
      'bad-group',
      `The group must hold ${pluralNameOf(kind)} and jokers only, with the called tile among them.`,
    );
  }
  return success({ kind, size, jokers });
}

/** Refuses tiles that the set can't hold beside those accounted for; `accounted` includes the new ones. */
export function beyondSupply(accounted: Tiles): Refusal | undefined {
  const kind = accounted.distinct().find((each) => accounted.count(each) > supplyOf(each));
  if (kind === undefined) return undefined;
  const supply = supplyOf(kind);
  return refuse(
    'not-in-set',
    `The set has only ${supply} ${pluralNameOf(kind)}, and the others are accounted for: check this tile.`,
  );
}

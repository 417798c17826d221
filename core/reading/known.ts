import { failure, type Problem, type Result, success } from '../base/result.ts';
import { codeOf, KINDS, supplyOf } from '../tiles/kinds.ts';
import { pluralNameOf } from '../tiles/names.ts';
import { Tiles } from '../tiles/tiles.ts';

export type KnownCode = 'rack-size' | 'too-many-known' | 'draws';

/** What a player knows of the 152 tiles: the rack, the tiles gone, and so the unseen ones. */
export interface Known {
  readonly rack: Tiles;
  /** Given away, discarded or exposed: not in the rack and never to be drawn. */
  readonly gone: Tiles;
  /** All others: wall and the other players' racks. */
  readonly unseen: Tiles;
}

/** What is known with a rack of 13 or 14 tiles and other tiles out of play; refused if the set has too few. */
export function knownTiles(rack: Tiles, gone: Tiles = Tiles.none): Result<Known, Problem<KnownCode>> {
  if (rack.size !== 13 && rack.size !== 14) {
    return failure('rack-size', `A rack has 13 tiles, or 14 for the dealer, but this one has ${rack.size}.`);
  }
  return knownBesides(rack, gone);
}

/** The same for a rack of any size: between giving and receiving it has fewer than 13 tiles. */
export function knownBesides(rack: Tiles, gone: Tiles): Result<Known, Problem<KnownCode>> {
  const seen = rack.plus(gone);
  for (const kind of KINDS) {
    if (seen.count(kind) <= supplyOf(kind)) continue;
    return failure(
      'too-many-known',
      `The rack and the tiles gone hold ${seen.count(kind)} ${pluralNameOf(kind)} (${codeOf(kind)}) together, but the set has only ${supplyOf(kind)}.`,
    );
  }
  return success({ rack, gone, unseen: Tiles.fullSet.minus(seen) });
}

/** A number of draws that the unseen tiles allow. */
export function drawsFrom(known: Known, draws: number): Result<number, Problem<KnownCode>> {
  if (Number.isInteger(draws) && draws >= 0 && draws <= known.unseen.size) return success(draws);
  return failure('draws', `The number of draws must be a whole number from 0 to ${known.unseen.size}.`);
}

import { type Problem, type Result, success } from '../base/result.ts';
import type { Line } from '../card/card.ts';
import { JOKER } from '../tiles/kinds.ts';
import type { Tiles } from '../tiles/tiles.ts';
import type { CompiledCard } from './compiled.ts';
import { emptyDeficits, fillDeficits } from './deficits.ts';
import { DrawReachTable } from './draw-reach.ts';
import { drawsFrom, type Known, type KnownCode, knownTiles } from './known.ts';
import { leanOf, type SectionShare } from './lean.ts';
import { FIRST_REACH_MODEL, type ReachModel } from './reach-model.ts';
import { readerOf, reachOfDeficits } from './reader.ts';

/** Draws that a reading looks ahead by default. */
export const DEFAULT_DRAWS = 20;

/** A rack read against a card: every way with its numbers. Arrays are by way number of `compiled`. */
export interface Reading {
  readonly compiled: CompiledCard;
  readonly known: Known;
  readonly draws: number;
  readonly model: ReachModel;
  /** The smallest away; 14 for a card without ways. */
  readonly away: number;
  readonly aways: Uint8Array;
  readonly drawReaches: Float64Array;
  readonly reaches: Float64Array;
  /** How the reach is spread over the card's sections, largest share first. */
  readonly lean: readonly SectionShare[];
}

export interface ReadingOptions {
  /** Tiles given away, discarded or exposed. */
  readonly gone?: Tiles;
  /** Draws for draw reach. */
  readonly draws?: number;
  readonly model?: ReachModel;
}

/** Reads a rack of 13 or 14 tiles against a card. Refused when the set can't hold rack and gone tiles. */
export function readRack(
  compiled: CompiledCard,
  rack: Tiles,
  options: ReadingOptions = {},
): Result<Reading, Problem<KnownCode>> {
  const known = knownTiles(rack, options.gone);
  if (!known.ok) return known;
  const draws = drawsFrom(known.value, options.draws ?? Math.min(DEFAULT_DRAWS, known.value.unseen.size));
  if (!draws.ok) return draws;
  return success(readKnown(compiled, known.value, draws.value, options.model ?? FIRST_REACH_MODEL));
}

/** `readRack` for what is known to be right. */
export function readKnown(compiled: CompiledCard, known: Known, draws: number, model: ReachModel): Reading {
  const { wayCount } = compiled;
  const counts = known.rack.toCounts();
  const unseen = known.unseen.toCounts();
  const unseenJokers = unseen[JOKER] as number;
  const { tree, products, reach } = readerOf(model);
  const drawTable = new DrawReachTable(products, known.unseen.size, unseenJokers, draws);
  const deficits = emptyDeficits();
  const aways = new Uint8Array(wayCount);
  const drawReaches = new Float64Array(wayCount);
  const reaches = new Float64Array(wayCount);
  let smallest = 14;
  for (let way = 0; way < wayCount; way += 1) {
    fillDeficits(compiled, way, counts, unseen, deficits);
    aways[way] = deficits.away;
    if (deficits.away < smallest) smallest = deficits.away;
    drawReaches[way] = drawTable.chanceOf(tree.nodeOf(deficits), deficits.shortage);
    reaches[way] = reachOfDeficits(reach, deficits, unseenJokers, compiled.concealed[way] === 1);
  }
  const lean = leanOf(compiled, reaches);
  return { compiled, known, draws, model, away: smallest, aways, drawReaches, reaches, lean };
}

/** The line that a way belongs to. */
export function lineOfWay(compiled: CompiledCard, way: number): Line {
  return compiled.lines[compiled.lineOf[way] as number] as Line;
}

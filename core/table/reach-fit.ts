import { finish } from '../base/steps.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import { type ReachModel, reachModelFor, STAGE, type StageTerms, termsAt } from '../reading/reach-model.ts';
import { HazardCount, othersHaveWon } from './figures.ts';
import type { GameEnd } from './play.ts';
import { WALL_AT_START } from '../tiles/deal.ts';
import { simulateGames, USUAL_POLICIES } from './simulate.ts';

/** Games played to measure how soon others win with a card; one to two seconds of play. */
const FIT_GAMES = 800;
/** The same games every time, so that a reading is the same on every machine. */
const FIT_SEED = 7;

const STAGES = Math.ceil(WALL_AT_START / STAGE);
const PARTS = 5;

/**
 * The model of reach for a card when play begins: the shape is the same for all cards
 * (core/reading/reach-shape.ts), the rate at which others win comes from these games of four soft
 * players with this card.
 */
export function fitReachModel(compiled: CompiledCard, seed = FIT_SEED, games = FIT_GAMES): ReachModel {
  return reachModelFor(termsAt(finish(fitTerms(compiled, seed, games)), 0));
}

/** The terms for every stage of play, in steps of some games; each yields the part done, 0 to 1. */
export function* fitTerms(
  compiled: CompiledCard,
  seed = FIT_SEED,
  games = FIT_GAMES,
): Generator<number, StageTerms, void> {
  const hazards = new HazardCount();
  const afterGame = (_: unknown, outcome: GameEnd): void => hazards.note(outcome);
  const run = simulateGames({ compiled, seed, games, policies: USUAL_POLICIES }, { afterGame });
  for (let step = run.next(); step.done !== true; step = run.next()) yield step.value.games / games;
  const won = othersHaveWon(hazards.hazard());
  const source = `how soon others win: ${games} simulated games with this card`;
  return Array.from({ length: STAGES }, (_, stage) => ({
    ends: endsAfter(won, stage * STAGE),
    wallLeft: WALL_AT_START - stage * STAGE,
    source,
  }));
}

/**
 * When the game ends for a player who does not win herself (MODEL.md, MD-C4 and MD-C8): the means of the
 * fifths of the distribution, in tiles that all seats still draw, to a tenth. `won[d]` is the
 * chance that another has won by d tiles drawn; who has not been beaten plays to the wall's end.
 */
export function endsAfter(won: readonly number[], drawn: number): number[] {
  const before = won[drawn] as number;
  const ends: number[] = [];
  let sum = 0;
  let room = 1 / PARTS;
  const close = (): void => {
    ends.push(Math.round(10 * PARTS * sum) / 10);
    sum = 0;
    room = 1 / PARTS;
  };
  for (let at = drawn + 1; at <= WALL_AT_START; at += 1) {
    const by = at === WALL_AT_START ? 1 : (won[at] as number);
    let mass = (by - (won[at - 1] as number)) / (1 - before);
    for (; mass >= room && ends.length < PARTS - 1; close()) {
      sum += room * (at - drawn);
      mass -= room;
    }
    sum += mass * (at - drawn);
    room -= mass;
  }
  close();
  return ends;
}

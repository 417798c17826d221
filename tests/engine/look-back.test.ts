import { readFileSync } from 'node:fs';
import { expect, test, vi } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { finish } from '../../core/base/steps.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { type LookBackProgress, lookBack, tryAnother } from '../../core/engine/game-questions.ts';
import type * as states from '../../core/game/state.ts';
import type * as reachValues from '../../core/plan/reach-values.ts';
import type * as wayValues from '../../core/plan/way-values.ts';
import { type RaceRule, USUAL_RULE } from '../../core/plan/race.ts';
import type { Review } from '../../core/review/review.ts';
import { FIRST_STAGES } from '../../core/review/yardstick.ts';
import type * as tableCards from '../../core/table/table-card.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { ANY_CHANCE, recordOf, TWICE_CARD, TWO_ROUNDS } from '../review/helpers.ts';

/** How often the dear parts of a look-back were made. */
const made = vi.hoisted(() => ({ reachTables: 0, awayTables: 0, tableCards: 0, replays: 0 }));

vi.mock('../../core/plan/reach-values.ts', async (original) => {
  const real = await original<typeof reachValues>();
  class Counted extends real.ReachValues {
    constructor(...given: ConstructorParameters<typeof real.ReachValues>) {
      super(...given);
      made.reachTables += 1;
    }
  }
  return { ...real, ReachValues: Counted };
});
vi.mock('../../core/plan/way-values.ts', async (original) => {
  const real = await original<typeof wayValues>();
  class Counted extends real.HeldValues {
    constructor(...given: ConstructorParameters<typeof real.HeldValues>) {
      super(...given);
      made.awayTables += 1;
    }
  }
  return { ...real, HeldValues: Counted };
});
vi.mock('../../core/table/table-card.ts', async (original) => {
  const real = await original<typeof tableCards>();
  const makeTableCard: typeof real.makeTableCard = (compiled) => {
    made.tableCards += 1;
    return real.makeTableCard(compiled);
  };
  return { ...real, makeTableCard };
});
vi.mock('../../core/game/state.ts', async (original) => {
  const real = await original<typeof states>();
  const counted =
    <Given extends readonly unknown[], Made>(replay: (...given: Given) => Made) =>
    (...given: Given): Made => {
      made.replays += 1;
      return replay(...given);
    };
  return { ...real, stateOf: counted(real.stateOf), statesOf: counted(real.statesOf) };
});

/** Few futures, where only the course of things is looked at. */
const QUICK: RaceRule = { ...USUAL_RULE, blockSize: 4, looks: [2] };

const RECORD = recordOf(TWO_ROUNDS);
const REQUEST = { record: RECORD, stages: FIRST_STAGES, fit: ANY_CHANCE } as const;
/** What a try is made with: the measure of the look-back. */
const EXACT = { stages: FIRST_STAGES, chance: ANY_CHANCE } as const;
const SIZES = 1 + 1 + 4 + 1;

test('a look-back makes one table of each pass, one replay and one card for the table', () => {
  // The test's own helpers make a card, too.
  made.tableCards = 0;
  const review = expectValue(finish(lookBack({ ...REQUEST, rule: QUICK })));
  expect(review.lookedAhead).toBe(true);
  expect(review.decisions.map(({ kind }) => kind)).toEqual(['pass', 'pass', 'pass', 'second-round', 'pass']);
  expect(made).toEqual({ reachTables: SIZES, awayTables: 0, tableCards: 1, replays: 1 });
});

test('another pass is tried without a further table, since the last game is kept', () => {
  const before = made.reachTables;
  const tiles = expectValue(parseTiles('N E F')).toCounts();
  const tried = finish(tryAnother({ record: RECORD, exact: EXACT, place: 1, tiles }));
  expect(expectValue(tried).tried.average).toBeGreaterThan(0);
  expect(made.reachTables).toBe(before);
});

test('the exact review comes first, then it grows choice by choice; one that is known is not made again', () => {
  const steps: LookBackProgress[] = [];
  const whole = lookBack({ ...REQUEST, rule: QUICK });
  for (let step = whole.next(); step.done !== true; step = whole.next()) steps.push(step.value);
  const grown = steps.flatMap(({ stage, review }) => (review === null ? [] : [{ stage, review }]));
  expect(grown.map(({ stage }) => stage)).toEqual(['exact', 'ahead', 'ahead', 'ahead', 'ahead']);
  expect(grown.map(({ review }) => review.decisions.filter(({ ahead }) => ahead !== null).length)).toEqual([
    0, 1, 2, 3, 5,
  ]);
  const done = steps.filter(({ stage }) => stage === 'exact').map((each) => each.done);
  expect(done).toEqual([...done].sort((one, other) => one - other));
  const exact = grown[0]?.review ?? null;
  const again = expectValue(finish(lookBack({ record: RECORD, exact, rule: QUICK })));
  expect(again).toEqual(expectValue(finish(lookBack({ ...REQUEST, rule: QUICK }))));
  expect(structuredClone(again)).toEqual(again);
});

test('illegal events and a card that is none are refused with a sentence', () => {
  const illegal = finish(lookBack({ record: recordOf([TWO_ROUNDS[1] as GameEvent]), stages: FIRST_STAGES }));
  expect(illegal).toMatchObject({ ok: false, problem: { code: 'not-dealt', at: 0 } });
  expect(finish(lookBack({ record: recordOf(TWO_ROUNDS, {}) })).ok).toBe(false);
});

/** What a look-back was in each version of the review: a file that was written is never changed, a new one is added. */
function kept(version: number): Partial<Review> {
  return JSON.parse(readFileSync(new URL(`look-back-${version}.json`, import.meta.url), 'utf8')) as Partial<Review>;
}

/** What an exact review says of the passes and of play, beside the ledger, which was one of reach up to version 7. */
function judged({ decisions = [], cost, card, model, stages }: Partial<Review>): object {
  const exact = decisions
    .filter(({ kind }) => kind !== 'second-round')
    .map(({ place, rack, chosen, best, top, choices, verdict }) => ({
      place,
      rack,
      chosen,
      best,
      top,
      choices,
      verdict,
    }));
  return { exact, cost, card, model, stages };
}

test('a game without groups laid open has its passes judged as when version 5 began', () => {
  const now = expectValue(finish(lookBack({ ...REQUEST, rule: null })));
  expect(judged(now)).toEqual(judged(kept(5)));
});

/** Naturals of an open kong don't fill a pair of their kind too, as they did up to version 6, where this hand was complete. */
const OPEN_KONG: readonly GameEvent[] = [
  { type: 'dealt', seat: 'South', tiles: 'J 111b 2222c 3333d 9d' },
  { type: 'discarded', seat: 'West', tile: '1b' },
  { type: 'called', seat: 'South', tile: '1b', group: '1111b' },
  { type: 'discarded', seat: 'South', tile: '9d' },
  { type: 'discarded', seat: 'East', tile: '5c' },
  { type: 'drew', tile: 'J' },
  { type: 'discarded', seat: 'South', tile: 'J' },
  { type: 'ended', result: 'wall' },
];

test('a hand with a group laid open has the verdicts that it had when version 7 began, and the costs of version 9', () => {
  const record = recordOf(OPEN_KONG, TWICE_CARD);
  const { chance } = kept(8);
  const now = expectValue(finish(lookBack({ record, stages: FIRST_STAGES, fit: chance ?? null, rule: null })));
  const verdicts = ({ decisions }: Partial<Review>): unknown =>
    decisions?.map(({ place, kind, chosen, best, verdict }) => [place, kind, chosen.tiles, best.tiles, verdict]);
  expect(verdicts(now)).toEqual(verdicts(kept(7)));
  const costs = ({ decisions }: Partial<Review>): unknown =>
    decisions?.map(({ cost, top }) => [cost, top.map(({ tiles, worth }) => [tiles, worth])]);
  expect(costs(now)).toEqual(costs(kept(9)));
  // Version 10 books choices for no more than they cost; what it forecasts is what version 8 booked.
  const moved = now.ledger.parts.filter(({ forecast }) => forecast !== 0);
  expect(moved.map(({ forecast }) => forecast)).toEqual(kept(8).ledger?.parts.map(({ amount }) => amount));
  // Version 11 says the same of it in other words, and what was done with the tiles.
  expect(now.ledger).toEqual(kept(10).ledger);
  // Version 12 judges the second round by how often the players of a table stop it; here it is the same as before.
  expect({ ...now, reviewVersion: 11 }).toEqual(kept(11));
  // With the chance that it was judged with, a kept look-back comes out again.
  expect({ ...now, reviewVersion: 12 }).toEqual(kept(12));
  expect(now).toEqual(kept(13));
});

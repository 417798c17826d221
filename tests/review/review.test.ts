import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { stateOf } from '../../core/game/state.ts';
import { type Decision, EQUAL_WITHIN, verdictOf } from '../../core/review/decision.ts';
import { asJudged, LedgerBook, PART_KINDS } from '../../core/review/ledger.ts';
import { FIRST_STAGES } from '../../core/review/yardstick.ts';
import { PlayedGame } from '../../core/review/played-game.ts';
import { reviewSteps } from '../../core/review/review.ts';
import { reviewText } from '../../core/review/text.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import {
  ANY_CHANCE,
  FEW_GAMES,
  gameChance,
  lookedBack,
  playedGame,
  recordOf,
  review,
  SMALL,
  SMALL_GAMES,
} from './helpers.ts';
import { randomGame } from './random-game.ts';

/** South is dealt the beginning of Stairs, gives well and badly, calls, and wins. */
const GAME: GameEvent[] = [
  { type: 'dealt', seat: 'South', tiles: 'JJ FF NE 0 1389b 25c' },
  { type: 'gave', step: 'right', tiles: 'N E 0' },
  { type: 'received', step: 'right', tiles: '4d' },
  { type: 'received', step: 'right', tiles: '4d 1b' },
  { type: 'gave', step: 'across', tiles: '44d 9b' },
  { type: 'received', step: 'across', tiles: '22b S' },
  { type: 'noted', text: 'one flower to spare?', about: 4 },
  { type: 'gave', step: 'left', tiles: 'S 8b', blind: 1 },
  { type: 'received', step: 'left', tiles: '2b W' },
  { type: 'stopped', before: 'left2' },
  { type: 'gave', step: 'courtesy', tiles: 'W', asked: 2, offered: 1 },
  { type: 'received', step: 'courtesy', tiles: '3b' },
  { type: 'discarded', seat: 'East', tile: 'N' },
  { type: 'drew', tile: '3b' },
  { type: 'discarded', seat: 'South', tile: 'F' },
  { type: 'discarded', seat: 'West', tile: '1b' },
  { type: 'called', seat: 'South', tile: '1b', group: '111b J' },
  { type: 'discarded', seat: 'South', tile: '2c' },
  { type: 'discarded', seat: 'North', tile: '3b' },
  { type: 'drew', tile: 'G' },
  { type: 'discarded', seat: 'South', tile: 'G' },
  { type: 'ended', result: 'won', winner: 'South', by: 'discard', from: 'East', lineId: 's1' },
];
const WHOLE = review(GAME);

describe('every decision of the exchange and of play', () => {
  test('is there, in order, with the rack as it was', () => {
    expect(WHOLE.decisions.map(({ place, kind, rack }) => [place, kind, rack])).toEqual([
      [1, 'pass', 'JJ FF NE 0 1389b 25c'],
      [4, 'pass', 'JJ FF 11389b 25c 44d'],
      [7, 'pass', 'JJ FF S 112238b 25c'],
      [10, 'courtesy', 'JJ FF W 112223b 25c'],
      [14, 'discard', 'JJ FF 11222333b 25c'],
      [16, 'call', 'JJ F 11222333b 25c'],
      [17, 'discard', 'J F 222333b 25c'],
      [18, 'let-go', 'J F 222333b 5c'],
      [20, 'discard', 'J F G 222333b 5c'],
    ]);
  });
  test('names the choice made, the best, and a cost: of a pass their difference, in play what the Table says', () => {
    for (const { step, chosen, best, cost } of WHOLE.decisions) {
      if (step !== null) expect(cost).toBe(best.worth - chosen.worth);
      else if (cost > 0) expect(cost).toBeCloseTo(best.worth - chosen.worth, 12);
      expect(cost).toBeGreaterThanOrEqual(0);
    }
    expect(WHOLE.cost).toBeCloseTo(
      WHOLE.decisions.reduce((sum, { cost }) => sum + cost, 0),
      12,
    );
  });
  test('throwing a flower that the hand needs is found out, and said in words', () => {
    const flower = WHOLE.decisions.find(({ place }) => place === 14);
    expect(flower).toMatchObject({ verdict: 'costly', chosen: { tiles: 'F' }, best: { tiles: '2c' } });
    expect(flower?.why).toEqual([
      'Your best hand then was Stairs, 1st line (FF 1111b 2222b 3333b).',
      'It wanted the flower, not the two crak.',
    ]);
  });
  test('carries what the user noted about it', () => {
    expect(WHOLE.decisions.map(({ notes }) => notes).filter(({ length }) => length > 0)).toEqual([
      ['one flower to spare?'],
    ]);
  });
  test('lists its best choices first', () => {
    for (const { top, best } of WHOLE.decisions) {
      const worths = top.map(({ worth }) => worth);
      expect(worths.every((worth, at) => at === 0 || worth <= (worths[at - 1] as number) + 1e-12)).toBe(true);
      expect(best.worth).toBeCloseTo(worths[0] as number, 11);
    }
  });
  test('where tiles may go on unseen, fewer own tiles are choices too', () => {
    const left = WHOLE.decisions.find(({ step }) => step === 'left');
    const right = WHOLE.decisions.find(({ step }) => step === 'right');
    expect([left?.choices, right?.choices]).toEqual([
      passesOf('FF S 112238b 25c', [0, 1, 2, 3]),
      passesOf('FF NE 0 1389b 25c', [3]),
    ]);
  });
});

/** The number of different passes of some sizes, by plain listing of all places. */
function passesOf(text: string, sizes: readonly number[]): number {
  const kinds = expectValue(parseTiles(text)).toKinds();
  const seen = new Set<string>();
  for (let picks = 0; picks < 2 ** kinds.length; picks += 1) {
    const some = kinds.filter((_, at) => (picks >> at) % 2 === 1);
    if (sizes.includes(some.length)) seen.add(some.join());
  }
  return seen.size;
}

describe('verdicts', () => {
  test.each([
    [0, 'best'],
    [1e-9, 'equal'],
    [EQUAL_WITHIN, 'equal'],
    [0.0051, 'slip'],
    [0.02, 'costly'],
  ])('a cost of %d is called %s', (cost, verdict) => {
    expect(verdictOf(cost)).toBe(verdict);
  });
  test('a discard that should have been called says so, and a group that no hand wants too', () => {
    const start = GAME.slice(0, 14);
    const missed = review([
      ...start,
      { type: 'discarded', seat: 'South', tile: '2c' },
      { type: 'discarded', seat: 'West', tile: '1b' },
    ]);
    expect(missed.decisions.at(-1)).toMatchObject({
      kind: 'let-go',
      verdict: 'costly',
      why: ['Laying open joker and three one bams would have left Stairs, 1st line, one away.'],
    });
    const poor: GameEvent = { type: 'called', seat: 'South', tile: '1b', group: '111b' };
    const why = review([...start, { type: 'discarded', seat: 'South', tile: '2c' }, poor]).decisions.at(-1)?.why;
    expect(why).toEqual(['Laying open joker and three one bams would have left Stairs, 1st line, one away.']);
  });
  test('with nothing else to do a decision is forced', () => {
    const none: GameEvent = { type: 'gave', step: 'courtesy', tiles: '', asked: 0, offered: 2 };
    const decision = review([...GAME.slice(0, 10), none]).decisions.at(-1);
    expect(decision).toMatchObject({ kind: 'courtesy', forced: true, cost: 0, choices: 1 });
  });
  test('a discard that another called or won with was not let go', () => {
    const thrown = GAME.slice(0, 16);
    const kinds = (...more: GameEvent[]): string[] => review([...thrown, ...more]).decisions.map(({ kind }) => kind);
    expect(kinds()).toContain('let-go');
    expect(kinds({ type: 'called', seat: 'North', tile: '1b', group: '1b JJ' })).not.toContain('let-go');
    expect(kinds({ type: 'ended', result: 'won', winner: 'North', by: 'discard', from: 'West' })).not.toContain(
      'let-go',
    );
  });
  test('a swap is weighed against leaving the joker', () => {
    const shown: GameEvent = { type: 'called', seat: 'West', tile: '9b', group: '99b J' };
    const swap: GameEvent = { type: 'swapped', seat: 'South', owner: 'West', tile: '9b' };
    const decision = review([GAME[0] as GameEvent, shown, swap]).decisions.at(-1);
    expect(decision).toMatchObject({ kind: 'swap', verdict: 'best', choices: 2, chosen: { tiles: '9b' } });
  });
  test("others' swaps and calls are the table's, not the user's", () => {
    const shown: GameEvent = { type: 'called', seat: 'West', tile: '3b', group: '33b J' };
    const { decisions, ledger } = review([
      GAME[0] as GameEvent,
      shown,
      { type: 'swapped', seat: 'North', owner: 'West', tile: '3b' },
    ]);
    expect(decisions).toEqual([]);
    expect(ledger.parts.map(({ kind }) => kind)).toContain('others');
  });
  test('a tile that the hand needs more than a joker', () => {
    const dealt: GameEvent = { type: 'dealt', seat: 'South', tiles: 'FFFF JJJJJJ 9b 9c 0' };
    const shown: GameEvent = { type: 'called', seat: 'West', tile: '0', group: '00 J' };
    const decision = review([dealt, shown, { type: 'swapped', seat: 'South', owner: 'West', tile: '0' }]).decisions.at(
      -1,
    );
    expect(decision).toMatchObject({
      kind: 'swap',
      best: { tiles: '' },
      why: ['The tile was worth more in the hand than the joker.'],
    });
  });
  test('a called group that no hand wants is worth nothing', () => {
    const call: GameEvent = { type: 'called', seat: 'South', tile: 'W', group: 'W JJ' };
    expect(review([GAME[0] as GameEvent, call]).decisions.at(-1)).toMatchObject({
      kind: 'call',
      verdict: 'costly',
      chosen: { worth: 0 },
    });
  });
});

describe('CR-G5: the ledger: deal + tiles received + choices = outcome', () => {
  test('start and parts add up to the end within 1e-9, in 12 random games', () => {
    const property = fc.property(fc.nat(1_000_000), (seed) => {
      const { ledger } = review(randomGame(seed), SMALL, FIRST_STAGES, FEW_GAMES);
      const whole = ledger.parts.reduce((sum, { amount }) => sum + amount, ledger.start);
      const totals = PART_KINDS.reduce((sum, kind) => sum + ledger.totals[kind], ledger.start);
      expect(Math.abs(whole - ledger.end)).toBeLessThan(1e-9);
      expect(Math.abs(totals - ledger.end)).toBeLessThan(1e-9);
    });
    fc.assert(property, { seed: 41, numRuns: 12 });
  }, 120_000);
  test('a choice counts against the steady player’s; never for more than the list says that it gave up', () => {
    const chance = gameChance();
    for (const { place, kind, decision, amount, forecast } of WHOLE.ledger.parts) {
      if (kind !== 'choice') continue;
      const judged = WHOLE.decisions.find((each) => each.place === place && each.kind === decision);
      expect(judged?.verdict === 'best' || judged?.verdict === 'equal' ? amount : 0).toBeGreaterThanOrEqual(0);
      if (judged !== undefined && judged.step === null) expect(amount).toBeGreaterThanOrEqual(-judged.cost);
      const before = expectValue(stateOf(GAME.slice(0, place)));
      const after = expectValue(stateOf(GAME.slice(0, place + 1)));
      if (decision === 'discard' || decision === 'pass') {
        expect(forecast).toBeCloseTo(chance.at(after, GAME) - chance.at(before, GAME), 12);
      }
    }
    const flower = WHOLE.ledger.parts.find(({ place }) => place === 14);
    expect(flower).toMatchObject({ kind: 'choice', decision: 'discard' });
    expect(flower?.amount).toBeLessThan(-0.02);
  });
  test('each part is booked where it came about, and the win on a discard with the others', () => {
    const kinds = (place: number): string[] =>
      WHOLE.ledger.parts.filter((part) => part.place === place).map(({ kind }) => kind);
    expect([0, 3, 5, 9, 13, 15, 21].map(kinds)).toEqual([
      ['deal'],
      ['received'],
      ['received'],
      ['others'],
      ['draws'],
      ['others'],
      ['others'],
    ]);
    expect(WHOLE.ledger.start).toBe((1 - ANY_CHANCE.table.wallGames) / 4);
  });
  test.each<[GameEvent, number | null]>([
    [{ type: 'ended', result: 'won', winner: 'South' }, 1],
    [{ type: 'ended', result: 'won', winner: 'East' }, 0],
    [{ type: 'ended', result: 'wall' }, 0],
    [{ type: 'ended', result: 'abandoned' }, null],
  ])('%j ends it at %s', (event, end) => {
    const { ledger } = review([...GAME.slice(0, 4), event]);
    const open = gameChance().at(expectValue(stateOf(GAME.slice(0, 4))), GAME);
    expect(ledger.end).toBe(end ?? open);
    if (end !== null) expect(ledger.parts.at(-1)?.kind).toBe('rest');
  });
  test('what is taken off a choice goes to what came next, and the parts still add up', () => {
    const part = { decision: null };
    const raw = new LedgerBook(0.25);
    raw.move({ ...part, kind: 'choice', place: 1, decision: 'discard', chance: 0.05 });
    raw.move({ ...part, kind: 'draws', place: 2, chance: 0.15 });
    raw.move({ ...part, kind: 'choice', place: 3, decision: 'discard', chance: 0 });
    raw.end({ ...part, kind: 'others', place: 4, chance: 0 });
    const [first] = WHOLE.decisions.filter(({ kind }) => kind === 'discard');
    const judged = (place: number, cost: number): Decision => ({
      ...(first as Decision),
      place,
      cost,
      verdict: cost === 0 ? 'best' : 'costly',
    });
    const { parts, end } = asJudged(raw.close(), [judged(1, 0.08), judged(3, 0)]);
    expect(parts.map(({ amount }) => Math.round(100 * amount))).toEqual([-8, -2, 0, -15]);
    expect(end).toBeCloseTo(0, 12);
    const again = asJudged({ ...raw.close(), parts }, [judged(1, 0.2), judged(3, 0.2)]);
    expect(again.parts.map(({ amount }) => Math.round(100 * amount))).toEqual([-20, 10, -15, 0]);
  });
  test('passes that were not entered are no luck with tiles received', () => {
    const drew: GameEvent = { type: 'drew', tile: '9d' };
    const { ledger } = review([...GAME.slice(0, 4), drew]);
    const last = ledger.parts.filter(({ place }) => place === 4).map(({ kind }) => kind);
    expect(last).toContain('rest');
    expect(last).not.toContain('received');
  });
});

describe('CR-G8: judged only on what was known then', () => {
  test('whatever comes later, earlier decisions stay as they were', () => {
    const property = fc.property(fc.nat(1_000_000), fc.nat(), (seed, cut) => {
      const events = randomGame(seed).filter(({ type }) => type !== 'noted');
      const kept = events.slice(0, 1 + (cut % events.length));
      const last = kept.length - 1;
      const early = (from: readonly GameEvent[]): unknown =>
        review(from, SMALL, FIRST_STAGES, FEW_GAMES).decisions.filter(({ place }) => place < last);
      expect(early(kept)).toEqual(early(events));
    });
    fc.assert(property, { seed: 43, numRuns: 40 });
  }, 120_000);
});

describe('the review as a whole', () => {
  test('progress is told event by event', () => {
    const told = [...reviewSteps(recordOf(GAME), playedGame(GAME), gameChance())];
    expect(new Set(told.map(({ of }) => of))).toEqual(new Set([GAME.length]));
    expect([...new Set(told.map(({ done }) => done))]).toEqual([...GAME.keys()].map((place) => place + 1));
  });
  test('an illegal game is refused with its event', () => {
    const game = PlayedGame.of([GAME[2] as GameEvent], SMALL_GAMES);
    expect(game).toMatchObject({ ok: false, problem: { code: 'not-dealt', at: 0 } });
  });
  test('in one go against the card kept with the game, the same each time', () => {
    const again = (): ReturnType<typeof lookedBack> => lookedBack(recordOf(GAME.slice(0, 6)), FIRST_STAGES);
    const [one, other] = [again(), again()];
    expect(one).toEqual(other);
    expect(expectValue(one).chance).toMatchObject({ kind: 'club', games: 400 });
    expect(lookedBack(recordOf(GAME, {})).ok).toBe(false);
    expect(lookedBack(recordOf([GAME[2] as GameEvent]), FIRST_STAGES)).toMatchObject({
      ok: false,
      problem: { code: 'not-dealt', at: 0 },
    });
  }, 180_000);
});

describe('the review as text for people', () => {
  const text = reviewText(WHOLE, recordOf(GAME));
  test('tells each decision and the ledger', () => {
    expect(text).toContain('1. First right pass: about ');
    expect(text).toContain('4. Courtesy pass: nothing was better');
    expect(text).toContain('   You noted: one flower to spare?');
    expect(text).toMatch(/Your choices +-\d/);
    expect(text).toMatch(/At the end +100\n/);
  });
  test('no sentence of its reasons is longer than 20 words', () => {
    for (const sentence of WHOLE.decisions.flatMap(({ why }) => why))
      expect(sentence.split(' ').length).toBeLessThanOrEqual(20);
  });
  test('a game without decisions says so', () => {
    expect(reviewText(review([]), recordOf([]))).toContain('No decision of yours is logged.');
  });
});

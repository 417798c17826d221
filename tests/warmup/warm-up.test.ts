import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectValue, type Result } from '../../core/base/result.ts';
import { PASS_STEPS } from '../../core/exchange/steps.ts';
import { stateOf } from '../../core/game/state.ts';
import { JOKER } from '../../core/tiles/kinds.ts';
import { formatTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { itemOfDeal, makeItem } from '../../core/warmup/item.ts';
import { parseDealCode } from '../../core/warmup/deal-code.ts';
import { type OwnMove, PracticeTable } from '../../core/warmup/practice-table.ts';
import {
  answerDue,
  answered,
  type Attempt,
  blindNow,
  isOver,
  mayStop,
  movesToGoOn,
  NOTHING_SAID,
  problemNow,
  rackNow,
  startWarmUp,
  stepNow,
  type WarmUp,
  wentOn,
} from '../../core/warmup/warm-up.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { yardstick, tiles } from './demo.ts';

const TABLE = makeTableCard(yardstick.compiled);
const item = itemOfDeal({ seed: 7, tiles: 13, kind: 'any' });
const table = new PracticeTable(TABLE);
const dealOf = (warmUp: WarmUp) => ({ rack: tiles(warmUp.item.rack), seat: warmUp.item.seat, seed: 7 });

const good = <Value>(result: Result<Value>): Value => expectValue(result);
const start = (): WarmUp => good(startWarmUp(item));

/** The first tiles of the rack that may be passed. */
const firstOf = (warmUp: WarmUp, count: number): Tiles =>
  Tiles.of(
    rackNow(warmUp)
      .toKinds()
      .filter((kind) => kind !== JOKER)
      .slice(0, count),
  );

/** An answer with all that is not named left open. */
const said = (change: Partial<Attempt>): Attempt => ({ ...NOTHING_SAID, ...change });

/** Answers the decision that is due with the first tiles. */
function withFirst(warmUp: WarmUp, count = 3): WarmUp {
  const blind = stepNow(warmUp) === 'courtesy' ? 0 : 3 - count;
  const give = formatTiles(firstOf(warmUp, count));
  return good(answered(warmUp, said({ give, blind, aims: ['section:Three Shores'] })));
}

function goneOn(warmUp: WarmUp, moves: readonly OwnMove[] | null): WarmUp {
  if (moves === null) throw new Error('nothing to go on with');
  return wentOn(warmUp, moves, table.exchange(dealOf(warmUp), moves));
}

/** Three passes made at the table of a deal by its seed. */
function afterFirstRound(seed: number): WarmUp {
  let warmUp = good(startWarmUp(itemOfDeal({ seed, tiles: 13, kind: 'any' })));
  const deal = { rack: tiles(warmUp.item.rack), seat: warmUp.item.seat, seed };
  for (let pass = 0; pass < 3; pass += 1) {
    const decided = withFirst(warmUp);
    const moves = movesToGoOn(decided) ?? [];
    warmUp = wentOn(decided, moves, table.exchange(deal, moves));
  }
  return warmUp;
}

describe('a warm-up', () => {
  test('CR-R1: no answer is due before tiles were chosen, and what was said stays with it', () => {
    const warmUp = start();
    expect([answerDue(warmUp), movesToGoOn(warmUp)]).toEqual([null, null]);
    expect(problemNow(warmUp)).toEqual({ rack: item.rack, gone: '', step: 'right' });
    const attempt = said({
      aims: ['line:x'],
      keeps: formatTiles(firstOf(warmUp, 5)),
      give: formatTiles(firstOf(warmUp, 3)),
      why: 'they match nothing',
    });
    expect(answerDue(good(answered(warmUp, attempt)))).toEqual({ rack: item.rack, gone: '', step: 'right', attempt });
  });

  test('CR-R1: no answer that is refused shows one, whatever is typed', () => {
    fc.assert(
      fc.property(
        fc.string(),
        fc.string(),
        fc.integer({ min: -1, max: 4 }),
        fc.boolean(),
        (give, keeps, blind, stops) => {
          const warmUp = start();
          const next = answered(warmUp, said({ give, keeps, blind, stops }));
          if (next.ok) expect(tiles(next.value.attempt?.give ?? '').size).toBe(3);
          else expect(next.problem.message).toMatch(/[.]$/);
          expect(answerDue(warmUp)).toBeNull();
        },
      ),
      { seed: 5, numRuns: 500 },
    );
  });

  test('an answer that was seen is not changed', () => {
    const seen = withFirst(start());
    expect(answered(seen, said({ give: '9b' }))).toMatchObject({ problem: { code: 'answered' } });
  });

  test('refuses jokers, tiles that are not there, and too few, with words', () => {
    const withJoker = good(startWarmUp(good(makeItem({ ...item, rack: 'J FF N 0 13b 4578c 22d' }))));
    const refused = (change: Partial<Attempt>): unknown => answered(withJoker, said(change));
    expect(refused({ give: 'JFN' })).toMatchObject({ problem: { code: 'joker-passed' } });
    expect(refused({ give: '9d 9d N' })).toMatchObject({ problem: { code: 'not-in-rack' } });
    expect(refused({ give: 'FN' })).toMatchObject({ problem: { code: 'wrong-count' } });
    expect(refused({ give: 'FN', blind: 1 })).toMatchObject({ problem: { code: 'wrong-count' } });
    expect(refused({ give: 'FF N', keeps: '9d' })).toMatchObject({ problem: { code: 'not-in-rack' } });
  });

  test('goes through the whole exchange with the other three seats, in events that a game allows', () => {
    let warmUp = start();
    const seen: string[] = [];
    for (let round = 0; round < 10 && !isOver(warmUp); round += 1) {
      const step = stepNow(warmUp)!;
      seen.push(step);
      const decided = withFirst(warmUp, step === 'courtesy' ? 1 : blindNow(warmUp) > 0 ? 1 : 3);
      warmUp = goneOn(decided, movesToGoOn(decided));
      expect(good(stateOf(warmUp.events)).rack.size).toBe(13);
    }
    expect(isOver(warmUp)).toBe(true);
    expect([stepNow(warmUp), blindNow(warmUp), mayStop(warmUp)]).toEqual([null, 0, false]);
    expect(seen).toEqual(PASS_STEPS.filter((step) => seen.includes(step)));
    expect(seen.at(-1)).toBe('courtesy');
    expect(warmUp.past.map(({ step }) => step)).toEqual(seen);
  });

  test('a tile that comes back and is given again is known to be gone once, in ten exchanges', () => {
    for (let seed = 1; seed <= 10; seed += 1) {
      let warmUp = good(startWarmUp(itemOfDeal({ seed, tiles: 14, kind: 'any' })));
      const deal = { rack: tiles(warmUp.item.rack), seat: warmUp.item.seat, seed };
      while (!isOver(warmUp)) {
        const decided = withFirst(warmUp);
        const { rack, gone } = answerDue(decided) ?? { rack: '', gone: '' };
        expect(Tiles.fullSet.contains(tiles(rack).plus(tiles(gone)))).toBe(true);
        const moves = movesToGoOn(decided) ?? [];
        warmUp = wentOn(decided, moves, table.exchange(deal, moves));
      }
    }
  });

  test('CR-R1: to stop before the second round is a decision too: said first, answered, and then the courtesy comes', () => {
    expect(answered(start(), said({ stops: true }))).toMatchObject({ problem: { code: 'no-stop' } });
    let warmUp = afterFirstRound(1);
    const deal = { rack: tiles(warmUp.item.rack), seat: warmUp.item.seat, seed: 1 };
    const playOn = (now: WarmUp): WarmUp => {
      const moves = movesToGoOn(now) ?? [];
      return wentOn(now, moves, table.exchange(deal, moves));
    };
    expect([stepNow(warmUp), mayStop(warmUp)]).toEqual(['left2', true]);
    const decided = good(answered(warmUp, said({ stops: true, give: 'F', why: 'my pairs are there' })));
    expect(answerDue(decided)).toMatchObject({ step: 'left2', attempt: { give: '', stops: true } });
    warmUp = playOn(decided);
    expect(warmUp.past.at(-1)).toMatchObject({ step: 'left2', attempt: { give: '', stops: true } });
    expect([stepNow(warmUp), mayStop(warmUp), isOver(warmUp)]).toEqual(['courtesy', false, false]);
    const end = withFirst(warmUp, 1);
    expect(isOver(playOn(end))).toBe(true);
  });

  test('a problem from the middle of a game is one decision, without a table to go on at', () => {
    const middle = good(makeItem({ rack: 'FF N 0 113b 4578c 22d', gone: '9d 9c 1c', step: 'across', seat: 'West' }));
    const decided = withFirst(good(startWarmUp(middle)));
    expect(answerDue(decided)).toMatchObject({ gone: '1c 9c 9d'.replace('1c 9c', '19c'), step: 'across' });
    expect(movesToGoOn(decided)).toBeNull();
    expect(isOver(decided)).toBe(false);
  });

  test.each([
    ['across', 0],
    ['left', 3],
    ['left2', 0],
    ['right2', 3],
  ] as const)('in a problem from the middle, before %s, %i tiles may go unseen', (step, unseen) => {
    const middle = good(makeItem({ rack: 'FF N 0 113b 4578c 22d', gone: '9d 9c 1c', step, seat: 'West' }));
    const warmUp = good(startWarmUp(middle));
    expect([blindNow(warmUp), mayStop(warmUp)]).toEqual([unseen, step === 'left2']);
    expect(answered(warmUp, said({ give: 'N 0', blind: 1 })).ok).toBe(unseen > 0);
  });

  test('a courtesy takes at most three tiles', () => {
    const courtesy = good(
      makeItem({ rack: 'FF N 0 113b 4578c 22d', gone: '9d 9c 1c', step: 'courtesy', seat: 'West' }),
    );
    const warmUp = good(startWarmUp(courtesy));
    expect(answered(warmUp, said({ give: 'N 0 1b' })).ok).toBe(true);
    expect(answered(warmUp, said({ give: 'N 0 11b' }))).toEqual({
      ok: false,
      problem: { code: 'wrong-count', message: 'A courtesy pass has at most three tiles.' },
    });
  });

  test('a problem whose tiles cannot be is refused with words', () => {
    expect(startWarmUp({ ...item, rack: 'FF N' })).toMatchObject({ problem: { code: 'item-tiles' } });
    expect(startWarmUp({ ...item, gone: 'J' })).toMatchObject({ problem: { code: 'item-jokers' } });
    expect(startWarmUp({ ...item, rack: 'Q' })).toMatchObject({ ok: false });
  });
});

describe('the practice table', () => {
  const warmUp = start();

  test('what has happened does not depend on what is decided later', () => {
    const moves: OwnMove[] = [];
    let before: readonly object[] = [];
    let now = warmUp;
    for (let pass = 0; pass < 4; pass += 1) {
      const step = stepNow(now);
      if (step === null || step === 'courtesy') break;
      moves.push({ type: 'give', step, tiles: firstOf(now, 3).toKinds() });
      const events = table.exchange(dealOf(warmUp), moves);
      expect(events.slice(0, before.length)).toEqual(before);
      before = events;
      now = wentOn(now, [...moves], events);
    }
    expect(before.length).toBeGreaterThan(6);
  });

  test('the same deal and moves give the same events, on every machine', () => {
    const moves: OwnMove[] = [{ type: 'give', step: 'right', tiles: firstOf(warmUp, 3).toKinds() }];
    const again = new PracticeTable(TABLE);
    expect(again.exchange(dealOf(warmUp), moves)).toEqual(table.exchange(dealOf(warmUp), moves));
    expect(table.exchange(dealOf(warmUp), moves)).toMatchInlineSnapshot(`
      [
        {
          "seat": "South",
          "tiles": "JJ WS 0 8b 1799c 359d",
          "type": "dealt",
        },
        {
          "step": "right",
          "tiles": "WS 0",
          "type": "gave",
        },
        {
          "step": "right",
          "tiles": "8b 74d",
          "type": "received",
        },
      ]
    `);
  });

  test('East has 14 tiles, and a code tells everything', () => {
    const east = itemOfDeal({ seed: 12, tiles: 14, kind: 'any' });
    expect(east.seat).toBe('East');
    expect(good(parseDealCode(east.code!))).toEqual({ seed: 12, tiles: 14, kind: 'any' });
    const deal = { rack: tiles(east.rack), seat: east.seat, seed: 12 };
    const gives = tiles(east.rack)
      .toKinds()
      .filter((kind) => kind !== JOKER)
      .slice(0, 3);
    const events = table.exchange(deal, [{ type: 'give', step: 'right', tiles: gives }]);
    expect(good(stateOf(events)).rack.size).toBe(14);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectValue, type Result } from '../../core/base/result.ts';
import { PASS_STEPS } from '../../core/exchange/steps.ts';
import { stateOf } from '../../core/game/state.ts';
import { JOKER } from '../../core/tiles/kinds.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { itemOfDeal, makeItem } from '../../core/warmup/item.ts';
import { parseDealCode } from '../../core/warmup/deal-code.ts';
import { type OwnMove, PracticeTable } from '../../core/warmup/practice-table.ts';
import {
  aimed,
  answerDue,
  arranged,
  back,
  blindNow,
  chosen,
  isOver,
  kept,
  mayStop,
  movesToGoOn,
  rackNow,
  said,
  STAGES,
  startWarmUp,
  stepNow,
  stopped,
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

/** Answers the decision that is due with the first tiles. */
function answered(warmUp: WarmUp, count = 3): WarmUp {
  let next = warmUp;
  if (next.stage === 'arrange') next = good(arranged(next));
  if (next.stage === 'aim') next = good(aimed(next, ['section:Three Shores']));
  if (next.stage === 'keep') next = good(kept(next, Tiles.none));
  const blind = stepNow(next) === 'courtesy' ? 0 : 3 - count;
  return good(said(good(chosen(next, firstOf(next, count), blind)), ''));
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
    const decided = answered(warmUp);
    const moves = movesToGoOn(decided) ?? [];
    warmUp = wentOn(decided, moves, table.exchange(deal, moves));
  }
  return warmUp;
}

describe('a warm-up', () => {
  test('CR-R1: no answer is due before all stages are behind', () => {
    let warmUp = start();
    const stages: string[] = [];
    const steps = [
      arranged,
      (now: WarmUp) => aimed(now, []),
      (now: WarmUp) => kept(now, firstOf(now, 5)),
      (now: WarmUp) => chosen(now, firstOf(now, 3)),
      (now: WarmUp) => said(now, 'they match nothing'),
    ];
    for (const step of steps) {
      expect(answerDue(warmUp)).toBeNull();
      expect(movesToGoOn(warmUp)).toBeNull();
      stages.push(warmUp.stage);
      warmUp = good(step(warmUp));
    }
    expect([...stages, warmUp.stage]).toEqual(STAGES);
    expect(answerDue(warmUp)).toMatchObject({ rack: item.rack, gone: '', step: 'right' });
    expect(warmUp.attempt.why).toBe('they match nothing');
  });

  test('CR-R1: no order of commands shows an answer before tiles were chosen', () => {
    const commands: readonly ((now: WarmUp) => WarmUp)[] = [
      (now) => keepGoing(now, arranged(now)),
      (now) => keepGoing(now, aimed(now, ['line:x'])),
      (now) => keepGoing(now, kept(now, firstOf(now, 4))),
      (now) => keepGoing(now, chosen(now, firstOf(now, 3))),
      (now) => keepGoing(now, said(now, 'because')),
      back,
    ];
    fc.assert(
      fc.property(fc.array(fc.nat(commands.length - 1), { maxLength: 30 }), (order) => {
        let warmUp = start();
        let choices = 0;
        for (const place of order) {
          const before = warmUp;
          warmUp = commands[place]!(warmUp);
          if (before.stage === 'choose' && warmUp.stage === 'say') choices += 1;
          if (answerDue(warmUp) !== null) expect(choices).toBeGreaterThan(0);
        }
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  test('can be taken back stage by stage, but not once the answer was seen', () => {
    const warmUp = good(kept(good(aimed(good(arranged(start())), [])), Tiles.none));
    expect(back(back(back(warmUp))).stage).toBe('arrange');
    expect(back(back(back(back(warmUp)))).stage).toBe('arrange');
    const seen = answered(start());
    expect(back(seen)).toBe(seen);
  });

  test('refuses jokers, tiles that are not there, and too few, with words', () => {
    const withJoker = good(startWarmUp(good(makeItem({ ...item, rack: 'J FF N 0 13b 4578c 22d' }))));
    const choosing = good(kept(good(aimed(good(arranged(withJoker)), [])), Tiles.none));
    expect(chosen(choosing, tiles('JFN'))).toMatchObject({ problem: { code: 'joker-passed' } });
    expect(chosen(choosing, tiles('9d 9d N'))).toMatchObject({ problem: { code: 'not-in-rack' } });
    expect(chosen(choosing, tiles('FN'))).toMatchObject({ problem: { code: 'wrong-count' } });
    expect(chosen(choosing, tiles('FN'), 1)).toMatchObject({ problem: { code: 'wrong-count' } });
    expect(kept(good(aimed(good(arranged(withJoker)), [])), tiles('9d'))).toMatchObject({
      problem: { code: 'not-in-rack' },
    });
  });

  test('goes through the whole exchange with the other three seats, in events that a game allows', () => {
    let warmUp = start();
    const seen: string[] = [];
    for (let round = 0; round < 10 && !isOver(warmUp); round += 1) {
      const step = stepNow(warmUp)!;
      seen.push(step);
      const decided = answered(warmUp, step === 'courtesy' ? 1 : blindNow(warmUp) > 0 ? 1 : 3);
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
        const decided = answered(warmUp);
        const { rack, gone } = answerDue(decided) ?? { rack: '', gone: '' };
        expect(Tiles.fullSet.contains(tiles(rack).plus(tiles(gone)))).toBe(true);
        const moves = movesToGoOn(decided) ?? [];
        warmUp = wentOn(decided, moves, table.exchange(deal, moves));
      }
    }
  });

  test('CR-R1: to stop before the second round is a decision too: said first, answered, and then the courtesy comes', () => {
    expect(stopped(good(kept(good(aimed(good(arranged(start())), [])), Tiles.none)))).toMatchObject({
      problem: { code: 'no-stop' },
    });
    let warmUp = afterFirstRound(1);
    const deal = { rack: tiles(warmUp.item.rack), seat: warmUp.item.seat, seed: 1 };
    const playOn = (now: WarmUp): WarmUp => {
      const moves = movesToGoOn(now) ?? [];
      return wentOn(now, moves, table.exchange(deal, moves));
    };
    expect([stepNow(warmUp), mayStop(warmUp)]).toEqual(['left2', true]);
    const saying = good(stopped(warmUp));
    expect([saying.stage, answerDue(saying), movesToGoOn(saying)]).toEqual(['say', null, null]);
    expect(good(chosen(back(saying), firstOf(warmUp, 3))).attempt.stops).toBe(false);
    const decided = good(said(saying, 'my pairs are there'));
    expect(answerDue(decided)).toMatchObject({ step: 'left2', attempt: { give: '', stops: true } });
    warmUp = playOn(decided);
    expect(warmUp.past.at(-1)).toMatchObject({ step: 'left2', attempt: { give: '', stops: true } });
    expect([stepNow(warmUp), mayStop(warmUp), isOver(warmUp)]).toEqual(['courtesy', false, false]);
    const end = answered(warmUp, 1);
    expect(isOver(playOn(end))).toBe(true);
  });

  test('a problem from the middle of a game is one decision, without a table to go on at', () => {
    const middle = good(makeItem({ rack: 'FF N 0 113b 4578c 22d', gone: '9d 9c 1c', step: 'across', seat: 'West' }));
    const decided = answered(good(startWarmUp(middle)));
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
    const choosing = good(kept(good(aimed(good(arranged(good(startWarmUp(middle)))), [])), Tiles.none));
    expect(blindNow(choosing)).toBe(unseen);
    expect(chosen(choosing, tiles('N 0'), 1).ok).toBe(unseen > 0);
  });

  test('a courtesy takes at most three tiles', () => {
    const courtesy = good(
      makeItem({ rack: 'FF N 0 113b 4578c 22d', gone: '9d 9c 1c', step: 'courtesy', seat: 'West' }),
    );
    const choosing = good(kept(good(aimed(good(arranged(good(startWarmUp(courtesy)))), [])), Tiles.none));
    expect(chosen(choosing, tiles('N 0 1b')).ok).toBe(true);
    expect(chosen(choosing, tiles('N 0 11b'))).toEqual({
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

function keepGoing(before: WarmUp, next: Result<WarmUp>): WarmUp {
  return next.ok ? next.value : before;
}

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
      now = wentOn({ ...now, stage: 'answer' }, [...moves], events);
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

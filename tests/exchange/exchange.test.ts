import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { give, givable, receive, stop } from '../../core/exchange/moves.ts';
import { blindLimit, type ExchangeState, startExchange, stopDue } from '../../core/exchange/state.ts';
import { PASS_STEPS, type PassStep } from '../../core/exchange/steps.ts';
import { formatTileList, parseTiles } from '../../core/tiles/text.ts';
import type { Tiles } from '../../core/tiles/tiles.ts';

// Common practice, from memory, no source: the sentences are those of core/RULES.md.

const tiles = (text: string): Tiles => expectValue(parseTiles(text));
const RACK = 'JJ FF NE 0 1389b 25c';
const start = (rack = RACK): ExchangeState => expectValue(startExchange(tiles(rack)));

function pass(state: ExchangeState, step: PassStep, given: string, received: string): ExchangeState {
  const moved = expectValue(give(state, { step, tiles: tiles(given) }));
  return expectValue(receive(moved, step, tiles(received)));
}

function afterFirstRound(): ExchangeState {
  const right = pass(start(), 'right', 'N 0 2c', '4b 6b 7c');
  return pass(pass(right, 'across', '13b E', '444d'), 'left', '46b 5c', 'GRG');
}

function problemOf(result: { ok: boolean; problem?: { code: string; message: string } }): [string, string] {
  if (result.problem === undefined) throw new Error('this should have been refused');
  return [result.problem.code, result.problem.message];
}

describe('EX-1 The dealer, East, starts with 14 tiles, the others with 13.', () => {
  test.each(['JJ FF NE 0 1389b 25c', 'JJ FF NE 0 1389b 25c 9d'])('%s is a start', (rack) => {
    expect(startExchange(tiles(rack)).ok).toBe(true);
  });
  test.each(['JJ FF NE 0 1389b 2c', 'JJ FF NE 0 1389b 25c 99d'])('%s is none', (rack) => {
    expect(problemOf(startExchange(tiles(rack)))[0]).toBe('wrong-count');
  });
});

describe('EX-2 The steps come in this order: right, across, left; left, across, right; courtesy.', () => {
  test('a whole exchange goes through all seven', () => {
    const coming = ['4b', '6b', '7b', '4c', '6c', '7c', '8c'];
    const seen: (PassStep | null)[] = [];
    let state = start();
    for (const tile of coming) {
      const step = state.step as PassStep;
      seen.push(step);
      const given = formatTileList(givable(state).toKinds().slice(0, 3));
      state = pass(state, step, given, `${tile} ${tile} ${tile}`);
      expect(state.rack.size).toBe(13);
    }
    expect(seen).toEqual([...PASS_STEPS]);
    expect([state.phase, state.step]).toEqual(['over', null]);
  });
  test('another step than the one due is refused and the one due is named', () => {
    expect(problemOf(give(start(), { step: 'left', tiles: tiles('N 0 2c') }))).toEqual([
      'wrong-step',
      'The first right pass is due now, not the first left pass.',
    ]);
  });
});

describe('EX-3 In each step three tiles are given first, and then three come in.', () => {
  test.each(['N 0', 'N E 0 2c', ''])('giving "%s" is refused', (given) => {
    expect(problemOf(give(start(), { step: 'right', tiles: tiles(given) }))[0]).toBe('wrong-count');
  });
  test('receiving before giving is refused', () => {
    expect(problemOf(receive(start(), 'right', tiles('4b')))[0]).toBe('nothing-to-come');
  });
  test('giving again before all have come is refused', () => {
    const given = expectValue(give(start(), { step: 'right', tiles: tiles('N 0 2c') }));
    const two = expectValue(receive(given, 'right', tiles('4b')));
    expect(problemOf(give(two, { step: 'right', tiles: tiles('E 1b 3b') }))).toEqual([
      'still-to-come',
      'Two tiles of the first right pass are still to come: enter what you received first.',
    ]);
  });
  test('four tiles can not come in, nor none', () => {
    const given = expectValue(give(start(), { step: 'right', tiles: tiles('N 0 2c') }));
    expect(problemOf(receive(given, 'right', tiles('4444b')))).toEqual([
      'wrong-count',
      'These are 4 tiles, but only 3 are still to come.',
    ]);
    expect(problemOf(receive(given, 'right', tiles('')))[0]).toBe('wrong-count');
  });
  test('tiles that are not in the rack can not be given', () => {
    expect(problemOf(give(start(), { step: 'right', tiles: tiles('NN 2c') }))).toEqual([
      'not-in-rack',
      'Your rack has 1 north wind, not 2: choose fewer.',
    ]);
    expect(problemOf(give(start(), { step: 'right', tiles: tiles('G 0 2c') }))[1]).toBe(
      'There is no green dragon in your rack: choose a tile that is there.',
    );
  });
});

describe('EX-4 The tiles that come in may be entered one at a time.', () => {
  test('one by one and all at once lead to the same state', () => {
    const given = expectValue(give(start(), { step: 'right', tiles: tiles('N 0 2c') }));
    const single = ['4b', '6b', '7c'].reduce((state, tile) => expectValue(receive(state, 'right', tiles(tile))), given);
    expect(single).toEqual(expectValue(receive(given, 'right', tiles('46b 7c'))));
    expect([given.toCome, single.step, single.phase]).toEqual([3, 'across', 'giving']);
  });
});

describe('EX-5 A joker is never passed.', () => {
  test('it can not be given', () => {
    expect(problemOf(give(start(), { step: 'right', tiles: tiles('J 0 2c') }))[0]).toBe('joker-passed');
    expect(givable(start()).equals(tiles('FF NE 0 1389b 25c'))).toBe(true);
  });
  test('nothing can be given while tiles are still to come in', () => {
    const given = expectValue(give(start(), { step: 'right', tiles: tiles('N 0 2c') }));
    expect(givable(given).size).toBe(0);
  });
  test('it can not come in', () => {
    const given = expectValue(give(start(), { step: 'right', tiles: tiles('N 0 2c') }));
    expect(problemOf(receive(given, 'right', tiles('J')))[0]).toBe('joker-passed');
  });
});

describe('EX-6 On the first left and the second right, one to three of the incoming tiles may be handed on unseen.', () => {
  test.each([
    [1, 'N 0'],
    [2, 'N'],
    [3, ''],
  ])('%i unseen on the first left', (blind, given) => {
    const due = { ...start(), step: 'left' as const };
    const moved = expectValue(give(due, { step: 'left', tiles: tiles(given), blind }));
    expect(moved.toCome).toBe(3 - blind);
    expect(moved.phase).toBe(blind === 3 ? 'giving' : 'receiving');
  });
  test.each([...PASS_STEPS])('the step %s', (step) => {
    const due = { ...start(), step };
    const allowed = step === 'left' || step === 'right2';
    expect(blindLimit(due)).toBe(allowed ? 3 : 0);
    expect(give(due, { step, tiles: tiles('N 0'), blind: 1 }).ok).toBe(allowed);
  });
  test.each([4, -1, 1.5, Number.NaN])('%d unseen is refused', (blind) => {
    const due = { ...start(), step: 'left' as const };
    expect(problemOf(give(due, { step: 'left', tiles: tiles(''), blind }))[0]).toBe('no-blind');
  });
});

describe('EX-7 The second round may be stopped before it starts, and then none of its passes happens.', () => {
  test('right after the first left it stops', () => {
    expect(stopDue(afterFirstRound())).toBe('left2');
    const stopped = expectValue(stop(afterFirstRound(), 'left2'));
    expect(stopped.step).toBe('courtesy');
    expect(problemOf(give(stopped, { step: 'left2', tiles: tiles('GRG') }))).toEqual([
      'stopped',
      'The second round was stopped, so there is no second left pass: undo the stop first.',
    ]);
  });
  test('before or after that moment it does not', () => {
    expect(problemOf(stop(start(), 'left2'))[0]).toBe('no-stop');
    const later = pass(afterFirstRound(), 'left2', 'GRG', '99d 9c');
    expect(problemOf(stop(later, 'left2'))[0]).toBe('no-stop');
    const midway = expectValue(give(afterFirstRound(), { step: 'left2', tiles: tiles('GRG') }));
    expect(problemOf(stop(midway, 'left2'))[0]).toBe('still-to-come');
  });
});

describe('EX-8 The courtesy is left open by such a stop, and may itself be left out.', () => {
  test('stopped twice, the exchange is over', () => {
    const stopped = expectValue(stop(afterFirstRound(), 'left2'));
    const over = expectValue(stop(stopped, 'courtesy'));
    expect([over.phase, over.step, over.stops]).toEqual(['over', null, ['left2', 'courtesy']]);
    expect(problemOf(give(over, { step: 'courtesy', tiles: tiles('G') }))[0]).toBe('over');
  });
});

describe('EX-9 In the courtesy none to three tiles change hands: the smaller of the two numbers asked for.', () => {
  const due = (): ExchangeState => ({ ...start(), step: 'courtesy' });
  test.each([0, 1, 2, 3])('asked 3, offered %i', (offered) => {
    const given = ['', 'N', 'N 0', 'N 0 2c'][offered] as string;
    const moved = expectValue(give(due(), { step: 'courtesy', tiles: tiles(given), asked: 3, offered }));
    expect([moved.toCome, moved.phase]).toEqual([offered, offered === 0 ? 'over' : 'receiving']);
  });
  test('another number than the smaller is refused', () => {
    const giving = { step: 'courtesy', tiles: tiles('N 0'), asked: 3, offered: 1 } as const;
    expect(problemOf(give(due(), giving))).toEqual([
      'courtesy-count',
      'You asked for 3 and the player across for 1: the smaller number counts, so give one tile.',
    ]);
  });
  test('four is refused', () => {
    expect(problemOf(give(due(), { step: 'courtesy', tiles: tiles('N 0 25c') }))).toEqual([
      'courtesy-count',
      'A courtesy pass has none to three tiles, not 4.',
    ]);
    const asked = { step: 'courtesy', tiles: tiles('N'), asked: 4, offered: 1 } as const;
    expect(problemOf(give(due(), asked))[0]).toBe('courtesy-count');
  });
});

describe('EX-11 After each pass, and at the end, a rack has as many tiles as at the start.', () => {
  test.each([RACK, `${RACK} 9d`])('%s', (rack) => {
    const sizes: number[] = [];
    let state = start(rack);
    for (const tile of ['4b', '6b', '7b', '4c', '6c', '7c', '8c']) {
      const given = formatTileList(givable(state).toKinds().slice(0, 3));
      state = pass(state, state.step as PassStep, given, `${tile} ${tile} ${tile}`);
      sizes.push(state.rack.size);
    }
    expect(state.phase).toBe('over');
    expect(new Set(sizes)).toEqual(new Set([tiles(rack).size]));
  });
});

describe('EX-10 A tile given in a pass cannot come back in that pass, unless it may be handed on unseen. Later it may come back.', () => {
  test('the fourth of a kind that was just given', () => {
    const state = start('F NNNN 0 1389b 255c');
    const given = expectValue(give(state, { step: 'right', tiles: tiles('NNN') }));
    expect(problemOf(receive(given, 'right', tiles('N')))[0]).toBe('not-in-set');
    const across = expectValue(
      give(expectValue(receive(given, 'right', tiles('444d'))), { step: 'across', tiles: tiles('444d') }),
    );
    expect(receive(across, 'across', tiles('NNN')).ok).toBe(true);
  });
  test('on a pass that may be blind it can go right round the table', () => {
    const due = { ...start('F NNNN 0 1389b 255c'), step: 'left' as const };
    const given = expectValue(give(due, { step: 'left', tiles: tiles('NNN') }));
    expect(receive(given, 'left', tiles('N')).ok).toBe(true);
  });
});

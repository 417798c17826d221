import { describe, expect, test } from 'vitest';
import { finish } from '../../core/base/steps.ts';
import { provisionalChance } from '../../core/chance/card-chance.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { stateOf } from '../../core/game/state.ts';
import { expectValue } from '../../core/base/result.ts';
import { seatEvents } from '../../core/game/seat-log.ts';
import { type PlayChoice, playChoices, type PlayMeasure } from '../../core/review/play-choices.ts';
import { beforeGames } from '../../core/review/play-costs.ts';
import { playedOut } from '../../core/review/play-games.ts';
import { carefulAdviser } from '../../core/others/careful.ts';
import type { Offer } from '../../core/table/policy.ts';
import { gameStreams, playGame } from '../../core/table/game.ts';
import { makeTable, SEAT_COUNT } from '../../core/table/table.ts';
import type { TableEvent } from '../../core/table/trace.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { formatTiles, parseTiles } from '../../core/tiles/text.ts';
import { cardOf, demoTable } from '../table/cards.ts';

type Sketch = Parameters<typeof cardOf>[number];

function measureOf(...lines: Sketch[]): PlayMeasure {
  return { table: makeTableCard(cardOf(...lines)), chance: provisionalChance('quick') };
}

const DEMO: PlayMeasure = { table: demoTable, chance: provisionalChance('quick') };

function choicesOf(measure: PlayMeasure, events: readonly GameEvent[], made?: Offer): readonly PlayChoice[] {
  return finish(playChoices(measure, expectValue(stateOf(events)), events, made)).choices;
}

/** The same once games have told what each choice costs. */
function costedOf(measure: PlayMeasure, events: readonly GameEvent[], made?: Offer): readonly PlayChoice[] {
  return finish(playedOut(measure, expectValue(stateOf(events)), events, { made })).choices;
}

/** What a choice does, in few letters: `discard 9d`, `let-go`. */
function named({ action, tiles }: PlayChoice): string {
  return tiles.size === 0 ? action : `${action} ${formatTiles(tiles)}`;
}

function choice(choices: readonly PlayChoice[], name: string): PlayChoice {
  const found = choices.find((each) => named(each) === name);
  if (found === undefined) throw new Error(`${name} is none of ${choices.map(named).join(', ')}`);
  return found;
}

const deal = (tiles: string, seat: 'East' | 'South' = 'South'): GameEvent => ({ type: 'dealt', seat, tiles });
const drew = (tile: string): GameEvent => ({ type: 'drew', tile });
const threw = (seat: 'East' | 'South' | 'West', tile: string): GameEvent => ({ type: 'discarded', seat, tile });
const called = (seat: 'East' | 'South' | 'West', tile: string, group: string): GameEvent => ({
  type: 'called',
  seat,
  tile,
  group,
});

describe('all hands count, not the best one alone', () => {
  const THREE = measureOf(
    { id: 'first', pattern: '1111bam 2222bam 3333bam 44bam' },
    { id: 'second', pattern: '1111bam 2222bam 333bam 555bam' },
    { id: 'third', pattern: 'FF 1111bam 2222bam 3333bam' },
  );

  test('a flower that the third hand needs is behind a lone wind', () => {
    const choices = costedOf(THREE, [deal('F N 111b 222b 333b 44b'), drew('1b')]);
    expect(named(choices[0] as PlayChoice)).toBe('discard N');
    expect(choices.map(named).indexOf('discard F')).toBeGreaterThan(0);
    expect(choice(choices, 'discard F').verdict).not.toBe('best');
  });
});

describe('a swap', () => {
  const ONE = measureOf({ id: 'one', pattern: '1111bam 2222crak 3333dot 55dot' });
  const waiting = [deal('N 111b 222c 3333d 55d'), threw('East', '4d'), called('West', '4d', '44d J')];

  test('that wins stands first, with the hand that it makes, and is chance 1', () => {
    const events = [deal('J 111b 2222c 3333d 5d'), called('West', '4d', '44d J'), threw('West', '9b'), drew('4d')];
    const before = choicesOf(ONE, events);
    expect(before.map(named)).toContain('swap 4d');
    const near = [deal('4d 111b 2222c 3333d 5d'), called('West', '4d', '44d J'), threw('West', '9b'), drew('5d')];
    const [first] = choicesOf(ONE, near);
    expect(first).toMatchObject({ action: 'swap', owner: 'West', chance: 1, cost: 0, verdict: 'best' });
    expect(first?.hand).toMatchObject({ line: { id: 'one' }, away: 0 });
  });

  test('two swaps on the way to a win are seen at the first', () => {
    const events: GameEvent[] = [
      deal('4d 6d 111b 222c 333d 55d'),
      called('West', '4d', '44d J'),
      threw('West', '9b'),
      called('East', '6d', '66d J'),
      threw('East', '9b'),
      drew('3d'),
    ];
    const [first, second] = choicesOf(ONE, events);
    for (const swap of [first, second]) expect(swap).toMatchObject({ action: 'swap', chance: 1, verdict: 'best' });
    expect(first?.hand).toMatchObject({ line: { id: 'one' }, away: 0 });
  });

  test('is none without the tile for it, or before a draw', () => {
    expect(choicesOf(ONE, waiting).map(({ action }) => action)).not.toContain('swap');
    expect(choicesOf(ONE, [...waiting, threw('West', '9b'), drew('9c')]).map(({ action }) => action)).not.toContain(
      'swap',
    );
  });
});

describe('a call', () => {
  const OPEN = measureOf(
    { id: 'kong', pattern: '1111bam 222crak 333dot FF NN' },
    { id: 'pung', pattern: '111bam 222crak 333dot FFF NN' },
  );
  const events = [deal('JJ 111b 222c 333d F N'), threw('East', '1b')];

  test('shows no more jokers than its group needs', () => {
    const names = choicesOf(OPEN, events).map(named);
    expect(names).toContain('call 111b');
    expect(names).toContain('call 1111b');
    expect(names).not.toContain('call 111bJ');
    expect(names.filter((name) => name.includes('J'))).toEqual([]);
  });

  test('that was made is valued whatever it shows, and one that spends a joker for nothing is not as good', () => {
    const choices = costedOf(OPEN, events, { size: 4, jokers: 1 });
    const made = choices.find(({ action, tiles }) => action === 'call' && formatTiles(tiles).includes('J'));
    expect(made).toBeDefined();
    expect(['slip', 'costly']).toContain(made?.verdict);
  });

  test('of a group that no hand holds leaves no hand', () => {
    const choices = choicesOf(OPEN, [deal('JJ 11b 4b 222c 333d F N'), threw('East', '4b')], { size: 4, jokers: 2 });
    const made = choices.find(({ action }) => action === 'call');
    expect(made).toMatchObject({ chance: 0, hand: null });
    expect(choices[0]?.action).toBe('let-go');
  });

  test('of a discard that no group and no win can use is no choice, nor is a joker', () => {
    expect(choicesOf(OPEN, [deal('JJ 111b 222c 333d F N'), threw('East', '9b')])).toEqual([]);
    expect(choicesOf(OPEN, [deal('JJ 111b 222c 333d F N'), threw('East', 'J')])).toEqual([]);
    expect(choicesOf(OPEN, [deal('JJ 111b 222c 333d F N'), threw('South', '9b')])).toEqual([]);
  });

  test('that wins stands first, and letting it go is below', () => {
    const choices = costedOf(OPEN, [deal('111b 222c 333d FF NN'), threw('East', '1b')]);
    expect(choices[0]).toMatchObject({ action: 'win', chance: 1, hand: { line: { id: 'kong' }, away: 0 } });
    expect(choice(choices, 'let-go').verdict).toBe('costly');
  });
});

describe('the first discard', () => {
  test('of the dealer is advised on before anything was played', () => {
    const choices = choicesOf(DEMO, [deal('JJ FF NE 0 1389b 25c 7d', 'East')]);
    expect(choices).toHaveLength(12);
    expect(choices.every(({ action }) => action === 'discard')).toBe(true);
    expect(choices[0]?.verdict).toBe('best');
    expect(choices.at(-1)?.tiles.toKinds()).toEqual([0]);
  });
});

describe('before games have told', () => {
  const first = { option: { jokers: 0, value: 2 }, chance: 0.4 };
  const open = { chance: 0.4, cost: 0, verdict: null };

  test('a choice of the same value is as good, any other is open', () => {
    expect(beforeGames(first, first)).toMatchObject({ chance: 0.4, cost: 0, verdict: 'best' });
    expect(beforeGames(first, { option: { jokers: 0, value: 1 }, chance: 0.3 })).toMatchObject(open);
  });

  test('one that spends a joker which the first keeps is never as good', () => {
    const spends = { option: { jokers: 1, value: 2 }, chance: 0.4 };
    expect(beforeGames(first, spends)).toMatchObject({ ...open, slip: 'joker' });
    expect(beforeGames(spends, spends)).toMatchObject({ verdict: 'best', slip: null });
  });

  test('OT-13: one that others win by in two of a hundred more than by the first is never as good; nor beside a dead hand', () => {
    const cool = { ...first, risk: 0.01 };
    const hot = { option: { jokers: 0, value: 1 }, chance: 0.4, risk: 0.031 };
    const warm = { ...hot, risk: 0.029 };
    expect(beforeGames(cool, hot)).toMatchObject({ ...open, slip: 'heat' });
    expect(beforeGames(cool, warm)).toMatchObject({ ...open, slip: null });
    const [dead, hotDead] = [cool, hot].map((each) => ({ ...each, chance: 0 }));
    expect(beforeGames(dead!, hotDead!)).toMatchObject({ cost: 0, verdict: 'slip' });
    expect(beforeGames(dead!, { ...hotDead!, risk: null })).toMatchObject({ verdict: 'best', slip: null });
  });

  test('one that leaves a dead hand costs the whole chance', () => {
    const dead = { option: { jokers: 0, value: 0 }, chance: 0 };
    expect(beforeGames(first, dead)).toMatchObject({ chance: 0, cost: 0.4, verdict: 'costly' });
    expect(beforeGames(dead, dead)).toMatchObject({ chance: 0, cost: 0, verdict: 'best' });
  });
});

/** A game of four who do what stands first in the list of advice. */
function adviserGame(game: number): TableEvent[] {
  const table = makeTable(
    demoTable,
    Array.from({ length: SEAT_COUNT }, () => carefulAdviser('quick')(demoTable)),
  );
  table.trace = [];
  playGame(table, gameStreams(8, game).next().value);
  return table.trace;
}

describe('the policy that worth is measured by', () => {
  test('does at the simulated table what stands first in the list, or what is worth the same', () => {
    const count = { discard: 0, swap: 0, call: 0, 'let-go': 0, win: 0 };
    for (let game = 0; game < 10; game += 1) {
      const events = seatEvents(adviserGame(game), game % 4);
      const seat = expectValue(stateOf(events)).seat;
      for (const [place, event] of events.entries()) {
        const before = events.slice(0, place);
        const state = place === 0 ? null : expectValue(stateOf(before));
        // A joker that another took is out of the wall for her, which the policy does not count.
        if (state === null || state.jokersTaken > 0) continue;
        if (!state.playing && event.type !== 'discarded') continue;
        if (event.type === 'noted' || event.type === 'drew') continue;
        const choices = choicesOf(DEMO, before);
        if (choices.length === 0) continue;
        const own = 'seat' in event && event.seat === seat;
        if (event.type === 'ended' || (!own && event.type === 'called')) continue;
        const action = !own
          ? 'let-go'
          : event.type === 'called'
            ? 'call'
            : event.type === 'swapped'
              ? 'swap'
              : 'discard';
        const text =
          action === 'let-go' || !('tile' in event) ? '' : event.type === 'called' ? event.group : event.tile;
        const tiles = expectValue(parseTiles(text));
        const done = choices.find((each) => each.action === action && each.tiles.equals(tiles));
        expect(done?.verdict, `${game} ${place} ${action} ${text}: ${choices.map(named).join()}`).toBe('best');
        count[action] += 1;
      }
    }
    expect(count.discard).toBeGreaterThan(100);
    expect(count.call).toBeGreaterThan(3);
    expect(count['let-go']).toBeGreaterThan(20);
    expect(count.swap).toBeGreaterThan(0);
  });
});

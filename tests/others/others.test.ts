import { describe, expect, test } from 'vitest';
import { finish } from '../../core/base/steps.ts';
import { expectValue } from '../../core/base/result.ts';
import { markedCard } from '../../core/card/mark.ts';
import { provisionalChance } from '../../core/chance/card-chance.ts';
import { adviceDocument, type AdvisedDocument } from '../../core/engine/documents.ts';
import { QUESTIONS } from '../../core/engine/questions.ts';
import type { OthersDocument } from '../../core/engine/others-document.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { DEFAULT_POINT_RULES, type PointRules } from '../../core/game/point-rules.ts';
import { stateOf } from '../../core/game/state.ts';
import { takenByAny } from '../../core/others/others.ts';
import { playChoices } from '../../core/review/play-choices.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { codeOf } from '../../core/tiles/kinds.ts';
import { formatTileList } from '../../core/tiles/text.ts';
import { cardDocument, cardOf } from '../table/cards.ts';

const RULES: PointRules = DEFAULT_POINT_RULES;
const LINES = [
  { id: 'steps', pattern: 'FF 1111a 2222a 3333a', points: 30 },
  { id: 'apart', pattern: '111a 333a 5555a 7777a', points: 20 },
  { id: 'winds', pattern: 'NNNN EEE WWW SSSS', points: 40 },
] as const;

const deal = (tiles: string): GameEvent => ({ type: 'dealt', seat: 'South', tiles });
const drew = (tile: string): GameEvent => ({ type: 'drew', tile });
const threw = (seat: 'East' | 'West' | 'North', tile: string): GameEvent => ({ type: 'discarded', seat, tile });
const called = (seat: 'East' | 'West' | 'North', tile: string, group: string): GameEvent => ({
  type: 'called',
  seat,
  tile,
  group,
});

/** West shows two groups of the first line, and was passed over by nobody: it wants threes and flowers. */
const WEST_OPEN = [
  called('West', '1b', '1111b'),
  threw('West', '9c'),
  called('West', '2b', '222b J'),
  threw('West', '8d'),
] as const;

async function ask(events: readonly GameEvent[], rules = RULES): Promise<OthersDocument> {
  const question = await QUESTIONS.others();
  return expectValue(finish(question({ card: markedCard(cardDocument(...LINES)), at: { events }, rules })));
}

describe('one of three at least', () => {
  test('OT-10: each seat for itself, and a win goes before a group', () => {
    const taken = takenByAny([
      { win: 0.1, group: 0.2 },
      { win: 0, group: 0.5 },
      { win: 0, group: 0 },
    ]);
    expect(taken.win).toBeCloseTo(0.1, 12);
    expect(taken.group).toBeCloseTo(0.9 * (1 - 0.8 * 0.5), 12);
    expect(takenByAny([])).toEqual({ win: 0, group: 0 });
  });
});

describe('what is said of the others in a game', () => {
  test('OT-6: too early to tell before a seat has laid open enough; then its line, and what it wants', async () => {
    const before = await ask([deal('N E 44b 66c 88d 1d 5d 9b R R'), drew('3b')]);
    expect(before.seats.map(({ seat, early, groups }) => [seat, early, groups])).toEqual([
      ['West', true, 0],
      ['North', true, 0],
      ['East', true, 0],
    ]);
    const after = await ask([deal('N E 44b 66c 88d 1d 5d 9b R R'), ...WEST_OPEN, drew('3b')]);
    const [west] = after.seats;
    expect(west).toMatchObject({ seat: 'West', early: false, dead: false, groups: 2 });
    expect(west?.lines.map(({ line, weight }) => [line, weight])).toEqual([['steps', 1]]);
    expect(west?.wants.map(({ kind, weight, unseen }) => [codeOf(kind), weight, unseen])).toEqual([
      ['F', 1, 8],
      ['3b', 1, 3],
    ]);
  });

  test('OT-12: what a tile costs and pays, by hand; a tile that nobody can take is safe', async () => {
    const events = [deal('N E 44b 66c 88d 1d 5d 9b R R'), ...WEST_OPEN, drew('3b')];
    const { tiles } = await ask(events);
    const of = (code: string) => tiles.find(({ kind }) => codeOf(kind) === code);
    const three = of('3b');
    expect(three?.win).toBeGreaterThan(0);
    // Groups count a tenth of wins: by them the east wind is hotter, and what comes first is what costs most in all.
    const heats = tiles.map(({ win, group }) => 1 - (1 - win) * (1 - group / 10));
    expect(heats).toEqual(heats.toSorted((one, other) => other - one));
    // West alone wins by it, with the one line left, of 30 points; the discarder pays double.
    expect(three?.by.map(({ seat }) => seat)).toContain('West');
    const byOthers = three?.by.filter(({ seat, win }) => seat !== 'West' && win > 0) ?? [];
    if (byOthers.length === 0) expect(three?.pays).toBeCloseTo(60 * (three?.win ?? 0), 9);
    else expect(three?.pays).toBeGreaterThan(40 * (three?.win ?? 0));
    // No line of the card wants dragons.
    expect(of('R')).toMatchObject({ safe: true, win: 0, group: 0, pays: 0, costs: 0, by: [] });
    const single = await ask(events, { ...RULES, discarderPays: 1 });
    const threeIn = (said: typeof single) => said.tiles.find(({ kind }) => codeOf(kind) === '3b');
    expect(threeIn(single)?.pays).toBeCloseTo((three?.pays ?? 0) / 2, 9);
    const nobody = await ask(events, { ...RULES, scheme: 'none' });
    expect(threeIn(nobody)?.pays).toBe(0);
  });

  test('OT-7: groups that no line holds are said to be a dead hand', async () => {
    const wrong = [
      called('West', '1b', '1111b'),
      threw('West', '9c'),
      called('West', '9d', '999d'),
      threw('West', '8d'),
    ];
    const { seats } = await ask([deal('N E 44b 66c 88d 1d 5d 9b R R'), ...wrong, drew('3b')]);
    expect(seats[0]).toMatchObject({ seat: 'West', dead: true, lines: [], wants: [] });
  });
});

describe('advice that looks at the others', () => {
  const measure = { table: makeTableCard(cardOf(...LINES)), chance: provisionalChance('quick') };
  const listOf = (events: readonly GameEvent[]): readonly AdvisedDocument[] =>
    adviceDocument(finish(playChoices(measure, expectValue(stateOf(events)), events)), measure.chance).choices;
  const placeOf = (choices: readonly AdvisedDocument[], tile: string): number =>
    choices.findIndex(({ action, tiles }) => action === 'discard' && formatTileList(tiles) === tile);

  test('OT-11: of two idle tiles the safe one goes first, and the hot one says what it risks', () => {
    // She plays winds; a three of bams and a red dragon are idle alike.
    const hand = 'NNN EEE WWW S R 3b 9c';
    const apart = listOf([deal(hand), drew('S')]);
    const quiet = apart.filter(({ action }) => action === 'discard');
    expect(quiet.length).toBeGreaterThan(4);
    const choices = listOf([deal(hand), ...WEST_OPEN, drew('S')]);
    expect(placeOf(choices, 'R')).toBeLessThan(placeOf(choices, '3b'));
    expect(placeOf(choices, '9c')).toBeLessThan(placeOf(choices, '3b'));
    expect(choices[placeOf(choices, 'R')]?.take).toEqual({ win: 0, group: 0 });
    expect(choices[placeOf(choices, '3b')]?.take?.win).toBeGreaterThan(0);
    // What the hand lives by is not given away for safety.
    expect(placeOf(choices, 'N')).toBeGreaterThan(placeOf(choices, '3b'));
    expect(choices.find(({ action }) => action === 'call' || action === 'swap')?.take ?? null).toBe(null);
  });

  test('OT-11: a dead hand throws the safest tile first', () => {
    // All north winds and two of the flowers that the other lines need are gone or held by nobody.
    const choices = listOf([deal('R R G G 0 0 9b 9b 8c 8c 6d 6d 3b'), ...WEST_OPEN, drew('F')]);
    const hot = Math.max(placeOf(choices, '3b'), placeOf(choices, 'F'));
    expect(hot).toBe(choices.filter(({ action }) => action === 'discard').length - 1);
  });
});

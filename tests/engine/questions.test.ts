import { describe, expect, test } from 'vitest';
import { expectValue, type Result } from '../../core/base/result.ts';
import { markedCard } from '../../core/card/mark.ts';
import { readCardFile, writeCardFile } from '../../core/card/file.ts';
import type { Moment } from '../../core/engine/moment.ts';
import {
  type DocumentOf,
  type ProgressOf,
  QUESTIONS,
  type QuestionName,
  type RequestOf,
} from '../../core/engine/questions.ts';
import { MOMENTS } from '../../core/chance/calibrate.ts';
import { PASS_STEPS } from '../../core/exchange/steps.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { FIRST_STAGES } from '../../core/review/yardstick.ts';
import { positionBefore } from '../../core/future/known-deal.ts';
import { rivalsOf } from '../../core/future/rivals.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { type Kind, kindOf } from '../../core/tiles/kinds.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { ANY_CHANCE, DEMO, lookAheadFrom, recordOf } from '../review/helpers.ts';
import { demoText } from '../card/demo.ts';

interface Asked<Name extends QuestionName> {
  readonly progress: readonly ProgressOf<Name>[];
  readonly result: Result<DocumentOf<Name>>;
}

const ASKED = new Set<string>();

/** Asks a question as a worker does: what goes in and what comes out is cloned. */
async function ask<Name extends QuestionName>(name: Name, request: RequestOf<Name>): Promise<Asked<Name>> {
  ASKED.add(name);
  const question = (await QUESTIONS[name]()) as (request: unknown) => Generator<unknown, unknown, void>;
  const steps = question(structuredClone(request));
  const progress: unknown[] = [];
  for (;;) {
    const step = steps.next();
    if (step.done === true) {
      return { progress: structuredClone(progress), result: structuredClone(step.value) } as unknown as Asked<Name>;
    }
    if (step.value !== undefined) progress.push(step.value);
  }
}

const document = expectValue(readCardFile(demoText)).document;
const card = markedCard(document);
const noCard = markedCard({ format: 'something else' });
const parsed = (text: string): Tiles => expectValue(parseTiles(text));
const counts = (text: string): Uint8Array => parsed(text).toCounts();
/** The tiles of a way of the demo card. */
const DEMO_WAY = DEMO.compiled.ways
  .slice(0, 1)
  .map(({ groups }) => Tiles.of(groups.flatMap(({ kind, size }) => Array<Kind>(size).fill(kind))).toCounts());
const DEALT: GameEvent = { type: 'dealt', seat: 'South', tiles: 'FF N 0 13b 4578c 22d J' };
/** What a look-back was made with. */
const MEASURE = { stages: FIRST_STAGES, chance: ANY_CHANCE };
const atDeal = { card, at: { events: [DEALT] } } satisfies Moment;
const atRack: Moment = { card, at: { rack: counts('FF N 0 13b 4578c 22d J'), gone: counts(''), step: 'right' } };

describe('every question refuses with a sentence', () => {
  const illegal: GameEvent[] = [{ type: 'drew', tile: '1b' }];
  const bad: readonly [QuestionName, unknown][] = [
    ['read', { ...atRack, card: noCard }],
    ['plan', { ...atRack, card: noCard }],
    ['advise', { ...atDeal, card: noCard }],
    ['lines', { card: noCard }],
    ['dead', { card: noCard }],
    ['deadly', { card: noCard }],
    ['settle', { card: noCard }],
    ['fit', { card: noCard }],
    ['open', { text: '{' }],
    ['examine', { document: 3 }],
    ['read', { card, at: { events: [...illegal, DEALT, DEALT] } }],
    ['plan', { card, at: { events: [DEALT, DEALT] } }],
    ['advise', { card, at: { events: [DEALT, DEALT] } }],
    ['read', { card, at: { rack: counts('FFFF'), gone: counts('FFFFF') } }],
    ['plan', { card, at: { rack: counts('FFFF 123456789b'), gone: counts('') } }],
    ['advise', atRack],
    ['rivals', { ...atDeal, card: noCard, passes: [] }],
    ['rivals', { card, at: { events: [] }, passes: [] }],
    ['passReasons', { ...atDeal, card: noCard, choices: [] }],
    ['advisePass', { ...atDeal, card: noCard }],
    ['advisePass', atRack],
    ['advisePass', { ...atDeal, give: counts('S') }],
    ['futures', { ...atRack, depth: 'exchange', choices: [], seed: 1, blockSize: 2, blocks: [0], alive: [] }],
    ['fitChance', { card: noCard, table: 'club' }],
    ['calibrate', { card: noCard, table: 'club', games: 1, seed: 1 }],
    ['calibrate', { card, table: 'club', games: 1, seed: 13 }],
    ['handChance', { ...atRack, card: noCard }],
    ['gameChance', { ...atDeal, card: noCard }],
    ['gameChance', { card, at: { events: [] } }],
    ['playGames', { ...atDeal, due: { others: [1], from: 0, to: 1 } }],
    ['playGames', { ...atDeal, card: noCard, due: { others: [1], from: 0, to: 1 } }],
    ['others', { ...atDeal, card: noCard, rules: {} }],
    ['others', { card, at: { events: [] }, rules: {} }],
    ['lookBack', { record: recordOf([DEALT], {}) }],
    ['try', { record: recordOf([DEALT]), exact: MEASURE, place: 0, tiles: counts('N') }],
    ['figures', { record: recordOf(illegal) }],
    ['season', { card: noCard, appVersion: '' }],
    ['find', { card: noCard, kind: 'pair', tiles: 13, seed: 1 }],
    ['redeal', { card: noCard, kind: 'pair', step: 'right', seed: 1 }],
    ['answer', { ...atDeal, card: noCard }],
    ['races', { record: recordOf([DEALT], {}), exact: MEASURE, rates: null }],
    ['judge', { record: recordOf(illegal), exact: MEASURE, counted: [] }],
    ['goOn', { card, item: { rack: 'zz', gone: '', step: 'right', seat: 'South' }, seed: 1, moves: [] }],
    ['ledger', { card: noCard, seat: 'South', events: [] }],
    ['kind', { card, rack: counts('FF') }],
    ['throwing', { card: noCard, table: 'club', seed: 1 }],
    ['truth', { card: noCard, rack: counts('FF') }],
  ];
  test.each(bad)('%s', async (name, request) => {
    const { result } = await ask(name, request as RequestOf<typeof name>);
    expect(result.ok).toBe(false);
    expect(!result.ok && result.problem.message).toMatch(/^[A-Z"].*\.$/);
  });
});

describe('games from a moment of play', () => {
  test('are counted for the choices asked about, in their order', async () => {
    const drew: GameEvent = { type: 'drew', tile: '3b' };
    const at = { events: [DEALT, drew] };
    const { result: advice } = await ask('advise', { card, at });
    expect(expectValue(advice).choices.length).toBeGreaterThan(3);
    const { result } = await ask('playGames', { card, at, due: { others: [3, 1], from: 0, to: 4 } });
    expect(expectValue(result).map(({ games }) => games)).toEqual([4, 4]);
  });
});

describe('the questions of a hand', () => {
  test('a reading by the events is that by the tiles; the hands come before what the tiles are worth', async () => {
    const byEvents = await ask('read', atDeal);
    const byTiles = await ask('read', atRack);
    expect(byEvents).toEqual(byTiles);
    const [hands] = byTiles.progress;
    expect(hands?.tiles).toBe('J FF N 0 13b 4578c 22d');
    expect(hands?.hands.length).toBeGreaterThan(3);
    expect(hands?.byAway[0]?.away).toBe(hands?.away);
    expect(expectValue(byTiles.result).verdicts).toHaveLength(13);
  });

  test('a plan says how far it has come, and lists every pass, its tiles as codes and as kinds', async () => {
    const { progress, result } = await ask('plan', atDeal);
    expect(progress.length).toBeGreaterThan(2);
    const { step, options } = expectValue(result);
    expect(step).toBe('right');
    expect(options[0]?.give).toHaveLength(3);
    expect(options[0]?.kinds).toHaveLength(3);
    expect(options.every(({ cost }) => cost >= (options[0]?.cost ?? 1))).toBe(true);
    const [first] = options;
    const one = await ask('plan', { ...atRack, give: counts((first?.give ?? []).join(' ')) });
    expect(expectValue(one.result).options).toEqual([first]);
  });
});

describe('the questions of a look ahead', () => {
  test('where numbers of tiles compete, the choices hold the best pass of each number', async () => {
    const atLeft = { ...atRack, at: { ...atRack.at, step: 'left' } } as Moment;
    const planned = await ask('plan', atLeft);
    const blind = await ask('plan', { ...atLeft, said: { blind: 2 } });
    const passes = expectValue(planned.result).options.map(({ kinds }) => kinds);
    const rivals = await ask('rivals', { ...atLeft, passes });
    const given = expectValue(rivals.result).map((choice) => (choice.type === 'give' ? choice.tiles : []));
    expect(given.map(({ length }) => length).sort((one, other) => one - other)).toEqual([0, 1, 2, 3, 3, 3, 3, 3, 3]);
    expect(given).toContainEqual(passes[0]);
    expect(given).toContainEqual(expectValue(blind.result).options[0]?.kinds);
  });

  test('why a pass stands where it does is said as in its plan, for other numbers of tiles too; nothing of a stop', async () => {
    const [best] = expectValue((await ask('plan', atDeal)).result).options;
    const tiles = best?.kinds ?? [];
    const choices = [{ type: 'give', tiles }, { type: 'give', tiles: tiles.slice(0, 2) }, { type: 'stop' }] as const;
    const [same, fewer, stop] = expectValue((await ask('passReasons', { ...atDeal, choices })).result);
    expect(same).toEqual(best?.reasons);
    expect(fewer?.length).toBeGreaterThan(0);
    expect(stop).toEqual([]);
  });

  test('any worker counts the same sums of a block', async () => {
    const planned = await ask('plan', atDeal);
    const { options } = expectValue(planned.result);
    const choices = rivalsOf({ step: 'right', passes: options.map(({ kinds }) => kinds) });
    const race = { ...atDeal, depth: 'exchange', choices, seed: 1, blockSize: 2, alive: [0, 1] } as const;
    const together = await ask('futures', { ...race, blocks: [0, 1] });
    const apart = await ask('futures', { ...race, blocks: [1] });
    expect(together.progress).toEqual([2, 4]);
    expect(expectValue(apart.result)).toEqual(expectValue(together.result).slice(1));
  });
});

describe('the questions of the chance', () => {
  const chanceAt = async (at: object, table?: 'quick' | 'relaxed'): Promise<number> => {
    const request = { ...atRack, at: { rack: counts('FF N 0 13b 4578c 22d J'), gone: counts(''), ...at } };
    const said = table === undefined ? {} : { said: { table } };
    return expectValue((await ask('handChance', { ...request, ...said })).result);
  };

  test('a hand has a chance at every moment, more with better tiles, and 1 when it is complete', async () => {
    for (const step of PASS_STEPS) {
      const chance = await chanceAt({ step });
      expect(chance).toBeGreaterThan(0.05);
      expect(chance).toBeLessThan(0.6);
      expect(await chanceAt({ step, rack: counts('FF N 0 13b 4578c 2d JJ') })).toBeGreaterThan(chance);
    }
    expect(await chanceAt({ drawn: 90 })).toBeLessThan(await chanceAt({ drawn: 20 }));
    const [line] = DEMO_WAY;
    expect(await chanceAt({ rack: line })).toBe(1);
  });

  test('a game has a chance as it stands, by the kind of table, and says whether the card’s own games stand behind it', async () => {
    const [club, quick] = await Promise.all([
      ask('gameChance', atDeal),
      ask('gameChance', { ...atDeal, said: { table: 'quick' } }),
    ]);
    expect(expectValue(club.result)).toMatchObject({ provisional: false, kind: 'club' });
    expect(expectValue(quick.result)).toMatchObject({ provisional: false, kind: 'quick' });
    expect(expectValue(club.result).chance).toBeCloseTo(await chanceAt({ step: 'right', seat: 'South' }), 9);
    expect(expectValue(quick.result).chance).not.toBe(expectValue(club.result).chance);
  });

  test('the demo card that is kept with a game, its fields in another order, has its fit at once, too', async () => {
    const sorted = (_: string, value: unknown): unknown =>
      typeof value === 'object' && value !== null && !Array.isArray(value)
        ? Object.fromEntries(Object.entries(value).toSorted(([one], [other]) => one.localeCompare(other)))
        : value;
    const kept = markedCard(JSON.parse(JSON.stringify(document, sorted)));
    expect(JSON.stringify(kept.document)).not.toBe(JSON.stringify(card.document));
    expect(kept.mark).toBe(card.mark);
    const { result } = await ask('gameChance', { card: kept, at: { events: [DEALT] } });
    expect(expectValue(result)).toMatchObject({ provisional: false });
  });

  test('it depends on the kind of table', async () => {
    const [quick, club, relaxed] = [await chanceAt({}, 'quick'), await chanceAt({}), await chanceAt({}, 'relaxed')];
    expect(new Set([quick, club, relaxed]).size).toBe(3);
  });

  test('the demo card’s fit is there at once; its calibration says what came at each moment', async () => {
    const fitted = await ask('fitChance', { card, table: 'club' });
    expect(fitted.progress).toEqual([]);
    expect(expectValue(fitted.result)).toMatchObject({ kind: 'club', games: 400 });
    const { progress, result } = await ask('calibrate', { card, table: 'club', games: 32, seed: 9 });
    const { moments, games, table } = expectValue(result);
    expect({ games, table }).toEqual({ games: 32, table: 'club' });
    expect(moments.map(({ moment }) => moment)).toEqual([...MOMENTS]);
    for (const { states, said, won } of moments.slice(0, 9)) {
      expect(states).toBeGreaterThan(0);
      expect(Math.abs(said - won)).toBeLessThan(0.15);
    }
    expect(progress.length).toBeGreaterThan(0);
  });
});

describe('the questions of the Warm-up', () => {
  test('an answer lists every pass; what one costs in the end is that of the look ahead', async () => {
    const rack = 'FF N 0 13b 4578c 22d J';
    const problem = { card, at: { rack: counts(rack), gone: counts(''), seat: 'South', step: 'right' } } as const;
    const { progress, result } = await ask('answer', problem);
    expect(progress.at(-1)).toBeLessThanOrEqual(1);
    const { options, tiles, chance, lesson } = expectValue(result);
    expect(tiles).toHaveLength(13);
    expect(chance).toBe(expectValue((await ask('handChance', problem)).result));
    expect([lesson.leans, lesson.also].every((each) => each.endsWith('.'))).toBe(true);
    const passes = options.map(({ kinds }) => kinds);
    const chosen = parsed('22d F').toKinds();
    const position = positionBefore(parsed(rack), parsed(''), 'South', 'right');
    const request = { position, passes, chosen: { type: 'give', tiles: chosen } } as const;
    const ahead = lookAheadFrom(makeTableCard(DEMO.compiled), request);
    expect(ahead.chosen.verdict).toBe('costly');
    expect(ahead.rows).toHaveLength(7);
  });

  test('a deal is found, dealt on, booked and guessed about', async () => {
    const found = expectValue((await ask('find', { card, kind: 'pair', tiles: 13, seed: 5 })).result);
    expect(found.tried).toBeGreaterThan(0);
    const { item } = found;
    const give = parsed(item.rack)
      .toKinds()
      .filter((kind) => kind !== 0)
      .slice(0, 3);
    const moves = [{ type: 'give', step: 'right', tiles: give }] as const;
    const events = expectValue((await ask('goOn', { card, item, seed: 3, moves })).result);
    expect(events.map(({ type }) => type)).toEqual(['dealt', 'gave', 'received']);
    const ledger = expectValue((await ask('ledger', { card, seat: 'South', events })).result);
    expect(ledger.decisions).toHaveLength(1);
    const rack = counts(item.rack);
    expect(expectValue((await ask('truth', { card, rack })).result).truth.away).toBeGreaterThan(3);
    expect(expectValue((await ask('kind', { card, rack })).result)).toBeTypeOf('string');
  });
});

describe('another choice', () => {
  const passed: GameEvent[] = [
    DEALT,
    { type: 'gave', step: 'right', tiles: 'N 0 7c' },
    { type: 'received', step: 'right', tiles: '4d 1b 2b' },
  ];
  const tried = async (tiles: string): Promise<DocumentOf<'try'>> => {
    const request = { record: recordOf(passed), exact: MEASURE, place: 1, tiles: counts(tiles) };
    return expectValue((await ask('try', request)).result);
  };

  test('the same answer says what the choice that was made really led to', async () => {
    const [made, other] = [await tried('N 0 7c'), await tried('2d 2d 7c')];
    expect(made.made).toEqual(made.tried);
    expect(made.made.same).not.toBeNull();
    expect(other.made.same).toBe(made.made.same);
    expect(other.tried.average).not.toBe(other.made.average);
  });
});

describe('the questions of a card', () => {
  test('a card opens from its text, and is examined by its content', async () => {
    const opened = expectValue((await ask('open', { text: writeCardFile(document) })).result);
    expect(opened.document).toEqual(document);
    const examined = expectValue((await ask('examine', { document })).result);
    expect(examined.problems).toEqual([]);
    expect(examined.statistics.sections.length).toBeGreaterThan(0);
    const lines = expectValue((await ask('lines', { card })).result);
    expect(lines).toHaveLength(opened.good.length);
  });

  test('LG-4: whose groups no line of the card has, and whether one more would be such', async () => {
    const exposed = (tile: 'N' | '2d') => ({ seat: 'West', kind: kindOf(tile), size: 3, jokers: 1 }) as const;
    const dead = async (...exposures: readonly ReturnType<typeof exposed>[]): Promise<unknown> =>
      expectValue((await ask('dead', { card, exposures })).result);
    expect(await dead(exposed('2d'))).toEqual([]);
    expect(await dead(exposed('2d'), exposed('N'))).toEqual(['West']);
    const deadly = { card, exposures: [exposed('2d')] };
    expect(expectValue((await ask('deadly', { ...deadly, group: exposed('N') })).result)).toBe(true);
    expect(expectValue((await ask('deadly', { ...deadly, exposures: [], group: exposed('2d') })).result)).toBe(false);
  });
});

// The last of this file: by now all have been asked.
test('every question of the table is asked here', () => {
  expect([...ASKED].toSorted()).toEqual(Object.keys(QUESTIONS).toSorted());
});

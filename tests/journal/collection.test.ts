import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { readCollection, writeCollection } from '../../core/journal/collection.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { recordOf, SMALL_CARD } from '../review/helpers.ts';

const OTHER_CARD = { ...SMALL_CARD, title: 'Another', sections: [] };
const base = recordOf([{ type: 'dealt', seat: 'South', tiles: 'JJ FF NE 0 1389b 25c' }]);

const anyGame = fc
  .record({
    id: fc.stringMatching(/^[a-z0-9]{1,12}$/),
    place: fc.string({ maxLength: 40 }),
    tags: fc.array(fc.string({ maxLength: 12 }), { maxLength: 4 }),
    card: fc.constantFrom<unknown>(SMALL_CARD, OTHER_CARD),
    extra: fc.jsonValue({ maxDepth: 2 }),
    played: fc.boolean(),
  })
  .map(({ played, ...fields }): GameRecord => ({ ...base, ...fields, events: played ? base.events : [] }));

const anyCollection = fc.record({
  appVersion: fc.constant('0.1.0'),
  savedAt: fc.constant('2026-11-25T18:00:00Z'),
  games: fc.uniqueArray(anyGame, { maxLength: 5, selector: ({ id }) => id }),
  cards: fc.array(fc.record({ id: fc.string(), text: fc.string() }), { maxLength: 2 }),
});

describe('one file for everything', () => {
  it('CR-F2: export and import round-trip to equal data (1,000 random stores)', () => {
    fc.assert(
      fc.property(anyCollection, (collection) => {
        const read = expectValue(readCollection(writeCollection(collection)));
        const plain: unknown = JSON.parse(JSON.stringify(collection));
        expect(read).toEqual({ ...(plain as object), problems: [] });
      }),
      { numRuns: 1000, seed: 5 },
    );
  });

  it('games share the cards that they were played with', () => {
    const games = Array.from({ length: 50 }, (_, place) => ({ ...base, id: `g${place}` }));
    const text = writeCollection({ appVersion: '1', savedAt: '', games, cards: [] });
    expect(text.split('"Four lines"').length - 1).toBe(1);
    expect(expectValue(readCollection(text)).games).toEqual(games);
  });

  it("a single game's file is taken as a collection of one", () => {
    expect(expectValue(readCollection(JSON.stringify(base))).games).toEqual([base]);
  });

  it('a bad game is told by its place and the others are read', () => {
    const text = writeCollection({ appVersion: '1', savedAt: '', games: [base, { ...base, id: 'g2' }], cards: [] });
    const read = expectValue(readCollection(text.replace('"South"', '"Middle"')));
    expect(read.games.map(({ id }) => id)).toEqual(['g2']);
    expect(read.problems).toHaveLength(1);
    expect(read.problems[0]).toMatch(/^Game 1: /);
  });

  const parts = (change: object): string =>
    JSON.stringify({
      kind: 'windrow.collection',
      schemaVersion: 1,
      appVersion: '0.1.0',
      savedAt: '2026-11-25T18:00:00Z',
      cards: [],
      playedWith: [SMALL_CARD],
      games: [{ ...base, card: 0 }],
      ...change,
    });

  it.each<[string, object, string[], string[]]>([
    ['nothing wrong', {}, ['game-1'], []],
    [
      'games that are no list',
      { games: { 0: base } },
      [],
      ['The list of games is damaged: look for it in an older file.'],
    ],
    [
      'cards that are missing',
      { cards: undefined },
      ['game-1'],
      ['The list of cards is damaged: look for it in an older file.'],
    ],
    [
      'no list of the cards played with',
      { playedWith: 'gone' },
      [],
      ['Game 1: This game file can\'t be read: "card" must be a card.'],
    ],
    [
      'a place that no card has',
      { games: [{ ...base, card: 1 }] },
      [],
      ['Game 1: This game file can\'t be read: "card" must be a card.'],
    ],
    [
      'a game that is none, before a good one',
      { games: [7, { ...base, card: 0 }] },
      ['game-1'],
      ['Game 1: This is not a game of Windrow: choose another file.'],
    ],
    ['a game with its card in itself', { playedWith: [], games: [base] }, ['game-1'], []],
    [
      'cards without a name or a text',
      { cards: [{ id: 'mine' }, 'mine', { id: 'mine', text: '{}' }] },
      ['game-1'],
      [1, 2].map((place) => `Card ${place}: This has no name or no text: look for it in an older file.`),
    ],
  ])('CR-J4: %s: the rest is read, and what can’t be is told', (_, change, ids, problems) => {
    const read = expectValue(readCollection(parts(change)));
    expect(read.games.map(({ id }) => id)).toEqual(ids);
    for (const { card } of read.games) expect(card).toEqual(SMALL_CARD);
    expect(read.problems).toEqual(problems);
  });

  it('CR-J4: who wrote it and when may be damaged, and what is no list of sheets, practice or progress', () => {
    const bad = { sheets: 'none', practice: {}, progress: 5, preferences: [] };
    const read = expectValue(readCollection(parts({ appVersion: 1, savedAt: null, ...bad })));
    expect(read).toMatchObject({ appVersion: '', savedAt: '', problems: [] });
    expect(read.others).toEqual({ sheets: [], practice: [], progress: [], preferences: {} });
    const some = { sheets: ['{}', 5], progress: [{ cardId: 'a', answers: [], confirmed: [1] }, { cardId: 'b' }] };
    expect(expectValue(readCollection(parts(some))).others).toMatchObject({ sheets: ['{}'], progress: [] });
  });

  it('CR-V1: the example of the format page is read as the page says', () => {
    const page = readFileSync(new URL('../../core/journal/FORMAT.md', import.meta.url), 'utf8');
    const read = expectValue(readCollection(/```json\n([^`]*)```/.exec(page)?.[1] ?? ''));
    expect(read.problems).toEqual([]);
    expect(read.games[0]).toMatchObject({ id: '20261119-190000-lake', card: { title: 'My card' } });
    expect(read.cards.map(({ id }) => id)).toEqual(['my-card']);
  });

  it.each([
    ['', 'empty'],
    ['{"kind":"windrow.collection","sch', 'damaged'],
    ['{"kind":"else"}', 'not a game'],
    ['{"kind":"windrow.collection","schemaVersion":2}', 'newer'],
    ['{"kind":"windrow.collection"}', 'does not say which version'],
    ['{"kind":"windrow.collection","schemaVersion":0}', 'does not say which version'],
    ['[1]', 'not a game'],
  ])('refuses %j in words', (text, words) => {
    expect(readCollection(text)).toMatchObject({
      ok: false,
      problem: { message: expect.stringContaining(words) },
    });
  });
});

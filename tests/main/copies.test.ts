import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { writeGameFile } from '../../core/game/file/write-game-file.ts';
import type { DeskService } from '../../main/desk/service.ts';
import { cardText, event, FOLDER, gameRecord, openOn } from './support/desks.ts';
import { fileError, MemoryDisk } from './support/memory-disk.ts';

const NOVEMBER = `${FOLDER}/games/2026/11/g-1.json`;
const DECEMBER = `${FOLDER}/games/2026/12/g-1.json`;
const ELSEWHERE = writeGameFile(gameRecord('g-1', { place: 'Elsewhere', events: [event(0)] }));

/** A game with an event in its log, and a second file of it in another month. */
async function withTwoGames(second = ELSEWHERE): Promise<{ disk: MemoryDisk; desk: DeskService }> {
  const disk = new MemoryDisk();
  const before = await openOn(disk);
  expectValue(await before.startGame(gameRecord('g-1')));
  await before.close();
  disk.now += 60_000;
  disk.put(DECEMBER, second);
  disk.now += 60_000;
  const desk = await openOn(disk);
  expectValue(await desk.appendEvent('g-1', 0, event(0)));
  expectValue(await desk.appendEvent('g-1', 1, event(1)));
  return { disk, desk };
}

async function withCopy(name: string, text = cardText('Theirs')): Promise<{ disk: MemoryDisk; desk: DeskService }> {
  const disk = new MemoryDisk();
  disk.put(`${FOLDER}/cards/mine.card.json`, cardText('Mine'));
  disk.put(`${FOLDER}/cards/${name}`, text);
  return { disk, desk: await openOn(disk) };
}

const textsWith = (disk: MemoryDisk, part: string): [string, string][] =>
  [...disk.texts()].filter(([path]) => path.includes(part) && !path.includes('/backups/'));

describe('CR-D7: a game in two files', () => {
  test('is told of, and listed with what each of both holds; the earlier month is in use', async () => {
    const { desk } = await withTwoGames();
    expect(expectValue(await desk.notices())).toEqual([
      'The game g-1 lies in two files, games/2026/11/g-1.json and games/2026/12/g-1.json. Choose in the Settings which one stays.',
    ]);
    expect(expectValue(await desk.listGames())).toMatchObject([{ id: 'g-1', place: 'Lakeside library' }]);
    expect(expectValue(await desk.listCopies())).toEqual([
      {
        kind: 'game',
        used: { file: 'games/2026/11/g-1.json', changedAt: expect.any(String), holds: 2 },
        copy: { file: 'games/2026/12/g-1.json', changedAt: '2026-11-25T18:01:00.000Z', holds: 1 },
      },
    ]);
  });

  test('the one in use can stay: the second is kept aside', async () => {
    const { disk, desk } = await withTwoGames();
    expect(await desk.settleCopy('games/2026/12/g-1.json', 'used')).toEqual({ ok: true, value: [] });
    expect(textsWith(disk, '/12/')).toEqual([[`${DECEMBER}.other-2026-11-25T18-02-00Z`, ELSEWHERE]]);
    expect(expectValue(await desk.openGame('g-1')).events).toHaveLength(2);
  });

  test('the second can take its place: the one in use is kept aside with its last steps', async () => {
    const { disk, desk } = await withTwoGames();
    expect(await desk.settleCopy('games/2026/12/g-1.json', 'copy')).toEqual({ ok: true, value: [] });
    expect(expectValue(await desk.openGame('g-1'))).toMatchObject({ place: 'Elsewhere', events: [event(0)] });
    expect(expectValue(await desk.listGames())).toMatchObject([{ place: 'Elsewhere' }]);
    const [[path, text] = ['', '']] = textsWith(disk, '/11/');
    expect(path).toBe(`${NOVEMBER}.other-2026-11-25T18-02-00Z`);
    expect(JSON.parse(text).events).toHaveLength(2);
    expectValue(await desk.changeGame('g-1', { place: 'Still elsewhere' }));
    await desk.close();
    const again = await openOn(disk);
    expect(expectValue(await again.listGames())).toMatchObject([{ place: 'Still elsewhere' }]);
    expect(expectValue(await again.notices())).toEqual([]);
  });

  test('a choice that failed half way is made whole by a second try', async () => {
    const { disk, desk } = await withTwoGames();
    disk.watch = (call, path) => {
      if (call !== 'rename' && path.includes('index.jsonl')) throw fileError('ENOSPC', path);
      return undefined;
    };
    expect(await desk.settleCopy('games/2026/12/g-1.json', 'copy')).toMatchObject({ problem: { code: 'disk-full' } });
    disk.watch = () => undefined;
    expectValue(await desk.settleCopy('games/2026/12/g-1.json', 'copy'));
    expect(disk.texts().get(DECEMBER)).toBe(ELSEWHERE);
    expect(expectValue(await desk.openGame('g-1'))).toMatchObject({ place: 'Elsewhere' });
  });

  test('both can stay: the older one as a game of its own', async () => {
    const { disk, desk } = await withTwoGames();
    expect(await desk.settleCopy('games/2026/12/g-1.json', 'both')).toEqual({ ok: true, value: [] });
    const games = expectValue(await desk.listGames());
    expect(games.map(({ place }) => place).toSorted()).toEqual(['Elsewhere', 'Lakeside library']);
    expect(textsWith(disk, '/12/')).toEqual([[`${DECEMBER}.other-2026-11-25T18-02-00Z`, ELSEWHERE]]);
  });

  test('a second file that can not be read can not be taken, only kept aside', async () => {
    const newer = JSON.stringify({ kind: 'windrow.game', schemaVersion: 99 });
    const { disk, desk } = await withTwoGames(newer);
    expect(expectValue(await desk.listCopies())).toMatchObject([{ copy: { holds: null } }]);
    for (const choice of ['copy', 'both'] as const) {
      expect(await desk.settleCopy('games/2026/12/g-1.json', choice)).toMatchObject({ ok: false });
      expect(disk.texts().get(DECEMBER)).toBe(newer);
    }
    expectValue(await desk.settleCopy('games/2026/12/g-1.json', 'used'));
  });

  test('where the one in use is of a newer Windrow, it is kept aside if at all; where it is damaged, the second is in use', async () => {
    const { disk, desk } = await withTwoGames();
    await desk.close();
    disk.now += 60_000;
    const writtenByNewer = JSON.stringify({ kind: 'windrow.game', schemaVersion: 99 });
    disk.put(NOVEMBER, writtenByNewer);
    const newer = await openOn(disk);
    expect(await newer.settleCopy('games/2026/12/g-1.json', 'both')).toMatchObject({ ok: false });
    expect(disk.texts().get(DECEMBER)).toBe(ELSEWHERE);
    // The second one may take its place: the one of a newer Windrow is kept aside, unread.
    expectValue(await newer.settleCopy('games/2026/12/g-1.json', 'copy'));
    expect(expectValue(await newer.listGames())).toMatchObject([{ id: 'g-1', place: 'Elsewhere' }]);
    expect(expectValue(await newer.notices())).toEqual([]);
    expect(textsWith(disk, '/11/').map(([, text]) => text)).toContain(writtenByNewer);
    await newer.close();
    disk.put(DECEMBER, ELSEWHERE);
    disk.now += 60_000;
    disk.put(NOVEMBER, '{"kind":"windrow.ga');
    const damaged = await openOn(disk);
    expect(expectValue(await damaged.listGames())).toMatchObject([{ id: 'g-1', place: 'Elsewhere' }]);
    expect(expectValue(await damaged.listCopies())).toEqual([]);
    expect(textsWith(disk, '/11/').map(([, text]) => text)).toContain('{"kind":"windrow.ga');
  });

  test('of a removed game the second file can be taken in', async () => {
    const { desk } = await withTwoGames();
    expectValue(await desk.removeGame('g-1'));
    expect(expectValue(await desk.listCopies())).toMatchObject([{ used: null, copy: { holds: 1 } }]);
    expect(expectValue(await desk.notices())).toEqual([
      'A game has only its second file, games/2026/12/g-1.json. Choose in the Settings what becomes of it.',
    ]);
    expectValue(await desk.settleCopy('games/2026/12/g-1.json', 'both'));
    expect(expectValue(await desk.listGames())).toMatchObject([{ place: 'Elsewhere' }]);
  });

  test('one that another program took away meanwhile is no longer listed, and can not be chosen', async () => {
    const { disk, desk } = await withTwoGames();
    await disk.files.remove(DECEMBER);
    expect(expectValue(await desk.listCopies())).toEqual([]);
    expect(expectValue(await desk.notices())).toEqual([]);
    expect(await desk.settleCopy('games/2026/12/g-1.json', 'copy')).toMatchObject({ problem: { code: 'not-found' } });
    expect(await desk.settleCopy('../../etc/passwd', 'copy')).toMatchObject({ problem: { code: 'not-found' } });
    expect(expectValue(await desk.openGame('g-1')).events).toHaveLength(2);
  });
});

/** What sync programs and windows of files make of `mine.card.json`. */
const NAMES = [
  'mine.card (1).json',
  'mine.card - Copy.json',
  'mine.card - Copy (2).json',
  'mine.card 2.json',
  "mine.card (Anna's conflicted copy 2026-11-25).json",
  'mine.card.sync-conflict-20261125-101530-ABCDEFG.json',
  'mine.card-Laptop.json',
  'mine (conflict).card.json',
  'mine-Laptop-conflict.card.json',
  'mine (1).card.json',
  "mine (Anna's conflicted copy 2026-11-25).card.json",
  'mine.sync-conflict-20261125-101530-ABCDEFG.card.json',
  'mine - Copy.card.json',
  'mine copy 2.card.json',
  'mine_conf(1).card.json',
];

describe('CR-D7: a second version of a card that another program named', () => {
  test('one of a card that is not there is told of by itself', async () => {
    const { desk } = await withCopy('gone.card (1).json');
    expect(expectValue(await desk.notices())).toEqual([
      'Another program put "gone.card (1).json" among your cards. Choose in the Settings what becomes of it.',
    ]);
    expect(expectValue(await desk.listCopies())).toMatchObject([{ kind: 'card', used: null, copy: { holds: 1 } }]);
  });

  test('where the folder can not be listed just now, no other notice is held back by it', async () => {
    const { disk, desk } = await withCopy('mine (1).card.json');
    disk.watch = (call, path) => {
      if (call === 'list' && path.endsWith('/cards')) throw fileError('EIO', path);
      return undefined;
    };
    expect(expectValue(await desk.notices())).toEqual([]);
    disk.watch = () => undefined;
    expect(expectValue(await desk.notices())).toHaveLength(1);
  });

  test('one that can not be moved just now takes nothing away', async () => {
    const { disk, desk } = await withCopy('mine (1).card.json');
    disk.watch = (call, path) => {
      if (call === 'rename' && path.endsWith('/cards/mine.card.json')) throw fileError('EIO', path);
      return undefined;
    };
    expect(await desk.settleCopy('cards/mine (1).card.json', 'copy')).toMatchObject({ ok: false });
    expect(expectValue(await desk.openCard('mine')).text).toBe(cardText('Mine'));
    disk.watch = () => undefined;
    expectValue(await desk.settleCopy('cards/mine (1).card.json', 'copy'));
    expect(expectValue(await desk.openCard('mine')).text).toBe(cardText('Theirs'));
  });

  test.each(NAMES)('%s is told of and listed', async (name) => {
    const { desk } = await withCopy(name);
    expect(expectValue(await desk.notices())).toEqual([
      expect.stringMatching(
        /^Another program put ".*" (?:beside your card mine|among your cards)\. Choose in the Settings/,
      ),
    ]);
    expect(expectValue(await desk.listCopies())).toMatchObject([
      { kind: 'card', copy: { file: `cards/${name}`, holds: 1 } },
    ]);
  });

  test('cards with longer names of their own are none', async () => {
    const { desk } = await withCopy('mine-2026-ab12.card.json');
    expect(expectValue(await desk.notices())).toEqual([]);
    expect(expectValue(await desk.listCopies())).toEqual([]);
    expectValue(await desk.saveCard(null, cardText('Mine copy')));
    expect(expectValue(await desk.listCopies())).toEqual([]);
  });

  test('the one in use can stay, the other is kept aside', async () => {
    const { disk, desk } = await withCopy('mine (1).card.json');
    expect(await desk.settleCopy('cards/mine (1).card.json', 'used')).toEqual({ ok: true, value: [] });
    expect(textsWith(disk, '/cards/')).toEqual([
      [`${FOLDER}/cards/mine.card.json`, cardText('Mine')],
      [`${FOLDER}/cards/mine (1).card.json.other-2026-11-25T18-00-00Z`, cardText('Theirs')],
    ]);
  });

  test('the other can take its place, and the one in use is kept aside', async () => {
    const { disk, desk } = await withCopy('mine-Laptop-conflict.card.json');
    expect(await desk.settleCopy('cards/mine-Laptop-conflict.card.json', 'copy')).toEqual({ ok: true, value: [] });
    expect(expectValue(await desk.openCard('mine')).text).toBe(cardText('Theirs'));
    expect(expectValue(await desk.listCards()).map(({ id }) => id)).toEqual(['demo', 'mine']);
    expect(textsWith(disk, '/cards/')).toContainEqual([
      `${FOLDER}/cards/mine.card.json.other-2026-11-25T18-00-00Z`,
      cardText('Mine'),
    ]);
  });

  test('both can stay, the other as a card of its own', async () => {
    const { desk } = await withCopy('mine (1).card.json');
    expect(await desk.settleCopy('cards/mine (1).card.json', 'both')).toEqual({ ok: true, value: [] });
    const cards = expectValue(await desk.listCards());
    expect(cards.map(({ title }) => title).toSorted()).toEqual(['Demo', 'Mine', 'Theirs']);
    for (const { id } of cards) expectValue(await desk.openCard(id));
  });

  test('one whose card is gone stands alone, and can be taken in', async () => {
    for (const choice of ['both', 'copy'] as const) {
      const disk = new MemoryDisk();
      disk.put(`${FOLDER}/cards/gone (1).card.json`, cardText('Theirs'));
      const desk = await openOn(disk);
      expect(expectValue(await desk.notices())).toEqual([
        'Another program put "gone (1).card.json" among your cards. Choose in the Settings what becomes of it.',
      ]);
      expect(expectValue(await desk.listCopies())).toMatchObject([{ used: null }]);
      expect(await desk.settleCopy('cards/gone (1).card.json', choice)).toEqual({ ok: true, value: [] });
      expect(expectValue(await desk.listCards()).map(({ title }) => title)).toEqual(['Demo', 'Theirs']);
    }
  });

  test('one that can not be read is not taken, and stays as it is until it is put aside', async () => {
    const { disk, desk } = await withCopy('mine (1).card.json', 'half');
    expect(expectValue(await desk.listCopies())).toMatchObject([{ used: { holds: 1 }, copy: { holds: null } }]);
    expect(await desk.settleCopy('cards/mine (1).card.json', 'copy')).toMatchObject({ ok: false });
    expect(disk.texts().get(`${FOLDER}/cards/mine (1).card.json`)).toBe('half');
    expect(expectValue(await desk.openCard('mine')).text).toBe(cardText('Mine'));
  });

  test('a card whose name differs only in capitals, which would be one file elsewhere, is one too', async () => {
    const { desk } = await withCopy('Mine.card.json');
    expect(expectValue(await desk.listCopies())).toMatchObject([
      { used: { file: 'cards/Mine.card.json' }, copy: { file: 'cards/mine.card.json' } },
    ]);
    expectValue(await desk.settleCopy('cards/mine.card.json', 'both'));
    expect(expectValue(await desk.listCopies())).toEqual([]);
    expect(expectValue(await desk.listCards())).toHaveLength(3);
  });

  test('one far larger than any card is told of, and not read', async () => {
    const { disk, desk } = await withCopy('mine (1).card.json', ' '.repeat(40_000_001));
    expect(expectValue(await desk.listCopies())).toMatchObject([{ copy: { holds: null } }]);
    disk.calls.length = 0;
    expect(await desk.settleCopy('cards/mine (1).card.json', 'both')).toMatchObject({ ok: false });
    expect(disk.calls.filter((call) => call.startsWith('read ') && call.includes('(1)'))).toEqual([]);
  });

  test('one that goes while the list is made is left out', async () => {
    const { disk, desk } = await withCopy('mine (1).card.json');
    disk.watch = (call, path) => {
      if (call === 'info' && path.endsWith('(1).card.json')) void disk.files.rename(path, `${path}.gone`);
      return undefined;
    };
    expect(expectValue(await desk.listCopies())).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { deskFolder } from '../../main/desk/folder.ts';
import { DEFAULT_PREFERENCES } from '../../main/desk/preferences.ts';
import { createDeskService } from '../../main/desk/service.ts';
import { cardText, contentOf, event, FOLDER, gameRecord, openOn, optionsOn, sheetText } from './support/desks.ts';
import { fileError, MemoryDisk } from './support/memory-disk.ts';

const GAME = `${FOLDER}/games/2026/11/g-1.json`;
const LOG = `${FOLDER}/open/g-1.jsonl`;

describe('the folder', () => {
  test('it is the same for the desktop app and the browser host, and can be chosen', () => {
    const at = (platform: NodeJS.Platform, variables = {}): string =>
      deskFolder({ platform, home: '/home/player', variables });
    expect(at('linux')).toBe('/home/player/.local/share/windrow');
    expect(at('linux', { XDG_DATA_HOME: '/data' })).toBe('/data/windrow');
    expect(at('darwin')).toBe('/home/player/Library/Application Support/Windrow/Desk');
    expect(at('win32', { APPDATA: '/roaming' })).toBe('/roaming/Windrow/Desk');
    expect(at('win32')).toBe('/home/player/AppData/Roaming/Windrow/Desk');
    expect(at('linux', { WINDROW_FOLDER: '/chosen' })).toBe('/chosen');
    expect(at('linux', { WINDROW_FOLDER: '' })).toBe('/home/player/.local/share/windrow');
  });

  test('one that is not there and can not be made is told in words: an empty Windrow would seem to have lost all', async () => {
    const disk = new MemoryDisk();
    disk.watch = (call, path) => {
      if (call === 'makeFolder') throw fileError('EACCES', path);
      return undefined;
    };
    expect(await createDeskService(optionsOn(disk))).toMatchObject({
      ok: false,
      problem: { code: 'not-allowed', message: expect.stringContaining(FOLDER) },
    });
  });

  test('one in which nothing can be made opens for reading, and is used once that is possible', async () => {
    const disk = new MemoryDisk();
    disk.put(`${FOLDER}/letter.txt`, 'from me to me');
    disk.watch = (call, path) => {
      if (['makeFolder', 'createNew'].includes(call)) throw fileError('EROFS', path);
      return undefined;
    };
    const desk = await openOn(disk);
    expect(expectValue(await desk.listGames())).toEqual([]);
    const refused = await desk.saveCard('mine', cardText('Mine'));
    expect(refused).toMatchObject({ problem: { code: 'not-allowed', message: expect.stringContaining(FOLDER) } });
    expect(await desk.whyOnlyReading()).toEqual({ ok: true, value: refused.ok ? '' : refused.problem.message });
    disk.watch = (call, path) => {
      if (call === 'createNew') throw fileError('EIO', path);
      return undefined;
    };
    expect(await desk.saveCard('mine', cardText('Mine'))).toMatchObject({ problem: { code: 'disk-trouble' } });
    disk.watch = () => undefined;
    expectValue(await desk.saveCard('mine', cardText('Mine')));
    expect(await desk.whyOnlyReading()).toEqual({ ok: true, value: null });
  });

  test('one that can not even be read is told in words at the start', async () => {
    const disk = new MemoryDisk();
    disk.watch = (_call, path) => {
      throw fileError('EACCES', path);
    };
    expect(await createDeskService(optionsOn(disk))).toMatchObject({
      ok: false,
      problem: { code: 'not-allowed', message: expect.stringContaining('does not let Windrow read its folder') },
    });
  });

  test('our own bugs are not taken for file errors', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    disk.watch = () => {
      throw new TypeError('a bug');
    };
    await expect(desk.saveCard('mine', cardText('Mine'))).rejects.toThrow('a bug');
    disk.watch = () => undefined;
    expectValue(await desk.saveCard('mine', cardText('Mine')));
  });

  test('it tells what it is', async () => {
    const desk = await openOn(new MemoryDisk());
    expect(await desk.about()).toEqual({
      ok: true,
      value: { appVersion: '0.0.0', host: 'browser', folder: FOLDER, usualPreferences: DEFAULT_PREFERENCES },
    });
  });
});

describe('a folder that other programs change', () => {
  test('a log that vanishes is begun anew, and nothing is lost', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.startGame(gameRecord('g-1')));
    expectValue(await desk.appendEvent('g-1', 0, event(0)));
    await disk.files.remove(LOG);
    expectValue(await desk.appendEvent('g-1', 1, event(1)));
    expect(expectValue(await (await openOn(disk)).openGame('g-1')).events).toHaveLength(2);
  });

  test('a log that grows by another hand is begun anew', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.startGame(gameRecord('g-1')));
    expectValue(await desk.appendEvent('g-1', 0, event(0)));
    disk.put(LOG, `${disk.texts().get(LOG)}{"drop":0}\n`);
    expectValue(await desk.appendEvent('g-1', 1, event(1)));
    expect(disk.texts().get(LOG)?.trimEnd().split('\n')).toHaveLength(1);
    expect(expectValue(await (await openOn(disk)).openGame('g-1')).events).toHaveLength(2);
  });

  test('a game file that vanishes is off the list when it is opened', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.startGame(gameRecord('g-1')));
    await disk.files.remove(GAME);
    for (const answer of [
      await desk.openGame('g-1'),
      await desk.appendEvent('g-1', 0, event(0)),
      await desk.dropEvent('g-1', 0),
      await desk.changeGame('g-1', {}),
      await desk.removeGame('g-1'),
    ]) {
      expect(answer).toMatchObject({ ok: false, problem: { code: 'not-found' } });
    }
    expect(expectValue(await desk.listGames())).toEqual([]);
  });

  test('games put there by hand are listed at the next start under the names of their files', async () => {
    const disk = new MemoryDisk();
    await (await openOn(disk)).close();
    disk.put(`${FOLDER}/games/2025/01/copy-of-g-1.json`, JSON.stringify(gameRecord('g-1')));
    disk.put(`${FOLDER}/games/2025/01/not ours.json`, '{}');
    disk.put(`${FOLDER}/games/readme.txt`, 'hello');
    const desk = await openOn(disk);
    expect(expectValue(await desk.listGames())).toMatchObject([
      { id: 'copy-of-g-1', startedAt: '2026-11-25T18:00:00Z' },
    ]);
    expect(expectValue(await desk.openGame('copy-of-g-1')).id).toBe('copy-of-g-1');
  });

  test('a log without its game brings the game back', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.startGame(gameRecord('g-1')));
    expectValue(await desk.appendEvent('g-1', 0, event(0)));
    await disk.files.remove(GAME);
    const again = await openOn(disk);
    expect(expectValue(await again.openGame('g-1')).events).toHaveLength(1);
    expect(disk.texts().has(GAME)).toBe(true);
  });

  test('foreign files among the cards and logs are left alone', async () => {
    const disk = new MemoryDisk();
    disk.put(`${FOLDER}/open/notes.txt`, 'mine');
    disk.put(`${FOLDER}/cards/.hidden.card.json`, 'mine');
    disk.put(`${FOLDER}/cards/shopping.txt`, 'mine');
    disk.put(`${FOLDER}/cards/demo.card.json`, cardText('False demo'));
    disk.put(`${FOLDER}/cards/newer.card.json`, '{"format":"windrow.card","version":9}');
    const before = disk.texts();
    const desk = await openOn(disk);
    for (let turn = 0; turn < 2; turn += 1) {
      expect(expectValue(await desk.listCards()).map(({ title }) => title)).toEqual(['Demo']);
    }
    expect(expectValue(await desk.notices())).toEqual([expect.stringMatching(/^The card newer: .*newer Windrow/)]);
    for (const [path, text] of before) expect(disk.texts().get(path)).toBe(text);
  });

  test('a card that a newer Windrow put there is not written over; another version becomes a backup', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    const card = `${FOLDER}/cards/mine.card.json`;
    expectValue(await desk.saveCard('mine', cardText('Mine')));
    disk.now += 1000;
    disk.put(card, cardText('From another computer'));
    expectValue(await desk.saveCard('mine', cardText('Mine, later')));
    const [backup] = expectValue(await desk.listBackups('mine'));
    expect(disk.texts().get(`${FOLDER}/cards/backups/mine/${backup?.name}`)).toBe(cardText('From another computer'));
    disk.now += 1000;
    disk.put(card, '{"format":"windrow.card","version":9}');
    expect(await desk.saveCard('mine', cardText('Mine'))).toMatchObject({ problem: { code: 'newer-version' } });
    expect(disk.texts().get(card)).toBe('{"format":"windrow.card","version":9}');
  });

  test('a file of each kind that can not be read now is told of and left alone; all others open', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    for (const id of ['g-1', 'g-2', 'g-3']) expectValue(await desk.startGame(gameRecord(id)));
    for (const id of ['one', 'two']) expectValue(await desk.saveCard(id, cardText(id)));
    expectValue(await desk.keepSheet(sheetText('Thursday')));
    expectValue(await desk.appendEvent('g-2', 0, event(0)));
    const stopped = disk.texts();
    disk.now += 10_000;
    disk.watch = (call, path) => {
      if (call === 'read' && /g-1\.json|g-2\.jsonl|one\.card|sheet/.test(path)) throw fileError('EACCES', path);
      return undefined;
    };
    const again = await openOn(disk);
    expect(expectValue(await again.listGames()).map(({ id }) => id)).toEqual(['g-3', 'g-2']);
    expect(await again.openGame('g-2')).toMatchObject({ problem: { code: 'not-allowed' } });
    expect(await again.appendEvent('g-2', 1, event(1))).toMatchObject({ problem: { code: 'not-allowed' } });
    expect(expectValue(await again.listCards()).map(({ id }) => id)).toEqual(['demo', 'two']);
    expect(expectValue(await again.listSheets())).toEqual([]);
    const told = expectValue(await again.notices()).join('\n');
    for (const what of ['game g-1', 'steps of the game g-2', 'card one', 'sheet thursday'])
      expect(told).toContain(what);
    await again.close();
    disk.watch = () => undefined;
    const kinds = /cards\/|games\/|open\/|sheets\//;
    for (const [path, text] of stopped) if (kinds.test(path)) expect(disk.texts().get(path)).toBe(text);
    const later = await openOn(disk);
    expect(expectValue(await later.openGame('g-2')).events).toHaveLength(1);
    expect(expectValue(await later.listGames())).toHaveLength(3);
    expect(expectValue(await later.notices())).toEqual([]);
  });

  test('a file far too large is not read', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.saveCard('mine', cardText('Mine')));
    disk.put(`${FOLDER}/cards/mine.card.json`, new Uint8Array(40_000_001));
    expect(await desk.openCard('mine')).toMatchObject({ ok: false, problem: { code: 'too-large' } });
    expect(disk.texts().get(`${FOLDER}/cards/mine.card.json`)).toHaveLength(40_000_001);
  });
});

describe('small things', () => {
  test('a log whose first line has lost its game is set aside, and the app starts', async () => {
    const disk = new MemoryDisk();
    disk.put(LOG, '{"kind":"windrow.game-log","schemaVersion":1,"base":""}\n{"drop":0}\n');
    const desk = await openOn(disk);
    expect(expectValue(await desk.notices())).toEqual([expect.stringMatching(/g-1.*kept as g-1\.jsonl\.damaged-/)]);
  });

  test('a game is started once; one that is there is not brought back', async () => {
    const desk = await openOn(new MemoryDisk());
    expectValue(await desk.startGame(gameRecord('g-1')));
    // Asked again because the answer was lost it is the same game; another one of that id is not.
    expectValue(await desk.startGame(gameRecord('g-1')));
    expect(expectValue(await desk.listGames())).toHaveLength(1);
    expect(await desk.startGame(gameRecord('g-1', { place: 'Elsewhere' }))).toMatchObject({
      problem: { code: 'taken' },
    });
    expect(await desk.restoreGame('g-1')).toMatchObject({ problem: { code: 'taken' } });
    expect(await desk.restoreGame('g-9')).toMatchObject({ problem: { code: 'not-found' } });
  });

  test('what is no event of a game is kept too: place, tags, how the rack lies', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.startGame(gameRecord('g-1')));
    expect(expectValue(await desk.changeGame('g-1', { place: 'Home', tags: ['Thursday'] }))).toMatchObject({
      place: 'Home',
      tags: ['Thursday'],
    });
    expectValue(await desk.changeGame('g-1', { arrangement: 'FF | N' }));
    expect((await desk.changeGame('g-1', { tags: Array.from({ length: 60 }, () => 'x') })).ok).toBe(false);
    const before = await contentOf(desk);
    expect(before).toContain('FF | N');
    expect(await contentOf(await openOn(disk))).toBe(before);
  });

  test('two backups in one second have names of their own, the newer one first', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    for (const title of ['One', 'Two', 'Three']) {
      expectValue(await desk.saveCard('mine', cardText(title)));
      expectValue(await desk.removeCard('mine'));
    }
    const names = expectValue(await desk.listBackups('mine')).map(({ name }) => name);
    expect(names).toEqual([
      '2026-11-25T18-00-02Z.card.json',
      '2026-11-25T18-00-01Z.card.json',
      '2026-11-25T18-00-00Z.card.json',
    ]);
    expect(expectValue(await desk.restoreCard('mine', names[0] ?? '')).title).toBe('Three');
  });

  test('two damaged files in one second have names of their own', async () => {
    const disk = new MemoryDisk();
    for (let turn = 0; turn < 3; turn += 1) {
      disk.put(`${FOLDER}/preferences.json`, `damaged ${turn}`);
      const desk = await openOn(disk);
      expectValue(await desk.readPreferences());
      await desk.close();
    }
    const aside = [...disk.texts()].filter(([path]) => path.includes('.damaged-')).map(([, text]) => text);
    expect(aside.sort()).toEqual(['damaged 0', 'damaged 1', 'damaged 2']);
  });

  test('a damaged card without a backup is told of and off the list', async () => {
    const disk = new MemoryDisk();
    disk.put(`${FOLDER}/cards/mine.card.json`, 'damaged');
    const desk = await openOn(disk);
    expect(expectValue(await desk.listCards())).toHaveLength(1);
    expect(await desk.openCard('mine')).toMatchObject({ problem: { code: 'not-found' } });
    expect(expectValue(await desk.notices())).toEqual([
      expect.stringMatching(/no backup.*kept as mine\.card\.json\.damaged-/),
    ]);
    expect(await desk.removeCard('mine')).toMatchObject({ problem: { code: 'not-found' } });
  });

  test('a card without a title has its name for one, and a name made of nothing is a plain one', async () => {
    const desk = await openOn(new MemoryDisk());
    const untitled = JSON.stringify({ format: 'windrow.card', version: 1, title: '', season: '', sections: [] });
    const { id, title, lines } = expectValue(await desk.saveCard(null, untitled));
    expect({ id, title, lines }).toEqual({ id, title: id, lines: 0 });
    expect(id).toMatch(/^card-/);
  });

  test('the index is begun anew when it has vanished', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.startGame(gameRecord('g-1')));
    expectValue(await desk.appendEvent('g-1', 0, event(0)));
    await disk.files.remove(`${FOLDER}/index.jsonl`);
    await desk.close();
    expect(disk.texts().get(`${FOLDER}/index.jsonl`)).toMatch(/^\{"check":"[0-9a-f]{8}","entry":\{"id":"g-1".*\}\}\n$/);
  });

  test('an index of another version of the app is made again', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.startGame(gameRecord('g-1')));
    await desk.close();
    await (await openOn(disk, { appVersion: '0.0.1' })).close();
    const newer = disk.texts().get(`${FOLDER}/index.jsonl`);
    await (await openOn(disk)).close();
    expect(disk.texts().get(`${FOLDER}/index.jsonl`)).not.toBe(newer);
  });

  test('an index with one letter changed is made again, whatever the letter', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.startGame(gameRecord('g-1')));
    await desk.close();
    await (await openOn(disk)).close();
    const index = disk.texts().get(`${FOLDER}/index.jsonl`) ?? '';
    disk.put(`${FOLDER}/index.jsonl`, index.replace('Lakeside', 'Lakesidf'));
    expect(expectValue(await (await openOn(disk)).listGames())).toMatchObject([{ place: 'Lakeside library' }]);
  });

  test('a lock on another computer is believed until it falls silent', async () => {
    const disk = new MemoryDisk();
    const lock = JSON.stringify({ process: 1, computer: 'elsewhere', mark: 'x' });
    disk.put(`${FOLDER}/in-use.json`, lock);
    expect(await createDeskService(optionsOn(disk))).toMatchObject({ problem: { code: 'in-use' } });
    disk.now += 100_000;
    expect((await createDeskService(optionsOn(disk))).ok).toBe(true);
  });
});

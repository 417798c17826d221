import { homedir } from 'node:os';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { NEW_GAME } from '../../core/game/game-state.ts';
import { replay } from '../../core/game/state.ts';
import { gameEntryOf } from '../../main/desk/game-entry.ts';
import { openDesk, usualFolder } from '../../main/desk/open.ts';
import { createDeskService } from '../../main/desk/service.ts';
import { makeFolders } from '../../main/files/durable.ts';
import { errorCode, type Files, ifThere, quietly } from '../../main/files/files.ts';
import { nodeFiles } from '../../main/files/node-files.ts';
import { orTrouble } from '../../main/files/trouble.ts';
import { EVENTS, FOLDER, gameRecord, openOn, optionsOn, sheetText } from './support/desks.ts';
import { fileError, MemoryDisk } from './support/memory-disk.ts';

afterEach(() => vi.unstubAllEnvs());

describe('folders', () => {
  test('one that another program makes at the same moment is as good as ours; any other trouble is told', async () => {
    const disk = new MemoryDisk();
    const racing = (code: string): Files => ({
      ...disk.files,
      makeFolder: async (path) => {
        await disk.files.makeFolder(path);
        throw fileError(code, path);
      },
    });
    await makeFolders(racing('EEXIST'), '/a/b');
    expect((await disk.files.list('/a')).map(({ name }) => name)).toEqual(['b']);
    await expect(makeFolders(racing('EROFS'), '/c')).rejects.toMatchObject({ code: 'EROFS' });
  });

  test('a disk that is not there at all ends in words, not in a loop', async () => {
    const none: Files = {
      ...new MemoryDisk().files,
      info: (path) => Promise.reject(fileError('ENOENT', path)),
      makeFolder: (path) => Promise.reject(fileError('ENOENT', path)),
    };
    const opened = await createDeskService({ ...optionsOn(new MemoryDisk()), files: none });
    expect(opened).toMatchObject({ ok: false, problem: { code: 'missing', message: expect.stringContaining(FOLDER) } });
  });

  test('Windows, which can flush no folder, is not asked to', async () => {
    const { platform } = process;
    Object.defineProperty(process, 'platform', { value: 'win32' });
    await nodeFiles.syncFolder('/nowhere');
    Object.defineProperty(process, 'platform', { value: platform });
    await expect(nodeFiles.syncFolder('/nowhere')).rejects.toMatchObject({ code: 'ENOENT' });
  });

  test('the usual folder is the chosen one, or lies where the system keeps the data of programs', async () => {
    vi.stubEnv('WINDROW_FOLDER', '/chosen');
    expect(usualFolder()).toBe('/chosen');
    vi.stubEnv('WINDROW_FOLDER', '');
    vi.stubEnv('XDG_DATA_HOME', undefined);
    if (process.platform === 'linux') expect(usualFolder()).toBe(`${homedir()}/.local/share/windrow`);
  });

  test('on the real clock, a rename that is blocked for a moment goes through', async () => {
    const disk = new MemoryDisk();
    disk.now = Date.now();
    let blocked = 2;
    disk.watch = (call, path) => {
      if (call === 'rename' && (blocked -= 1) >= 0) throw fileError('EBUSY', path);
      return undefined;
    };
    const desk = expectValue(await openDesk({ folder: FOLDER, host: 'browser', files: disk.files }));
    expectValue(await desk.changePreferences({ theme: 'dark' }));
    await desk.close();
    expect(blocked).toBeLessThan(0);
  });
});

describe('errors', () => {
  test('only an error with a code of the system is one of the files', async () => {
    expect([errorCode('x'), errorCode(new Error('x')), errorCode(Object.assign(new Error('x'), { code: 5 }))]).toEqual([
      '',
      '',
      '',
    ]);
    expect(errorCode(fileError('EIO', '/a'))).toBe('EIO');
    await expect(quietly(Promise.reject(new TypeError('a bug')))).rejects.toThrow('a bug');
    await quietly(Promise.reject(fileError('EIO', '/a')));
    await expect(ifThere(Promise.reject(fileError('EIO', '/a')))).rejects.toThrow('EIO');
    expect(await ifThere(Promise.reject(fileError('ENOTDIR', '/a')))).toBeUndefined();
    await expect(orTrouble('read', 'it', () => Promise.reject(new TypeError('a bug')))).rejects.toThrow('a bug');
  });
});

describe('a game whose card is odd is listed all the same', () => {
  const { at } = EVENTS[0] ?? { at: '' };
  const won = [EVENTS[0], { type: 'ended', result: 'won', winner: 'South', by: 'draw', lineId: 'a', at }].filter(
    (each) => each !== undefined,
  ) as NonNullable<(typeof EVENTS)[number]>[];

  test.each([null, 5, 'card', [], {}, { format: 'other' }, { title: 7 }])('with %j', (card) => {
    const record = { ...gameRecord('g-1', { events: won }), card };
    const entry = gameEntryOf({ record, state: replay(won).state });
    expect(entry).toMatchObject({ cardTitle: '', season: '', section: null, outcome: 'won', winner: 'South' });
    expect(gameEntryOf({ record: { ...gameRecord('g-1'), card }, state: NEW_GAME })).toMatchObject({
      cardTitle: '',
      payments: null,
    });
  });
});

test('CR-J6: a lock that is stale, but taken by others each time before we come to it, is theirs', async () => {
  const disk = new MemoryDisk();
  const lock = `${FOLDER}/in-use.json`;
  const stale = JSON.stringify({ process: 7, computer: 'here', mark: 'x' });
  disk.put(lock, stale);
  let taken = 0;
  disk.watch = (call, path) => {
    if (call === 'createNew' && path === lock && disk.texts().get(lock) === undefined) {
      taken += 1;
      disk.put(lock, stale);
    }
    return undefined;
  };
  const running = {
    process: 100,
    computer: 'here',
    isAlive: () => false,
    startOf: async () => undefined,
    held: new Set<string>(),
  };
  const opened = await createDeskService({ ...optionsOn(disk), running });
  expect(opened).toMatchObject({ ok: false, problem: { code: 'in-use' } });
  expect(taken).toBe(2);
});

test('a sheet in the place of a damaged one: the damaged file is kept', async () => {
  const disk = new MemoryDisk();
  disk.put(`${FOLDER}/practice/sheets/thursday.sheet.json`, '{"kin');
  const desk = await openOn(disk);
  expectValue(await desk.keepSheet(sheetText('Thursday')));
  expect([...disk.texts().values()]).toContain('{"kin');
  expect(expectValue(await desk.listSheets())).toHaveLength(1);
});

test('CR-F6: one action takes the names of players out of every game, out of removed ones too, and out of every file', async () => {
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  for (const id of ['g-1', 'g-2', 'g-3']) {
    expectValue(await desk.startGame(gameRecord(id, id === 'g-3' ? {} : { players: { North: 'Heron' } })));
  }
  expectValue(await desk.changeGame('g-1', { players: { East: 'Heron', West: 'Plover' } }));
  for (const id of ['g-2', 'g-3']) expectValue(await desk.removeGame(id));
  disk.put(`${FOLDER}/removed/not a game.json`, '{}');
  disk.put(`${FOLDER}/removed/g-9.json`, '{"kin');
  expect(expectValue(await desk.removeNames())).toBe(2);
  expect(expectValue(await desk.removeNames())).toBe(0);
  expect([...disk.texts().values()].join('')).not.toMatch(/Heron|Plover/);
  expectValue(await desk.restoreGame('g-2'));
  expect(expectValue(await desk.listGames()).flatMap(({ names }) => names)).toEqual([]);
});

test('findings that can not be added are told in words, and are whole when it is tried again', async () => {
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  const row = { id: 'g-1', key: 'k', figures: { aways: [], aimed: null }, choices: null };
  expectValue(await desk.keepFindings([row]));
  for (const failing of ['openAtEnd', 'write', 'close'] as const) {
    disk.watch = (call, path) => {
      if (call === failing && path.endsWith('all.jsonl')) throw fileError('EIO', path);
      return undefined;
    };
    expect(await desk.keepFindings([{ ...row, id: failing }])).toMatchObject({ problem: { code: 'disk-trouble' } });
    disk.watch = () => undefined;
    expectValue(await desk.keepFindings([{ ...row, id: failing }]));
  }
  const again = await openOn(disk);
  expect(expectValue(await again.readFindings(null)).map(({ id }) => id)).toEqual([
    'g-1',
    'openAtEnd',
    'write',
    'close',
  ]);
});

test('a game that another program put there meanwhile is not written over by a start, a return or an import', async () => {
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  expectValue(await desk.startGame(gameRecord('g-1')));
  expectValue(await desk.removeGame('g-1'));
  const theirs = JSON.stringify(gameRecord('g-1', { place: 'Theirs' }));
  disk.put(`${FOLDER}/games/2026/11/g-1.json`, theirs);
  for (const answer of [
    await desk.startGame(gameRecord('g-1')),
    await desk.restoreGame('g-1'),
    await desk.importGames([gameRecord('g-1')]),
  ]) {
    expect(answer).toMatchObject({ ok: false, problem: { code: 'taken' } });
  }
  expect(disk.texts().get(`${FOLDER}/games/2026/11/g-1.json`)).toBe(theirs);
  expect(expectValue(await (await openOn(disk, { running: optionsOn(disk, 5).running })).listGames())).toMatchObject([
    { place: 'Theirs' },
  ]);
});

test('CR-V4: a game that comes in does not replace one that can not be read here: a newer one, or one held by another', async () => {
  const disk = new MemoryDisk();
  const path = `${FOLDER}/games/2026/11/g-1.json`;
  const newer = JSON.stringify({ ...gameRecord('g-1'), schemaVersion: 9 });
  disk.put(path, newer);
  const desk = await openOn(disk);
  const coming = gameRecord('g-1', { place: 'From another computer' });
  expect(await desk.importGames([coming])).toMatchObject({ problem: { code: 'newer-version' } });
  disk.watch = (call, at) => {
    if (call === 'read' && at === path) throw fileError('EBUSY', at);
    return undefined;
  };
  expect(await desk.importGames([coming])).toMatchObject({ problem: { code: 'busy' } });
  expect(disk.texts().get(path)).toBe(newer);
});

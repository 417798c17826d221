import { mkdtemp, readdir, readFile, rm, stat, utimes } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import {
  makeFolders,
  removeDurably,
  renamePatiently,
  type Storage,
  writeAll,
  writeDurably,
} from '../../main/files/durable.ts';
import { nodeFiles } from '../../main/files/node-files.ts';
import { fileTrouble } from '../../main/files/trouble.ts';
import { fileError, MemoryDisk } from './support/memory-disk.ts';

function storageOn(disk: MemoryDisk): Storage {
  return {
    files: disk.files,
    freshName: () => 'n1',
    pause: async (milliseconds) => {
      disk.now += milliseconds;
    },
  };
}

describe('writing durably', () => {
  test('CR-J1: new name in the same folder, whole write, flush, size check, rename, flush of the folder', async () => {
    const disk = new MemoryDisk();
    disk.put('/d/a.json', 'old');
    await writeDurably(storageOn(disk), '/d/a.json', 'new');
    expect(disk.calls).toEqual([
      'createNew /d/a.json.n1.unfinished',
      'write /d/a.json.n1.unfinished',
      'sync /d/a.json.n1.unfinished',
      'size /d/a.json.n1.unfinished',
      'close /d/a.json.n1.unfinished',
      'rename /d/a.json.n1.unfinished /d/a.json',
      'syncFolder /d',
    ]);
    expect(disk.texts()).toEqual(new Map([['/d/a.json', 'new']]));
  });

  test('CR-J2: after a failure the old file is byte-identical and no temporary file is left', async () => {
    for (const failing of ['createNew', 'write', 'sync', 'size', 'close', 'rename']) {
      const disk = new MemoryDisk();
      disk.put('/d/a.json', 'old');
      disk.watch = (call, path) => {
        if (call === failing) throw fileError('EIO', path);
        return undefined;
      };
      await expect(writeDurably(storageOn(disk), '/d/a.json', 'new')).rejects.toThrow('EIO');
      expect(disk.texts()).toEqual(new Map([['/d/a.json', 'old']]));
    }
  });

  test('a disk that takes a few bytes at a time gets them all', async () => {
    const disk = new MemoryDisk();
    disk.put('/d/other', '');
    disk.watch = (call) => (call === 'write' && disk.calls.length % 5 !== 0 ? 'short' : undefined);
    await writeDurably(storageOn(disk), '/d/a.json', 'a longer text than one write takes');
    expect(disk.texts().get('/d/a.json')).toBe('a longer text than one write takes');
  });

  test('a disk that takes nothing counts as full', async () => {
    await expect(writeAll({ write: async () => 0 }, Buffer.from('x'))).rejects.toMatchObject({ code: 'ENOSPC' });
  });

  test.each(['EPERM', 'EBUSY', 'EACCES'])(
    'CR-J7: a rename blocked by %s is tried for 5 s with growing pauses, then told',
    async (code) => {
      const disk = new MemoryDisk();
      disk.put('/d/a.json', 'old');
      disk.put('/d/b', 'new');
      disk.watch = (call, path) => {
        if (call === 'rename') throw fileError(code, path);
        return undefined;
      };
      const pauses: number[] = [];
      const storage = { ...storageOn(disk), pause: async (milliseconds: number) => void pauses.push(milliseconds) };
      await expect(renamePatiently(storage, '/d/b', '/d/a.json')).rejects.toMatchObject({ code });
      expect(pauses).toEqual([10, 20, 40, 80, 160, 320, 640, 1280, 2560]);
      expect(disk.texts().get('/d/a.json')).toBe('old');
    },
  );

  test.each(['EPERM', 'EBUSY', 'EACCES'])(
    'CR-J7: a removal blocked by %s is tried for as long, then told',
    async (code) => {
      const disk = new MemoryDisk();
      disk.put('/d/a.json', 'old');
      let blocked = 4;
      disk.watch = (call, path) => {
        if (call === 'remove' && (blocked -= 1) >= 0) throw fileError(code, path);
        return undefined;
      };
      await removeDurably(storageOn(disk), '/d/a.json');
      expect(disk.texts().size).toBe(0);
      disk.put('/d/a.json', 'old');
      blocked = Infinity;
      let waited = 0;
      const storage = { ...storageOn(disk), pause: async (milliseconds: number) => void (waited += milliseconds) };
      await expect(removeDurably(storage, '/d/a.json')).rejects.toMatchObject({ code });
      expect(waited).toBeGreaterThanOrEqual(5000);
    },
  );

  test('CR-J7: a rename that is free again after a while goes through', async () => {
    const disk = new MemoryDisk();
    disk.put('/d/b', 'new');
    let blocked = 4;
    disk.watch = (call, path) => {
      if (call === 'rename' && (blocked -= 1) >= 0) throw fileError('EBUSY', path);
      return undefined;
    };
    await renamePatiently(storageOn(disk), '/d/b', '/d/a.json');
    expect(disk.texts()).toEqual(new Map([['/d/a.json', 'new']]));
  });
});

test('a removal is flushed with its folder; of what is not there nothing is flushed', async () => {
  const disk = new MemoryDisk();
  disk.put('/d/a.json', 'old');
  await removeDurably(storageOn(disk), '/d/a.json');
  await removeDurably(storageOn(disk), '/d/a.json');
  expect(disk.calls).toEqual(['remove /d/a.json', 'syncFolder /d', 'remove /d/a.json']);
});

test('folders that are there are not made again', async () => {
  const disk = new MemoryDisk();
  disk.put('/d/e/a.json', '');
  await makeFolders(disk.files, '/d/e/f');
  expect(disk.calls).toEqual(['info /d/e/f', 'info /d/e', 'makeFolder /d/e/f', 'syncFolder /d/e']);
});

describe('on the real file system', () => {
  let folder = '';
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'windrow-writing-'));
  });
  afterEach(async () => {
    await rm(folder, { recursive: true });
  });

  test('every call does what it is for', async () => {
    const inner = join(folder, 'inner');
    await nodeFiles.makeFolder(inner);
    expect((await stat(inner)).mode & 0o777).toBe(0o700);
    const path = join(inner, 'a.jsonl');
    const made = await nodeFiles.createNew(path);
    await made.write(Buffer.from('one\n'));
    await made.close();
    await expect(nodeFiles.createNew(path)).rejects.toMatchObject({ code: 'EEXIST' });
    const added = await nodeFiles.openAtEnd(path);
    expect(await added.write(Buffer.from('two\n'))).toBe(4);
    await added.sync();
    expect(await added.size()).toBe(8);
    await added.close();
    await expect(added.size()).rejects.toThrow();
    expect(Buffer.from(await nodeFiles.read(path)).toString()).toBe('one\ntwo\n');
    await utimes(path, 1, 1);
    expect(await nodeFiles.info(path)).toEqual({ size: 8, changedAt: 1000 });
    await nodeFiles.touch(path);
    expect((await nodeFiles.info(path)).changedAt).toBeGreaterThan(1_700_000_000_000);
    expect(await nodeFiles.list(folder)).toEqual([{ name: 'inner', folder: true }]);
    expect(await nodeFiles.list(inner)).toEqual([{ name: 'a.jsonl', folder: false }]);
    await expect(nodeFiles.openAtEnd(join(inner, 'none'))).rejects.toMatchObject({ code: 'ENOENT' });
    await nodeFiles.remove(path);
    expect(await nodeFiles.list(inner)).toEqual([]);
  });

  test('CR-F6: files are for their owner alone (0600), and written whole', async () => {
    const storage: Storage = { files: nodeFiles, pause: async () => undefined, freshName: () => 'x' };
    const path = join(folder, 'a.json');
    const text = 'ä'.repeat(300_000);
    await writeDurably(storage, path, 'first');
    await writeDurably(storage, path, text);
    expect(await readFile(path, 'utf8')).toBe(text);
    expect(await readdir(folder)).toEqual(['a.json']);
    expect((await stat(path)).mode & 0o777).toBe(0o600);
  });
});

test('a file error is told in words a player understands; our own bugs are not hidden', () => {
  const kinds = {
    'disk-full': ['ENOSPC', 'EDQUOT'],
    'not-allowed': ['EACCES', 'EPERM', 'EROFS'],
    busy: ['EBUSY'],
    missing: ['ENOENT'],
    'too-large': ['EFBIG'],
    'not-a-folder': ['ENOTDIR'],
    'a-folder': ['EISDIR'],
    'long-name': ['ENAMETOOLONG'],
    'many-files': ['EMFILE', 'ENFILE'],
    'disk-trouble': ['EIO'],
  };
  const given = Object.entries(kinds).flatMap(([kind, codes]) => codes.map((code) => [kind, code] as const));
  for (const [kind, code] of given) {
    for (const doing of ['read', 'save', 'open'] as const) {
      const { problem } = fileTrouble(fileError(code, '/secret/path'), doing, 'the card') as {
        problem: { code: string; message: string };
      };
      expect(problem.code).toBe(kind);
      expect(problem.message).toContain('the card');
      expect(problem.message).not.toContain('/secret');
      expect(problem.message).not.toContain(code);
    }
  }
  expect(fileTrouble(fileError('ENOSPC', '/a'), 'save', 'the card')).toMatchObject({
    problem: { code: 'disk-full', message: expect.stringMatching(/disk is full.*safe.*Free some space/) },
  });
  expect(() => fileTrouble(new TypeError('a bug'), 'save', 'the card')).toThrow('a bug');
});

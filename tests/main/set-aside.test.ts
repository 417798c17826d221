import { expect, test } from 'vitest';
import { type DeskContext, keepCopy, readExactText, readRemakable, setAside } from '../../main/desk/context.ts';
import { placesIn } from '../../main/desk/places.ts';
import { FOLDER, optionsOn } from './support/desks.ts';
import { fileError, MemoryDisk } from './support/memory-disk.ts';

const FILE = `${FOLDER}/a.json`;

function contextOn(disk: MemoryDisk): DeskContext {
  return { ...optionsOn(disk), places: placesIn(FOLDER), notify: () => undefined };
}

test('a file is read up to its limit and not beyond; one that can be made again counts as not there', async () => {
  const disk = new MemoryDisk();
  disk.put(FILE, '12345');
  const context = contextOn(disk);
  expect(await readExactText(context, FILE, 5)).toEqual({ text: '12345', exact: true });
  await expect(readExactText(context, FILE, 4)).rejects.toMatchObject({
    code: 'EFBIG',
    message: `${FILE} is too large`,
  });
  expect(await readRemakable(context, FILE, 5)).toBe('12345');
  expect(await readRemakable(context, FILE, 4)).toBeUndefined();
  disk.watch = (_, path) => {
    throw fileError('EIO', path);
  };
  await expect(readRemakable(context, FILE)).rejects.toMatchObject({ code: 'EIO' });
});

test('CR-J4: what is set aside is named after its file and the second, and numbered from 2', async () => {
  const disk = new MemoryDisk();
  const names: string[] = [];
  for (const content of ['one', 'two', 'three']) {
    disk.put(FILE, content);
    names.push(await setAside(contextOn(disk), FILE));
  }
  expect(names).toEqual(['', '-2', '-3'].map((number) => `a.json.damaged-2026-11-25T18-00-00Z${number}`));
  expect(names.map((name) => disk.texts().get(`${FOLDER}/${name}`))).toEqual(['one', 'two', 'three']);
});

test('CR-J4: a copy that can not be made whole leaves nothing, and the file as it was', async () => {
  const disk = new MemoryDisk();
  disk.put(FILE, 'damaged');
  disk.watch = (call, path) => {
    if (call === 'sync') throw fileError('EIO', path);
    return undefined;
  };
  await expect(keepCopy(contextOn(disk), FILE)).rejects.toMatchObject({ code: 'EIO' });
  expect(disk.texts()).toEqual(new Map([[FILE, 'damaged']]));
});

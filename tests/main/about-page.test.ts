import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { aboutPage } from '../../main/desk/folder.ts';
import { openDesk } from '../../main/desk/open.ts';
import { FORMAT_PAGES } from '../../main/format-pages.ts';
import { FOLDER, openOn } from './support/desks.ts';
import { fileError, MemoryDisk } from './support/memory-disk.ts';

const PAGE = `${FOLDER}/about-these-files.txt`;

test('CR-V1, CR-F7: the pages of all file forms lie among the files, examples included', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'windrow-about-'));
  await expectValue(await openDesk({ folder, host: 'browser' })).close();
  const text = await readFile(join(folder, 'about-these-files.txt'), 'utf8');
  expect(FORMAT_PAGES).toHaveLength(5);
  for (const page of FORMAT_PAGES) expect(text).toContain(page.trim());
  expect(text.match(/```json/g)?.length).toBeGreaterThan(5);
  await rm(folder, { recursive: true });
});

test('a new version writes its own page; what has another heading is left alone', async () => {
  const disk = new MemoryDisk();
  const old = aboutPage('0.0.0', ['The first page']);
  const next = aboutPage('0.0.1', ['The second page']);
  await (await openOn(disk, { aboutPage: old })).close();
  expect(disk.texts().get(PAGE)).toBe(old);
  disk.calls.length = 0;
  await (await openOn(disk, { aboutPage: old })).close();
  expect(disk.calls.filter((call) => call.startsWith('createNew') && call.includes('about'))).toEqual([]);
  await (await openOn(disk, { aboutPage: next })).close();
  expect(disk.texts().get(PAGE)).toBe(next);
  disk.put(PAGE, 'my own notes');
  await (await openOn(disk, { aboutPage: old })).close();
  expect(disk.texts().get(PAGE)).toBe('my own notes');
});

test('a page that can not be written keeps nobody from starting, and delete all takes it away', async () => {
  const disk = new MemoryDisk();
  const page = aboutPage('0.0.0', ['A page']);
  disk.watch = (call, path) => {
    if (call === 'createNew' && path.includes('about')) throw fileError('EACCES', path);
    return undefined;
  };
  await (await openOn(disk, { aboutPage: page })).close();
  disk.watch = () => undefined;
  const desk = await openOn(disk, { aboutPage: page });
  expect(disk.texts().has(PAGE)).toBe(true);
  expectValue(await desk.deleteEverything('delete everything'));
  await desk.close();
  expect([...disk.texts().keys()]).toEqual([]);
});

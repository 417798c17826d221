import { cp, mkdtemp, readdir, readFile, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { openDesk } from '../../main/desk/open.ts';
import { contentOf, SESSION, sheetText } from './support/desks.ts';

test('CR-F2: a folder that is copied as it is opens at its new place with all that was in it', async () => {
  const base = await mkdtemp(join(tmpdir(), 'windrow-copied-'));
  const [here, there] = [join(base, 'here'), join(base, 'elsewhere', 'Windrow of mine')];
  const desk = expectValue(await openDesk({ folder: here, host: 'browser' }));
  for (const step of SESSION.slice(0, -1)) expectValue(await step(desk));
  expectValue(await desk.keepSheet(sheetText('Thursday')));
  const kept = await contentOf(desk);
  const sheets = expectValue(await desk.listSheets());
  await desk.close();
  expect(sheets.length).toBeGreaterThan(0);

  await cp(here, there, { recursive: true });
  // Nothing in it says where it was.
  for (const name of await readdir(there, { recursive: true })) {
    const path = join(there, name);
    if ((await stat(path)).isFile()) expect(await readFile(path, 'utf8'), name).not.toContain(base);
  }
  await rm(here, { recursive: true });
  const copy = expectValue(await openDesk({ folder: there, host: 'browser' }));
  expect(expectValue(await copy.notices())).toEqual([]);
  expect(await contentOf(copy)).toBe(kept);
  expect(expectValue(await copy.listSheets())).toEqual(sheets);
  await copy.close();
  await rm(base, { recursive: true });
});

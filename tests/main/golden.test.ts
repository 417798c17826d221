import { isUtf8 } from 'node:buffer';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { readCollection } from '../../core/journal/collection.ts';
import { bringIn } from '../../renderer/backup/bring-in.ts';
import { PreferenceStore, USUAL_PREFERENCES } from '../../renderer/session/preference-store.ts';
import { contentOf, FOLDER, openOn, SESSION } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

/** One folder for each released version: its desk's folder, its backup, and what both must open to. Never changed, only added to. */
const GOLDEN = join(import.meta.dirname, 'fixtures/golden');
const VERSIONS = readdirSync(GOLDEN);

function filesOf(version: string): readonly (readonly [string, Buffer])[] {
  const folder = join(GOLDEN, version, 'desk');
  const found = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return found.map((entry) => {
    const path = join(entry.parentPath, entry.name);
    return [path.slice(folder.length + 1).replaceAll('\\', '/'), readFileSync(path)] as const;
  });
}

function diskOf(version: string): MemoryDisk {
  const disk = new MemoryDisk();
  for (const [path, bytes] of filesOf(version)) disk.put(`${FOLDER}/${path}`, bytes);
  return disk;
}

function expectedOf(version: string): unknown {
  return JSON.parse(readFileSync(join(GOLDEN, version, 'expected.json'), 'utf8'));
}

test('there is a folder for the first version, with every kind of file in it', () => {
  expect(VERSIONS).toContain('0.1.0');
  const paths = filesOf('0.1.0').map(([path]) => path);
  for (const kind of [
    'games/',
    'open/',
    'removed/',
    'cards/lake',
    'backups/',
    'progress/',
    'sheets/',
    'history',
    'pref',
  ]) {
    expect(paths.filter((path) => path.includes(kind)).length, kind).toBeGreaterThan(0);
  }
});

describe.each(VERSIONS)('F5, V5: what version %s wrote opens for ever', (version) => {
  test('its folder opens to what it held, nothing is set aside, and a second start finds the same', async () => {
    const disk = diskOf(version);
    for (const _start of [1, 2]) {
      const desk = await openOn(disk);
      expect(JSON.parse(await contentOf(desk))).toEqual(expectedOf(version));
      expect(expectValue(await desk.notices())).toEqual([]);
      await desk.close();
    }
  });

  test('opening changes no file, but that a log goes into its game', async () => {
    const disk = diskOf(version);
    const desk = await openOn(disk);
    await contentOf(desk);
    await desk.close();
    const running = filesOf(version).flatMap(([path]) => /^open\/(.*)\.jsonl$/.exec(path)?.[1] ?? []);
    expect(running.length).toBeGreaterThan(0);
    for (const [path, bytes] of filesOf(version)) {
      if (running.some((id) => path.includes(id))) continue;
      expect(disk.texts().get(`${FOLDER}/${path}`), path).toBe(bytes.toString('utf8'));
    }
  });

  test('its backup, brought into an empty desk, gives all that it held', async () => {
    const text = readFileSync(join(GOLDEN, version, 'everything.windrow.json'), 'utf8');
    const collection = expectValue(readCollection(text));
    expect(collection.problems).toEqual([]);
    const desk = await openOn(new MemoryDisk());
    const preferences = new PreferenceStore(desk, USUAL_PREFERENCES);
    expectValue(await bringIn({ desk, preferences }, collection, () => undefined));
    const { cards, sheets, entries } = JSON.parse(await contentOf(desk));
    expect({ cards, sheets, entries }).toMatchObject({
      cards: [expect.objectContaining({ text: expect.stringContaining('A card of two lines') })],
      sheets: [expect.anything()],
      entries: [expect.anything(), expect.anything()],
    });
    expect(expectValue(await desk.listGames())).toHaveLength(3);
    expect(expectValue(await desk.readPreferences())).toMatchObject({ theme: 'dark', textSize: 22 });
  });

  test('V7: it is plain text: UTF-8, no mark before it, one JSON document or one a line, no blobs', () => {
    for (const [path, bytes] of filesOf(version)) {
      const text = bytes.toString('utf8');
      expect(isUtf8(bytes) && !text.startsWith('\uFEFF') && !text.includes('\r'), path).toBe(true);
      const documents = path.endsWith('.jsonl') ? text.trimEnd().split('\n') : [text];
      for (const document of documents) expect(() => JSON.parse(document), path).not.toThrow();
      expect(text, path).not.toMatch(/[A-Za-z0-9+/=]{100}/);
    }
  });
});

test('V7: the same input gives the same bytes, in every file of a whole session', async () => {
  const texts: ReadonlyMap<string, string>[] = [];
  for (const _run of [1, 2]) {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    for (const step of SESSION) expectValue(await step(desk));
    texts.push(disk.texts());
  }
  expect(texts[0]?.size).toBeGreaterThan(5);
  expect(texts[1]).toEqual(texts[0]);
});

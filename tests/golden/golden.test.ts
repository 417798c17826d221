import { isUtf8 } from 'node:buffer';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { CARD_VERSION } from '../../core/card/document.ts';
import { readCardFile } from '../../core/card/file.ts';
import { readGameFile } from '../../core/game/file/read-game-file.ts';
import { GAME_SCHEMA_VERSION } from '../../core/game/record.ts';
import { COLLECTION_VERSION, readCollection } from '../../core/journal/collection.ts';
import { readSheetFile } from '../../core/warmup/sheet-file.ts';
import { SHEET_VERSION } from '../../core/warmup/sheet.ts';
import { bringIn } from '../../renderer/backup/bring-in.ts';
import { DEFAULT_PREFERENCES } from '../../main/desk/preferences.ts';
import { PreferenceStore } from '../../renderer/session/preference-store.ts';
import { contentOf, FOLDER, openOn, SESSION } from '../main/support/desks.ts';
import { MemoryDisk } from '../main/support/memory-disk.ts';

/**
 * What each released version wrote, a folder for each: a file of every kind, a whole desk's folder,
 * and what that must open to. A released file is never changed here, only added to.
 */
const GOLDEN = import.meta.dirname;
const RELEASES = readdirSync(GOLDEN, { withFileTypes: true }).flatMap((entry) =>
  entry.isDirectory() ? entry.name : [],
);
const golden = (...path: readonly string[]): string => readFileSync(join(GOLDEN, ...path), 'utf8');

interface FileKind {
  readonly name: string;
  /** The version written now. */
  readonly version: number;
  /** What is wrong with a text, each trouble in words; none for a file that opens whole. */
  readonly troubles: (text: string) => readonly unknown[];
}

const KINDS: readonly FileKind[] = [
  {
    name: 'game',
    version: GAME_SCHEMA_VERSION,
    troubles: (text) => {
      const read = readGameFile(text);
      if (!read.ok) return [read.problem];
      return read.value.damage === null ? [] : [read.value.damage];
    },
  },
  {
    name: 'card',
    version: CARD_VERSION,
    troubles: (text) => {
      const read = readCardFile(text);
      return read.ok ? read.value.problems : [read.problem];
    },
  },
  {
    name: 'collection',
    version: COLLECTION_VERSION,
    troubles: (text) => {
      const read = readCollection(text);
      if (!read.ok) return [read.problem];
      return read.value.games.length === 0 ? ['no game in it'] : read.value.problems;
    },
  },
  {
    name: 'sheet',
    version: SHEET_VERSION,
    troubles: (text) => {
      const read = readSheetFile(text);
      return read.ok ? [] : [read.problem];
    },
  },
];

const FILES = RELEASES.flatMap((release) =>
  KINDS.map((kind) => ({ ...kind, release, path: `${release}/${kind.name}.json` })),
);

test('CR-V5: every release has a file of every kind, and every form up to the one written now is among them', () => {
  expect(RELEASES).toContain('0.1.0');
  for (const release of RELEASES) {
    const there = readdirSync(join(GOLDEN, release)).toSorted();
    expect(there).toEqual(['card.json', 'collection.json', 'desk', 'expected.json', 'game.json', 'sheet.json']);
  }
  for (const { name, version } of KINDS) {
    const forms = new Set(RELEASES.map((release) => versionOf(golden(release, `${name}.json`))));
    expect(forms, name).toEqual(new Set(Array.from({ length: version }, (_, older) => older + 1)));
  }
});

test.each(FILES)('CR-V5: $path opens whole', ({ path, troubles }) => {
  expect(troubles(golden(path))).toEqual([]);
});

test.each(FILES)('CR-V5: what is cut from $path is noticed', ({ path, troubles }) => {
  const text = golden(path);
  expect(troubles(text.slice(0, text.length / 2))).not.toEqual([]);
});

/** The version of its form that a file names. */
function versionOf(text: string): unknown {
  const fields: { readonly schemaVersion?: unknown; readonly version?: unknown } = JSON.parse(text);
  return fields.schemaVersion ?? fields.version;
}

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

/** What a release's folder opens to: all that it held, with the defaults of preferences that came later. */
function expectedOf(version: string): unknown {
  const held: { readonly preferences: object } = JSON.parse(golden(version, 'expected.json'));
  return { ...held, preferences: { ...DEFAULT_PREFERENCES, ...held.preferences } };
}

test('the desk of the first version has every kind of file in it', () => {
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

describe.each(RELEASES)('CR-F5, CR-V5: what version %s wrote opens for ever', (version) => {
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
    const text = golden(version, 'collection.json');
    const collection = expectValue(readCollection(text));
    expect(collection.problems).toEqual([]);
    const desk = await openOn(new MemoryDisk());
    const preferences = new PreferenceStore(desk, DEFAULT_PREFERENCES);
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

  test('CR-V2, CR-V7: all of it is plain text: UTF-8, no mark before it, one JSON document or one a line, no blobs', () => {
    const single = KINDS.map(({ name }) => [name, readFileSync(join(GOLDEN, version, `${name}.json`))] as const);
    for (const [path, bytes] of [...filesOf(version), ...single]) {
      const text = bytes.toString('utf8');
      expect(isUtf8(bytes) && !text.startsWith('\uFEFF') && !text.includes('\r'), path).toBe(true);
      const documents = path.endsWith('.jsonl') ? text.trimEnd().split('\n') : [text];
      for (const document of documents) expect(() => JSON.parse(document), path).not.toThrow();
      expect(text, path).not.toMatch(/[A-Za-z0-9+/=]{100}/);
    }
  });
});

test('CR-V7: the same input gives the same bytes, in every file of a whole session', async () => {
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

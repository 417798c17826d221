import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { CARD_VERSION } from '../../core/card/document.ts';
import { readCardFile } from '../../core/card/file.ts';
import { readGameFile } from '../../core/game/file/read-game-file.ts';
import { GAME_SCHEMA_VERSION } from '../../core/game/record.ts';
import { COLLECTION_VERSION, readCollection } from '../../core/journal/collection.ts';
import { readSheetFile } from '../../core/warmup/sheet-file.ts';
import { SHEET_VERSION } from '../../core/warmup/sheet.ts';

/** A file of each kind as each version wrote it. A released file is never changed here, only added to. */
const FOLDER = import.meta.dirname;
const golden = (name: string): string => readFileSync(join(FOLDER, name), 'utf8');

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

const VERSIONS = KINDS.flatMap((kind) =>
  Array.from({ length: kind.version }, (_, older) => ({ ...kind, file: `${kind.name}-v${older + 1}.json` })),
);

test.each(VERSIONS)('V5: $file opens whole', ({ file, troubles }) => {
  expect(troubles(golden(file))).toEqual([]);
});

test('V5: every golden file is tried', () => {
  const there = readdirSync(FOLDER).filter((name) => name.endsWith('.json'));
  expect(there.toSorted()).toEqual(VERSIONS.map(({ file }) => file).toSorted());
});

test.each(VERSIONS)('V5: what is cut from $file is noticed', ({ file, troubles }) => {
  const text = golden(file);
  expect(troubles(text.slice(0, text.length / 2))).not.toEqual([]);
});

test.each(VERSIONS)(
  'V2, V7: $file is plain text: UTF-8 without a byte order mark, LF, no long run of letters',
  ({ file }) => {
    const bytes = readFileSync(join(FOLDER, file));
    expect(new TextDecoder('utf-8', { fatal: true }).decode(bytes)).toBe(golden(file));
    expect(golden(file)).toMatch(/^\{/);
    expect(golden(file)).not.toMatch(/\r|[A-Za-z0-9+/]{200}/);
  },
);

import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fileTrouble } from '../../main/files/trouble.ts';
import { cardWords } from '../../renderer/words/card.ts';
import { deskWords } from '../../renderer/words/desk.ts';
import { filesWords } from '../../renderer/words/journal.ts';
import { partWords } from '../../renderer/words/parts.ts';
import { settingsWords } from '../../renderer/words/settings.ts';
import { shellWords } from '../../renderer/words/shell.ts';
import { tableWords } from '../../renderer/words/table.ts';
import { readingGrade, sentencesOf, wordsOf } from './reading-grade.ts';

const HOUSE = resolve(import.meta.dirname, '../..');
const FILE_ERRORS = [
  'ENOSPC',
  'EACCES',
  'EBUSY',
  'ENOENT',
  'EFBIG',
  'ENOTDIR',
  'EISDIR',
  'ENAMETOOLONG',
  'EMFILE',
  'EIO',
];

/** The ending of a file's name is no jargon. */
const JARGON = /(?<!\.)\b(?:json|schema|cache|null|parse|invalid|error code)\b/i;

/** What a file call that fails is told as. */
function troubles(doing: 'read' | 'save'): string[] {
  return FILE_ERRORS.map((code) => {
    const told = fileTrouble(Object.assign(new Error(code), { code }), doing, 'the card');
    return told.ok ? '' : told.problem.message;
  });
}

/** The sentences of every refusal in a folder's sources, with a 3 for what is filled in. */
function refusalsIn(folder: string): string[] {
  const files = readdirSync(join(HOUSE, folder), { recursive: true, encoding: 'utf8' });
  const sources = files
    .filter((file) => file.endsWith('.ts'))
    .map((file) => readFileSync(join(HOUSE, folder, file), 'utf8'));
  const refusal = /(?:failure|refuse)\(\s*'[\w-]+',\s*(?:'((?:[^'\\]|\\.)*)'|"([^"]*)"|`((?:[^`\\]|\\.)*)`)/g;
  return sources.flatMap((source) =>
    [...source.matchAll(refusal)].map(([, plain, quoted, filled]) =>
      (plain ?? quoted ?? filled ?? '').replaceAll(/\$\{(?:[^{}]|\{[^{}]*\})*\}/g, '3'),
    ),
  );
}

const DESK = refusalsIn('main/desk');
const FILES = ['core/card', 'core/game/file', 'core/journal', 'core/warmup'].flatMap(refusalsIn);
/** Failures that the window itself tells, as they stand together on the screen. */
const WINDOW = [
  deskWords.hostGone,
  shellWords.startFailed,
  cardWords.arrived.tooLarge,
  cardWords.arrived.unreadable,
  `${filesWords.cannotRead} Choose another file.`,
  `${settingsWords.cannotRead} Choose another file.`,
  ...[tableWords.reading.failed, tableWords.plan.failed].map((what) => `${what} ${partWords.calculationFailed}`),
];
const ALL = [...troubles('read'), ...troubles('save'), ...DESK, ...FILES, ...WINDOW];

describe('CR-O6: the words of every error', () => {
  it('are found', () => {
    expect(DESK.length).toBeGreaterThan(12);
    expect(FILES.length).toBeGreaterThan(20);
  });

  it('take at most three sentences, each of at most 20 words', () => {
    expect(ALL.filter((text) => sentencesOf(text).length > 3)).toEqual([]);
    expect(ALL.flatMap(sentencesOf).filter((sentence) => wordsOf(sentence).length > 20)).toEqual([]);
  });

  it('are plain: a reading grade of at most 8 together, and no language of programs', () => {
    expect(readingGrade(ALL.join(' '))).toBeLessThanOrEqual(8);
    expect(ALL.filter((text) => JARGON.test(text))).toEqual([]);
  });

  it('say what is safe, where something could not be saved', () => {
    expect(troubles('save').filter((text) => !/is safe|stays|left alone/.test(text))).toEqual([]);
  });

  it('say what to do, where files are concerned', () => {
    const DOING =
      /\b(?:choose|close|free|put|restart|open|use|check|try|install|make|start|split|go on|go to|compare|name|move)\b/i;
    const files = [...troubles('read'), ...troubles('save'), ...DESK, ...WINDOW];
    // A sentence that only passes on another one leaves the advice to that.
    expect(files.filter((text) => !DOING.test(text) && !text.endsWith(': 3'))).toEqual([]);
  });
});

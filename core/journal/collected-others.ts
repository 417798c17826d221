import type { StudyAnswer } from '../card/study.ts';
import { type Fields, isFields } from '../game/file/plain-json.ts';
import { writeLine } from '../game/file/write-game-file.ts';
import { practiceEntries } from '../warmup/history-file.ts';
import type { PracticeEntry } from '../warmup/history.ts';

/** What the file with everything holds beside games and cards. */
export interface CollectedOthers {
  /** Texts of sheet files. */
  readonly sheets: readonly string[];
  readonly practice: readonly PracticeEntry[];
  readonly progress: readonly CollectedProgress[];
  /** The settings by their names. */
  readonly preferences: Fields;
}

/** How far a person has come with a card of the file, or with the demo card. */
export interface CollectedProgress {
  readonly cardId: string;
  readonly confirmed: readonly string[];
  readonly answers: readonly StudyAnswer[];
}

/** The lines of the file that hold it, each with its comma. */
export function writeOthers({ sheets, practice, progress, preferences }: CollectedOthers): string[] {
  return [
    `"sheets":${JSON.stringify(sheets)},`,
    `"practice":[${practice.map(writeLine).join(',\n')}],`,
    `"progress":[${progress.map(writeLine).join(',\n')}],`,
    `"preferences":${JSON.stringify(preferences)},`,
  ];
}

/** Reads it from the file's fields: what is not in order is left out; undefined where the file has nothing of it. */
export function readOthers(file: Fields): CollectedOthers | undefined {
  const { sheets, practice, progress, preferences } = file;
  if ([sheets, practice, progress, preferences].every((field) => field === undefined)) return undefined;
  return {
    sheets: listOf(sheets).filter((text) => typeof text === 'string'),
    practice: practiceEntries(listOf(practice)),
    progress: listOf(progress).filter(isProgress),
    preferences: isFields(preferences) ? preferences : {},
  };
}

/** The entries of a list; none where a damaged file has something else. */
export function listOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

/** Its answers are looked at again at the desk's door. */
function isProgress(value: unknown): value is CollectedProgress {
  return (
    isFields(value) &&
    typeof value['cardId'] === 'string' &&
    Array.isArray(value['answers']) &&
    listOf(value['confirmed']).every((text) => typeof text === 'string') &&
    Array.isArray(value['confirmed'])
  );
}

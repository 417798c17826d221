import * as v from 'valibot';
import { checkPracticeEntry } from '../../core/warmup/history-file.ts';
import type { PracticeEntry } from '../../core/warmup/history.ts';
import type { PracticeAsked } from './desk.ts';

/** A sheet's id, which is also its file's name. */
export const SHEET_ID = /^[A-Za-z0-9][A-Za-z0-9-]{0,63}$/;

const sheetId = v.pipe(v.string(), v.regex(SHEET_ID));
const entry = v.custom<PracticeEntry>((value) => checkPracticeEntry(value).ok);

/** The most entries that one call adds. */
const MOST_ENTRIES = 100;

/** What may be asked of the practice shelf: each wish with exactly its own fields. */
export const practiceAsked: v.GenericSchema<unknown, PracticeAsked> = v.variant('do', [
  v.strictObject({ do: v.literal('list') }),
  v.strictObject({ do: v.literal('open'), id: sheetId }),
  v.strictObject({ do: v.literal('keep'), text: v.pipe(v.string(), v.maxLength(900_000)) }),
  v.strictObject({ do: v.literal('remove'), id: sheetId }),
  v.strictObject({ do: v.literal('history') }),
  v.strictObject({ do: v.literal('note'), entries: v.pipe(v.array(entry), v.maxLength(MOST_ENTRIES)) }),
]);

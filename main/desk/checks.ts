import * as v from 'valibot';
import { checkPracticeEntry, type PracticeEntry } from '../../core/warmup/history-file.ts';
import { STUDY_ASKS } from '../../core/card/study-question.ts';
import type { TimedEvent } from '../../core/game/events.ts';
import { CHANGEABLE, PLAYERS, POINT_RULES } from '../../core/game/file/record-fields.ts';
import { FINDINGS } from '../../core/journal/findings.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { TABLE_KINDS } from '../../core/table/kinds.ts';
import { type CardProgress, COPY_CHOICES, type EventCorrection, type GameChange, MOST_AT_ONCE } from './desk.ts';

/**
 * Shapes of what comes in from a window: strict and bounded. What a card, a game or an event
 * means is checked by core when the service reads it, so those are only held to their outline.
 */
const words = (most: number) => v.pipe(v.string(), v.maxLength(most));

export const CARD_ID = /^[\p{L}\p{N}][\p{L}\p{N} ._-]{0,79}$/u;
const GAME_ID = /^[A-Za-z0-9-]{1,80}$/;

export const gameId = v.pipe(v.string(), v.regex(GAME_ID));
export const cardId = v.pipe(v.string(), v.regex(CARD_ID));
export const cardText = words(900_000);
export const backupName = words(120);
/** A file's path from the desk's folder on; only compared with those that are there. */
export const copyFile = words(600);
export const copyChoice = v.picklist(COPY_CHOICES);
/** An event's place in its game. */
export const place = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(5000));

const anyEvent = v.looseObject({ type: words(20), at: words(40) });
const anyRecord = v.looseObject({
  id: gameId,
  startedAt: words(40),
  events: v.pipe(v.array(anyEvent), v.maxLength(5000)),
});

export const timedEvent = v.custom<TimedEvent>((value) => v.is(anyEvent, value));
export const gameRecord = v.custom<GameRecord>((value) => v.is(anyRecord, value));
export const findingsList = v.pipe(v.array(FINDINGS), v.maxLength(MOST_AT_ONCE));
/** Tells what a card says (`cardMark` in core/card/mark.ts). */
export const cardMark = v.pipe(v.string(), v.regex(/^[0-9a-f]{16}$/));
export const tableKind = v.picklist(TABLE_KINDS);
export const gameRecords = v.pipe(v.array(gameRecord), v.maxLength(MOST_AT_ONCE));

/** How a table pays, as it comes in from a window or lies in the settings. */
export const pointRules = v.strictObject(POINT_RULES.entries);

/** How a rack lies; undefined where it stays as it was. */
export const laidOut = v.optional(CHANGEABLE.arrangement.wrapped);

const changes = {
  ...CHANGEABLE,
  place: v.exactOptional(CHANGEABLE.place),
  tags: v.exactOptional(CHANGEABLE.tags),
  players: v.exactOptional(v.strictObject(PLAYERS.entries)),
  payment: v.exactOptional(pointRules),
};
export const eventCorrection: v.GenericSchema<EventCorrection> = v.strictObject({
  corrected: v.strictObject({ place, event: timedEvent }),
  arrangement: CHANGEABLE.arrangement,
});
export const gameChange: v.GenericSchema<GameChange> = v.strictObject(changes);
/** A change as it is kept, with the time when a person made it. */
export type KeptChange = GameChange & Pick<GameRecord, 'editedAt'>;

export const keptChange: v.GenericSchema<KeptChange> = v.strictObject({
  ...changes,
  editedAt: v.exactOptional(words(40)),
});

const studyAnswer = v.object({
  lineId: words(80),
  ask: v.picklist(STUDY_ASKS),
  right: v.boolean(),
  day: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1_000_000)),
});

/** Bounded well above what a card of 300 lines and years of study need. */
export const cardProgress: v.GenericSchema<unknown, CardProgress> = v.object({
  confirmed: v.pipe(v.array(words(5000)), v.maxLength(300)),
  answers: v.pipe(v.array(studyAnswer), v.maxLength(6000)),
  meant: v.exactOptional(v.pipe(v.array(words(5100)), v.maxLength(1000))),
});

/** A sheet's id, which is also its file's name. */
export const SHEET_ID = /^[A-Za-z0-9][A-Za-z0-9-]{0,63}$/;

/** The most entries that one call adds. */
const MOST_ENTRIES = 100;

const entry = v.custom<PracticeEntry>((value) => checkPracticeEntry(value).ok);

export const sheetId = v.pipe(v.string(), v.regex(SHEET_ID));
export const sheetText = v.pipe(v.string(), v.maxLength(900_000));
export const practiceEntries = v.pipe(v.array(entry), v.maxLength(MOST_ENTRIES));

import * as v from 'valibot';
import type { TimedEvent } from '../../core/game/events.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { type FolderAsked, type GameChange, MOST_AT_ONCE } from './desk.ts';
import type { KeptChange } from './log.ts';
import { CARD_ID, GAME_ID } from './places.ts';
import { pointRules } from './point-rules-check.ts';

/**
 * Shapes of what comes in from a window: strict and bounded. What a card, a game or an event
 * means is checked by core when the service reads it, so those are only held to their outline.
 */
const words = (most: number) => v.pipe(v.string(), v.maxLength(most));

export const gameId = v.pipe(v.string(), v.regex(GAME_ID));
export const cardId = v.pipe(v.string(), v.regex(CARD_ID));
export const cardText = words(900_000);
export const backupName = words(120);
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
export const gameRecords = v.pipe(v.array(gameRecord), v.maxLength(MOST_AT_ONCE));

export const folderAsked: v.GenericSchema<unknown, FolderAsked> = v.variant('do', [
  v.strictObject({ do: v.literal('show') }),
  v.strictObject({ do: v.literal('remove-names') }),
  v.strictObject({ do: v.literal('empty'), sure: v.literal('delete everything') }),
]);

const playerName = v.exactOptional(words(60));

const changes = {
  place: v.exactOptional(words(200)),
  tags: v.exactOptional(v.pipe(v.array(words(60)), v.maxLength(50))),
  arrangement: v.exactOptional(words(200)),
  evening: v.exactOptional(words(64)),
  players: v.exactOptional(
    v.strictObject({ East: playerName, South: playerName, West: playerName, North: playerName }),
  ),
  payment: v.exactOptional(pointRules),
};
export const gameChange: v.GenericSchema<GameChange> = v.strictObject(changes);
/** A change as it is kept, with the time when a person made it. */
export const keptChange: v.GenericSchema<KeptChange> = v.strictObject({
  ...changes,
  editedAt: v.exactOptional(words(40)),
});

import type { GameRecord } from './record.ts';

/** The game without its players' names; all else is as it was. Words that a person wrote in notes stay. */
export function withoutNames(record: GameRecord): GameRecord {
  const { players: _, ...rest } = record;
  return rest;
}

import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { writeGameFile } from '../../core/game/file/write-game-file.ts';
import type { GameEvent } from '../../core/game/events.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { demoSeason } from '../../core/journal/demo-season.ts';
import demoDocument from '../../assets/demo.card.json' with { type: 'json' };
import { demoCard } from '../reference/cards.ts';

/** Writes games into a folder as Windrow keeps them. */
export async function fillFolder(folder: string, records: readonly GameRecord[]): Promise<void> {
  const months = new Map<string, GameRecord[]>();
  for (const record of records) {
    const path = join(folder, 'games', record.startedAt.slice(0, 4), record.startedAt.slice(5, 7));
    const some = months.get(path) ?? [];
    some.push(record);
    months.set(path, some);
  }
  for (const [path, some] of months) {
    await mkdir(path, { recursive: true });
    await Promise.all(some.map((record) => writeFile(join(path, `${record.id}.json`), writeGameFile(record))));
  }
}

/** So many games of a player's own: the invented season again and again, each time with other ids and days. */
export function manyGames(count: number): GameRecord[] {
  const season = playedSeason();
  // Each game keeps its card: the lines that somebody won with are enough.
  const wonWith = new Set(
    season.flatMap(({ events }) => events.flatMap((event) => (event.type === 'ended' ? (event.lineId ?? []) : []))),
  );
  const sections = demoDocument.sections.map((section) => ({
    ...section,
    lines: section.lines.filter(({ id }) => wonWith.has(id)),
  }));
  const card = { ...demoDocument, sections };
  return Array.from({ length: count }, (_, number) => {
    const model = season[number % season.length] as GameRecord;
    const startedAt = new Date(Date.UTC(2015, 0, 1) + number * 8 * 3_600_000).toISOString();
    return { ...model, id: `game-${String(number).padStart(6, '0')}`, startedAt, demo: false, card };
  });
}

function playedSeason(): readonly GameRecord[] {
  const making = demoSeason({ card: demoCard(), document: demoDocument, appVersion: '0.1.0' });
  for (;;) {
    const made = making.next();
    if (made.done === true) return made.value;
  }
}

/** Games of a player's own of which only the result is logged: so many wall games, then others that East won. */
export function finishedGames(wall: number, others: number): GameRecord[] {
  return Array.from({ length: wall + others }, (_, number) => {
    const at = new Date(Date.UTC(2026, 0, 1 + number, 19)).toISOString();
    const ended: GameEvent =
      number < wall
        ? { type: 'ended', result: 'wall', seat: 'South' }
        : { type: 'ended', result: 'won', winner: 'East', by: 'draw', seat: 'South' };
    return {
      kind: 'windrow.game',
      schemaVersion: 1,
      appVersion: '0.1.0',
      id: `own-${String(number).padStart(3, '0')}`,
      startedAt: at,
      zone: 'UTC',
      place: '',
      tags: [],
      demo: false,
      card: demoDocument,
      events: [{ ...ended, at }],
    };
  });
}

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { writeGameFile } from '../../../core/game/file/write-game-file.ts';
import { logLine, logStart } from '../../../main/desk/log.ts';
import { cardText, EVENTS, gameRecord, MISS, sheetText } from './desks.ts';
import { type Lot, spoilLot } from './spoiled-lots.ts';

/** Files to spoil in every run; `WINDROW_FUZZ=1000000` makes it a million. */
const FILES = Number(process.env['WINDROW_FUZZ'] ?? 100_000);

const PLAYED = readFileSync(join(import.meta.dirname, '../../golden/0.1.0/game.json'), 'utf8');

/** A game played to its end, or a short one, under the id `g-<number>`. */
function gameText(number: number): string {
  if (number % 2 === 0) return PLAYED.replace(/"id": "[^"]*"/, `"id": "g-${number}"`);
  return writeGameFile(
    gameRecord(`g-${number}`, { events: EVENTS, players: { North: 'Heron' }, mood: 'calm' } as object),
  );
}

function logText(number: number): string {
  const start = logStart('', writeGameFile(gameRecord(`g-${number}`)));
  return start + EVENTS.map((add, place) => logLine({ add, place })).join('') + logLine({ change: { tags: ['a'] } });
}

function sheetOf(number: number, title: string): string {
  return sheetText(title).replace('"thursday"', `"s-${number}"`);
}

const progressText = JSON.stringify({
  kind: 'windrow.card-progress',
  schemaVersion: 1,
  appVersion: '0.1.0',
  confirmed: ['["a","FF 2222a 4444b 6666c",0,1,false,25,""]'],
  answers: [{ lineId: 'a', ask: 'points', right: true, day: 20_000 }],
});
const historyText = [1, 2, 3].map((number) => `${JSON.stringify({ ...MISS, id: `m${number}` })}\n`).join('');
const settingsText = JSON.stringify({ theme: 'dark', textSize: 20, cautionsSeen: ['entry'], window: { x: 1 } });
const lockText = JSON.stringify({ process: 7, computer: 'here', mark: 'x' });

/** The kinds of file that a folder holds, how many of each are spoiled, and how each is looked at and changed. */
export const LOTS: readonly Lot[] = [
  {
    name: 'games',
    share: 50_000,
    together: 60,
    path: (number) => `games/2026/11/g-${number}.json`,
    whole: gameText,
    look: async (desk, number) => [await desk.openGame(`g-${number}`)],
    change: (desk, number) => desk.changeGame(`g-${number}`, { arrangement: 'FF' }),
  },
  {
    name: 'removed games',
    share: 4000,
    together: 100,
    path: (number) => `removed/g-${number}.json`,
    whole: gameText,
    look: async (desk) => [await desk.listGames()],
    change: (desk, number) => desk.restoreGame(`g-${number}`),
  },
  {
    name: 'logs of running games',
    share: 14_000,
    together: 100,
    path: (number) => `open/g-${number}.jsonl`,
    whole: logText,
    look: async (desk) => [await desk.listGames()],
    change: (desk, number) => desk.changeGame(`g-${number}`, { arrangement: 'FF' }),
    mayGo: true,
  },
  {
    name: 'cards',
    share: 10_000,
    together: 100,
    path: (number) => `cards/c-${number}.card.json`,
    whole: (number) => cardText(`Card ${number}`),
    beside: (number): Record<string, string> =>
      number % 2 === 0 ? {} : { [`cards/backups/c-${number}/2026-11-20T10-00-00Z.card.json`]: cardText('Earlier') },
    look: async (desk, number) => (number % 3 === 0 ? [] : [await desk.openCard(`c-${number}`)]),
    unseen: (number) => number % 3 === 0,
    change: (desk, number) => desk.saveCard(`c-${number}`, cardText('Mended')),
  },
  {
    name: 'backups of cards',
    share: 3000,
    together: 50,
    path: (number) => `cards/backups/c-${number}/2026-11-20T10-00-00Z.card.json`,
    whole: (number) => cardText(`Card ${number}`),
    beside: (number) => ({ [`cards/c-${number}.card.json`]: cardText('').slice(number % 3) }),
    look: async (desk, number) => [await desk.openCard(`c-${number}`)],
    change: (desk, number) => desk.restoreCard(`c-${number}`, '2026-11-20T10-00-00Z.card.json'),
  },
  {
    name: 'files of progress with a card',
    share: 5000,
    together: 50,
    path: (number) => `cards/progress/c-${number}.json`,
    whole: () => progressText,
    look: async (desk, number) => (number % 2 === 0 ? [] : [await desk.readCardProgress(`c-${number}`)]),
    unseen: (number) => number % 2 === 0,
    change: (desk, number) => desk.saveCardProgress(`c-${number}`, { confirmed: [], answers: [] }),
  },
  {
    name: 'sheets',
    share: 6000,
    together: 50,
    path: (number) => `practice/sheets/s-${number}.sheet.json`,
    whole: (number) => sheetOf(number, 'Thursday'),
    look: async (desk, number) =>
      number % 2 === 0 ? [] : [await desk.listSheets(), await desk.openSheet(`s-${number}`)],
    unseen: (number) => number % 2 === 0,
    change: (desk, number) => desk.keepSheet(sheetOf(number, 'Later')),
  },
  {
    name: 'practice histories',
    share: 4000,
    together: 1,
    path: () => 'practice/history.jsonl',
    whole: () => historyText,
    look: async (desk) => [await desk.practiceHistory()],
    unseen: () => true,
    change: (desk) => desk.notePractice([{ ...MISS, id: 'm9' }]),
  },
  {
    name: 'files of settings',
    share: 3000,
    together: 1,
    path: () => 'preferences.json',
    whole: () => settingsText,
    look: async (desk) => [await desk.readPreferences()],
    change: (desk) => desk.changePreferences({ textSize: 24 }),
  },
  {
    name: 'locks',
    share: 1000,
    together: 1,
    path: () => 'in-use.json',
    whole: () => lockText,
    look: async (desk) => [await desk.listGames()],
    change: (desk) => desk.changePreferences({ textSize: 24 }),
    mayGo: true,
    mayRefuse: true,
  },
];

/** The tests of some lots; each spoils as many files as its share asks for. */
export function testLots(lots: readonly Lot[]): void {
  // Many files: slow on a machine that does other things too.
  vi.setConfig({ testTimeout: 600_000 });
  describe('CR-D4: a spoiled file gives a plain sentence or a repair, never a crash or a hang, and is never written over', () => {
    test.each(lots)('$share spoiled $name', async (lot) => {
      const count = Math.ceil((lot.share * FILES) / 100_000);
      // Some damage leaves a file as it was: a bit of nothing.
      expect(await spoilLot(lot, count, 4)).toBeGreaterThan(count * 0.9);
    });
  });
}

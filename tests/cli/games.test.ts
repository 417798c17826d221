import { appendFile, mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { questionNamed } from '../../core/engine/questions.ts';
import type { TimedEvent } from '../../core/game/events.ts';
import { readGameFile } from '../../core/game/file/read-game-file.ts';
import { journalRates, PassLog } from '../../core/table/incoming-rates.ts';
import { logLine, logStart } from '../../main/desk/log.ts';
import { CardFits } from '../../renderer/session/card-fits.ts';
import { lookBackAt } from '../../renderer/session/look-back.ts';
import { engine } from '../../renderer/worker/engine.ts';
import { Pool } from '../../renderer/worker/pool.ts';
import { lineInThisThread } from '../window/line-in-this-thread.ts';
import { NO_KEPT_FITS } from '../window/no-kept-fits.ts';
import { refusal, windrow } from './run-windrow.ts';

const AT = '2026-11-25T18:00:01Z';
let folder = '';
let game: Record<string, unknown> = {};

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'windrow-games-'));
  game = {
    kind: 'windrow.game',
    schemaVersion: 1,
    appVersion: '0.1.0',
    id: 'g-1',
    startedAt: AT,
    zone: 'UTC',
    place: 'Lakeside library',
    tags: [],
    demo: true,
    card: JSON.parse(await readFile('assets/demo.card.json', 'utf8')),
    events: [
      { type: 'dealt', seat: 'South', tiles: 'FF N 0 13b 4578c 122d', at: AT },
      { type: 'gave', step: 'right', tiles: 'N 0 1b', at: AT },
      { type: 'received', step: 'right', tiles: '3b 4c 5d', at: AT },
    ],
  };
}, 120_000);
afterAll(async () => {
  await rm(folder, { recursive: true });
});

async function file(name: string, text: string): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, text);
  return path;
}

/** The look-back of a saved game as the window makes it for a player without logged games. */
async function inTheWindow(text: string): Promise<unknown> {
  const { record } = expectValue(readGameFile(text));
  const startWorker = () => lineInThisThread(questionNamed);
  const parts = {
    pool: new Pool(startWorker, 1),
    fits: new CardFits(NO_KEPT_FITS, startWorker),
    incoming: { ratesFor: async ({ table }) => journalRates(new PassLog(), table.incoming) },
  } satisfies Parameters<typeof lookBackAt>[2];
  const { signal } = new AbortController();
  const review = await lookBackAt({ record, exact: null }, engine(startWorker), parts, { signal });
  return JSON.parse(JSON.stringify(expectValue(review)));
}

describe('review', () => {
  test.each([undefined, 'relaxed'])(
    'says what the window says, at table %s',
    async (table) => {
      const text = JSON.stringify({ ...game, table });
      const path = await file(`window-${table}.json`, text);
      expect(JSON.parse((await windrow(['review', path, '--json'])).out)).toEqual(await inTheWindow(text));
    },
    180_000,
  );

  test('a saved game is looked back at, as a document and as a text', async () => {
    const path = await file('g-1.json', JSON.stringify(game));
    const { code, out, err } = await windrow(['review', path, '--json']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const review = JSON.parse(out);
    expect(review).toMatchObject({ id: 'g-1', decisions: [{ place: 1, kind: 'pass' }] });
    const text = await windrow(['review', path]);
    expect(text).toMatchObject({ code: 0, err: '', out: expect.stringContaining('First right pass') });
    expect(review.decisions[0].ahead).toMatchObject({ seed: 1, verdict: expect.any(String) });
    expect(text.out).toContain('By the end of the exchange: ');
    expect(text.out).not.toMatch(/\d\.\d/);
    expect(await readFile(path, 'utf8')).toBe(JSON.stringify(game));
  }, 180_000);

  test.each([
    ['truncated', () => JSON.stringify(game).slice(0, 300), /cut short or damaged/],
    ['newer', () => JSON.stringify({ ...game, schemaVersion: 9 }), /newer Windrow/],
    ['foreign', () => '{"kind":"another.game"}', /not a game file/],
    ['bad event', () => JSON.stringify({ ...game, events: [{ type: 'drew', tile: '1b', at: AT }] }), /Event 1/],
    ['bad card', () => JSON.stringify({ ...game, card: {} }), /card/],
  ])('a %s file is refused in one line and left as it is', async (name, text, sentence) => {
    const path = await file(`${name}.json`, text());
    expect(await windrow(['review', path, '--json'])).toEqual(refusal(sentence));
    expect(await readFile(path, 'utf8')).toBe(text());
  });

  test('no file or two files are refused', async () => {
    expect(await windrow(['review'])).toEqual(refusal(/Which game/));
    expect(await windrow(['review', 'a', 'b'])).toEqual(refusal(/one game at a time/));
  });
});

describe('review of a game that is still on the table', () => {
  /** A desk's folder with the game's file as it was begun, and the log of its steps. */
  async function onTheTable(name: string, log: readonly string[]): Promise<string> {
    const desk = join(folder, name);
    await mkdir(join(desk, 'games/2026/11'), { recursive: true });
    await mkdir(join(desk, 'open'));
    if (log.length > 0) await writeFile(join(desk, 'open/g-1.jsonl'), log.join(''));
    const path = join(desk, 'games/2026/11/g-1.json');
    await writeFile(path, JSON.stringify({ ...game, events: [] }));
    return path;
  }

  const steps = (): string[] => {
    const start = logStart('', JSON.stringify({ ...game, events: [] }));
    const events = game['events'] as TimedEvent[];
    return [start, ...events.map((add, place) => logLine({ add, place }))];
  };

  test('its steps are read from its log, whether its file is named or its log', async () => {
    const path = await onTheTable('open-game', steps());
    const saved = await windrow(['review', await file('saved.json', JSON.stringify(game)), '--json']);
    expect(await windrow(['review', path, '--json'])).toEqual(saved);
    const log = join(folder, 'open-game/open/g-1.jsonl');
    // A last line that a crash left without its end does not count.
    await appendFile(log, '{"add":');
    expect(await windrow(['review', log, '--json'])).toEqual(saved);
  }, 180_000);

  test('a log that is damaged before its end is refused', async () => {
    const [start, ...rest] = steps();
    const path = await onTheTable('damaged', [start as string, '{"add":\n', ...rest]);
    expect(await windrow(['review', path])).toEqual(refusal(/steps of this game are damaged.*Open Windrow/));
  });

  test('a game without a deal is refused with what to do', async () => {
    const path = await onTheTable('no-deal', []);
    expect(await windrow(['review', path])).toEqual(refusal(/no deal is logged.*Enter the deal/));
    expect(await windrow(['review', path, '--json'])).toEqual(refusal(/no deal is logged/));
  });
});

describe('simulate', () => {
  test('it answers with one document of exactly the fields of the contract, the same for the same seed', async () => {
    const runs = [];
    for (const seed of ['5', '5', '6']) {
      const { code, out, err } = await windrow(['simulate', '--games', '40', '--seed', seed, '--json']);
      expect({ code, err }).toEqual({ code: 0, err: '' });
      runs.push(JSON.parse(out));
    }
    const fields = ['games', 'won', 'wallGames', 'drawsPerGame', 'selfDrawn', 'byAway', 'gamesPerSecond'];
    expect(Object.keys(runs[0])).toEqual(fields);
    expect(runs[0].games).toBe(40);
    expect(runs[0].won + runs[0].wallGames).toBe(40);
    expect(runs[0].byAway.reduce((sum: number, { players }: { players: number }) => sum + players, 0)).toBe(160);
    expect(runs[0].gamesPerSecond).toBeGreaterThan(0);
    const figures = runs.map(({ gamesPerSecond: _, ...rest }) => rest);
    expect(figures[1]).toEqual(figures[0]);
    expect(figures[2]).not.toEqual(figures[0]);
  });

  test('the quick table is meant unless another is asked for', async () => {
    const [usual, quick, relaxed] = await Promise.all(
      [[], ['--table', 'quick'], ['--table', 'relaxed']].map(async (table) => {
        const { gamesPerSecond: _, ...figures } = JSON.parse(
          (await windrow(['simulate', '--games', '40', ...table, '--json'])).out,
        );
        return figures;
      }),
    );
    expect(quick).toEqual(usual);
    expect(relaxed.drawsPerGame).toBeGreaterThan(quick.drawsPerGame + 5);
    expect((await windrow(['simulate', '--games', '4', '--table', 'relaxed'])).out).toContain('play for company');
  });

  test.each([
    [['--games', '0'], /--games must be a whole number from 1/],
    [['--seed', 'x'], /--seed must be a whole number/],
    [['--card', 'nowhere.card.json'], /no such file/],
    [['--policy', 'x'], /--policy is no option of simulate/],
    [['--table', 'slow'], /--table must be one of quick, club, relaxed, not "slow"/],
  ])('bad input %j is refused in one line', async (args, sentence) => {
    expect(await windrow(['simulate', ...args])).toEqual(refusal(sentence));
  });
});

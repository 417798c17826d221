import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
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

describe('review', () => {
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

  test.each([
    [['--games', '0'], /--games must be a whole number from 1/],
    [['--seed', 'x'], /--seed must be a whole number/],
    [['--card', 'nowhere.card.json'], /no such file/],
    [['--policy', 'x'], /--policy is no option of simulate/],
  ])('bad input %j is refused in one line', async (args, sentence) => {
    expect(await windrow(['simulate', ...args])).toEqual(refusal(sentence));
  });
});

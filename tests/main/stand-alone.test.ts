import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { openDesk } from '../../main/desk/open.ts';
import { nodeFiles } from '../../main/files/node-files.ts';
import { event, EVENTS, gameRecord } from './support/desks.ts';

test('CR-V6: the script on the page of file forms, of at most 60 lines and without our code, lists all games of a folder', async () => {
  const page = await readFile(join(import.meta.dirname, '../../main/desk/FORMAT.md'), 'utf8');
  const text = /```js\n([\s\S]*?)```/.exec(page)?.[1] ?? '';
  expect(text.split('\n').length - 1).toBeLessThanOrEqual(60);
  const imported = [...text.matchAll(/from '([^']+)'/g)].map(([, name]) => name);
  expect(imported).toEqual(['node:fs', 'node:path']);
  expect(text).not.toMatch(/import\(|require\(/);

  const folder = await mkdtemp(join(tmpdir(), 'windrow-list-'));
  const script = join(folder, 'list-games.mjs');
  await writeFile(script, text);
  const desk = expectValue(await openDesk({ folder, host: 'browser', files: nodeFiles }));
  const ended = { type: 'ended', result: 'won', winner: 'West', at: '2026-10-01T19:00:00Z' } as const;
  expectValue(await desk.startGame(gameRecord('g-2', { startedAt: '2026-11-25T18:00:00Z' })));
  for (const place of EVENTS.keys()) expectValue(await desk.appendEvent('g-2', place, event(place)));
  expectValue(await desk.startGame(gameRecord('g-1', { startedAt: '2026-10-01T18:00:00Z', events: [ended] })));
  expectValue(await desk.startGame(gameRecord('g-3', { startedAt: '2026-12-01T18:00:00Z', place: 'kitchen' })));
  expectValue(await desk.appendEvent('g-3', 0, { type: 'ended', result: 'wall', at: ended.at }));

  // Once while a game is being logged, once when all is closed.
  for (const moment of ['open', 'closed']) {
    const { stdout } = await promisify(execFile)(process.execPath, [script, folder]);
    expect(stdout.trimEnd().split('\n'), moment).toEqual([
      'g-1\t2026-10-01T18:00:00Z\tLakeside library\tPlayed\twon by West',
      'g-2\t2026-11-25T18:00:00Z\tLakeside library\tPlayed\tnot ended',
      'g-3\t2026-12-01T18:00:00Z\tkitchen\tPlayed\twall',
    ]);
    await desk.close();
  }
  await rm(folder, { recursive: true });
});

import type { Page } from '@playwright/test';
import type { GameRecord } from '../../core/game/record.ts';
import { at, Feel } from './feel.ts';
import { fillFolder } from './many-games.ts';
import { expect, test } from './windrow.ts';

test.setTimeout(180_000);

const GAMES = 10_000;
/** Times that a search may take the processor as long as a hundred small drawings. */
const MOST_DRAWINGS = 20;

function gameRecord(number: number): GameRecord {
  const at = new Date(Date.UTC(2020, 0, 1) + number * 5 * 3_600_000).toISOString();
  return {
    kind: 'windrow.game',
    schemaVersion: 1,
    appVersion: '0.1.0',
    id: `game-${String(number).padStart(6, '0')}`,
    startedAt: at,
    zone: number % 3 === 0 ? 'America/Chicago' : 'UTC',
    place: number % 7 === 0 ? 'Kitchen table' : 'Lakeside library',
    tags: [`tag ${number % 40}`],
    demo: false,
    card: { format: 'windrow.card', version: 1, title: 'Lakeside', season: '2026', sections: [] },
    events: [
      number % 5 === 0
        ? { type: 'ended', result: 'wall', seat: 'South', at }
        : { type: 'ended', result: 'won', winner: 'East', by: 'draw', seat: 'South', at },
      { type: 'noted', text: `Remark ${number}`, at },
    ],
  };
}

test('CR-J8: 10,000 games are listed, searched, filtered and turned without waiting', async ({ windrow, page }) => {
  await fillFolder(
    windrow.folder,
    Array.from({ length: GAMES }, (_, number) => gameRecord(number)),
  );
  await windrow.open();
  // The list is now in the index, as it is from the second start on.
  await windrow.restart();
  const feel = await Feel.of(page);
  const opened = performance.now();
  await windrow.go('Journal');
  await expect(page.getByRole('status').filter({ hasText: '10000 games' })).toBeVisible({ timeout: 30_000 });
  const shown = performance.now() - opened;
  await page.getByLabel('Search').pressSequentially('remark 4321', { delay: 60 });
  await expect(page.getByRole('status').filter({ hasText: /^1 of/ })).toBeVisible();
  const plain: number[] = [];
  const used: number[] = [];
  for (const text of ['r', 're', 'rem', 'kitchen', 'kitchen 1', 'kitchen 12', '', 'tag 7', 'lake', '']) {
    plain.push((await feel.cost(() => feel.drawHundred())).cpuMs);
    used.push((await feel.cost(() => searched(page, text))).cpuMs);
  }
  const ratio = at(used, 0.9) / at(plain, 0.5);
  console.log(
    `10,000 games: list ${Math.round(shown)} ms; ` +
      `a search takes the processor ${at(used, 0.9).toFixed(1)} ms, ${ratio.toFixed(2)} times a hundred drawings`,
  );
  expect(ratio).toBeLessThan(MOST_DRAWINGS);
  await page.getByRole('button', { name: 'Earlier games' }).click();
  await expect(page.getByRole('navigation', { name: 'Pages' })).toContainText('Page 2 of 400');
});

/** Searches for a text as a person types it; the time in ms to the frame that shows its effect. */
async function searched(page: Page, text: string): Promise<number> {
  return await page.evaluate(async (wanted) => {
    const place = document.querySelector('wr-shell')?.shadowRoot?.querySelector('wr-journal-place');
    const filters = place?.shadowRoot?.querySelector('wr-games-view')?.shadowRoot?.querySelector('wr-journal-filters');
    const field = filters?.shadowRoot?.querySelector('wr-field')?.shadowRoot?.querySelector('input');
    if (!field) throw new Error('no search field');
    const started = performance.now();
    field.value = wanted;
    field.dispatchEvent(new InputEvent('input', { bubbles: true }));
    await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
    return performance.now() - started;
  }, text);
}

import { writeFile } from 'node:fs/promises';
import { DEAL_KINDS, isOfKind, needsCard } from '../../core/warmup/deal-kinds.ts';
import { shareOfKind } from '../../core/warmup/find-deal.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import type { FoundDocument } from '../../core/engine/practice-questions.ts';
import { openWarmUp } from './warmup-helpers.ts';
import { expect, test } from './windrow.ts';

const DEALS = 12;

/** How the search for a kind of deal went in the window's own worker. */
interface Searched {
  readonly kind: string;
  readonly found: readonly (FoundDocument & { readonly seconds: number })[];
}

test('deals of every kind are found in the worker, a rare one at a small part of what reading each deal would take', async ({
  windrow,
  page,
}) => {
  test.setTimeout(240_000);
  await openWarmUp(windrow);
  const searched: Searched[] = [];
  for (const kind of DEAL_KINDS) {
    const found = await page.evaluate(
      async ({ kind: wanted, deals }) => {
        const place = document.querySelector('wr-shell')?.shadowRoot?.querySelector('wr-warm-up-place');
        const app: unknown = place === null || place === undefined ? null : Reflect.get(place, 'app');
        if (app === null) throw new Error('the Warm-up is not open');
        const room: unknown = Reflect.get(place?.shadowRoot?.querySelector('wr-warm-up-start') ?? {}, 'room');
        const { worker, card } = room as {
          readonly worker: { ask(call: string, request: object): Promise<{ readonly value: object }> };
          readonly card: string;
        };
        const list: unknown[] = [];
        for (let seed = 1; seed <= deals; seed += 1) {
          const began = performance.now();
          const { value } = await worker.ask('find', { card, kind: wanted, tiles: 13, seed });
          list.push({ ...value, seconds: (performance.now() - began) / 1000 });
        }
        return list;
      },
      { kind, deals: DEALS },
    );
    searched.push({ kind, found: found as Searched['found'] });
  }
  for (const { kind, found } of searched) {
    expect(found, kind).toHaveLength(DEALS);
    for (const { item } of found) {
      const rack = parseTiles(item.rack);
      const plain = DEAL_KINDS.find((each) => each === kind);
      if (!rack.ok || plain === undefined) throw new Error(`${item.rack} is no rack of the kind ${kind}`);
      if (!needsCard(plain)) expect(isOfKind(plain, rack.value), `${kind}: ${item.rack}`).toBe(true);
    }
  }
  const report = searched.map(({ kind, found }) => {
    const seconds = found.map((each) => each.seconds).sort((one, other) => one - other);
    const tried = found.reduce((sum, each) => sum + each.tried, 0);
    return { kind, median: seconds[seconds.length >> 1], most: seconds.at(-1), tried: tried / DEALS };
  });
  if (process.env['WINDROW_FIGURES'] !== undefined)
    await writeFile(process.env['WINDROW_FIGURES'], JSON.stringify(report, null, 2));
  // A deal that is told from its tiles alone must cost far less to look at than one that a card is read for.
  const perDeal = (name: string): number => {
    const all = searched.find(({ kind }) => kind === name)?.found ?? [];
    const costs = all.map(({ seconds, tried }) => seconds / tried).sort((one, other) => one - other);
    return costs[costs.length >> 1] ?? Number.NaN;
  };
  expect(shareOfKind('four-jokers', 13)).toBeLessThan(1 / 400);
  expect(perDeal('two-ways') / perDeal('four-jokers')).toBeGreaterThan(3);
});

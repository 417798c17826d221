import { expect, test } from 'vitest';
import { success } from '../../core/base/result.ts';
import { useCard } from '../../renderer/session/use-card.ts';

/** An app whose cards are read when the test says so, and what it has come to. */
function appOf() {
  const reading = new Map<string, () => void>();
  const came = { onTable: [] as unknown[], inUse: [] as unknown[] };
  const app = {
    session: { untouched: true, begin: (card: unknown) => came.onTable.push(card) },
    cards: { open: async (id: string) => await new Promise((done) => reading.set(id, () => done(success(id)))) },
    preferences: { change: async ({ cardId }: { cardId: string }) => void came.inUse.push(cardId) },
  } as unknown as Parameters<typeof useCard>[0];
  return { app, came, read: (id: string) => reading.get(id)?.() };
}

test('a card is on the Table before it is said to be in use', async () => {
  const { app, came, read } = appOf();
  const used = useCard(app, 'one');
  expect(came).toEqual({ onTable: [], inUse: [] });
  read('one');
  await used;
  expect(came).toEqual({ onTable: ['one'], inUse: ['one'] });
});

test('of two cards chosen in haste the last one counts, also if the first is read later', async () => {
  const { app, came, read } = appOf();
  const both = [useCard(app, 'one'), useCard(app, 'two')];
  read('two');
  await both[1];
  read('one');
  await both[0];
  expect(came).toEqual({ onTable: ['two'], inUse: ['two'] });
});

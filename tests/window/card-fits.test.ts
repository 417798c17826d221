import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { expectValue, success } from '../../core/base/result.ts';
import { cardMark, markedCard } from '../../core/card/mark.ts';
import { CARD_FIT } from '../../core/chance/fit-shape.ts';
import type { CardFit } from '../../core/chance/table-figures.ts';
import type { TableKind } from '../../core/table/kinds.ts';
import { CardFits } from '../../renderer/session/card-fits.ts';
import type { WorkerLine } from '../../renderer/worker/client.ts';
import type { FromWorker } from '../../renderer/worker/messages.ts';
import { check } from '../../core/base/schema.ts';
import { questionNamed } from '../../core/engine/questions.ts';
import { lineInThisThread } from './line-in-this-thread.ts';
import { notedLine } from './noted-line.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const cardIn = (path: string): unknown => JSON.parse(readFileSync(resolve(ROOT, path), 'utf8'));
const DEMO = markedCard(cardIn('assets/demo.card.json'));
const NARROW = markedCard(cardIn('tests/calibration/cards/narrow.card.json'));

const someFit = (games: number): CardFit => ({ kind: 'club', games, seed: 13 }) as CardFit;

/** Fits of a desk and a worker that both only note what they are asked. */
function stand(kept: CardFit | null = null) {
  const read: string[] = [];
  const written: string[] = [];
  const asked: { readonly id: number; readonly hear: (message: FromWorker) => void }[] = [];
  const cancelled: number[] = [];
  const startWorker = (): WorkerLine =>
    notedLine(({ type, id }, hear) => {
      if (type === 'ask') asked.push({ id, hear });
      else cancelled.push(id);
    });
  const desk = {
    readFit: (mark: string, table: TableKind) => {
      read.push(`${mark} ${table}`);
      return Promise.resolve(success(kept));
    },
    keepFit: (mark: string, { kind }: CardFit) => {
      written.push(`${mark} ${kind}`);
      return Promise.resolve(success(null));
    },
  };
  const answer = (fit: CardFit): void => {
    const last = asked.at(-1);
    last?.hear({ type: 'answer', id: last.id, result: success(fit) });
  };
  return { fits: new CardFits(desk, startWorker), desk, read, written, asked, cancelled, answer };
}

const listener = (): { readonly signal: AbortSignal; readonly stop: () => void } => {
  const stop = new AbortController();
  return { signal: stop.signal, stop: () => stop.abort() };
};

test('a card’s games are played once, however many ask for them, and kept', async () => {
  const { fits, written, asked, answer } = stand();
  const mark = cardMark(NARROW.document);
  const all = [0, 1, 2].map(() => fits.fit({ card: NARROW, table: 'club' }, listener()));
  await expect.poll(() => asked.length).toBe(1);
  expect(fits.known(mark, { table: 'club' })).toBeNull();
  answer(someFit(400));
  expect((await Promise.all(all)).map((result) => expectValue(result).games)).toEqual([400, 400, 400]);
  expect(expectValue(await fits.fit({ card: NARROW, table: 'club' }, listener())).games).toBe(400);
  expect(fits.known(mark, { table: 'club' })?.games).toBe(400);
  expect(asked).toHaveLength(1);
  expect(written).toEqual([`${mark} club`]);
});

test('what is kept is not played again, whatever the order of the card’s fields', async () => {
  const { fits, asked, read } = stand(someFit(400));
  const turned = Object.fromEntries(Object.entries(NARROW.document as object).toReversed());
  expect(expectValue(await fits.fit({ card: markedCard(turned), table: 'club' }, listener())).games).toBe(400);
  expect(asked).toEqual([]);
  expect(read).toEqual([`${cardMark(NARROW.document)} club`]);
});

test('games go on as long as one still waits, and stop when nobody does', async () => {
  const { fits, asked, cancelled, answer } = stand();
  const [one, other] = [listener(), listener()];
  const first = fits.fit({ card: NARROW, table: 'club' }, one);
  const second = fits.fit({ card: NARROW, table: 'club' }, other);
  await expect.poll(() => asked.length).toBe(1);
  one.stop();
  expect(cancelled).toEqual([]);
  other.stop();
  expect(cancelled).toEqual([1]);
  const third = fits.fit({ card: NARROW, table: 'club' }, listener());
  await expect.poll(() => asked.length).toBe(2);
  answer(someFit(400));
  expect(expectValue(await third).games).toBe(400);
  asked[0]?.hear({ type: 'cancelled', id: 1 });
  expect([await first, await second].map((result) => result.ok)).toEqual([false, false]);
});

test('the demo card’s fit ships: it is neither read from the disk nor kept, and has the shape of what is kept', async () => {
  const { desk, read, written } = stand();
  const fits = new CardFits(desk, () => lineInThisThread(questionNamed));
  for (const table of ['quick', 'club', 'relaxed'] as const) {
    const fit = expectValue(await fits.fit({ card: DEMO, table }, listener()));
    expect(fit.kind).toBe(table);
    expect(check(CARD_FIT, JSON.parse(JSON.stringify(fit)))).toMatchObject({ ok: true });
  }
  expect([read, written]).toEqual([[], []]);
});

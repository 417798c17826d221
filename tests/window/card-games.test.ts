import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { success } from '../../core/base/result.ts';
import { NEW_GAME } from '../../core/game/game-state.ts';
import { FIRST_TERMS } from '../../core/reading/reach-model.ts';
import type { TableKind } from '../../core/table/kinds.ts';
import { CardFits } from '../../renderer/session/card-fits.ts';
import { CardGames } from '../../renderer/session/card-games.ts';
import { Store } from '../../renderer/session/store.ts';
import type { WorkerLine } from '../../renderer/worker/client.ts';
import type { FromWorker } from '../../renderer/worker/messages.ts';
import { NO_KEPT_FITS } from './no-kept-fits.ts';
import { notedLine } from './noted-line.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const cardIn = (path: string): unknown => JSON.parse(readFileSync(resolve(ROOT, path), 'utf8'));
const DEMO = cardIn('assets/demo.card.json');
const NARROW = cardIn('tests/calibration/cards/narrow.card.json');
const FIGURES = { othersStop: 0.2, offers: [0.1, 0.2, 0.3, 0.4], draws: 70 };

/** A session of a card, at a kind of table. */
class Stand extends Store {
  card: unknown;
  state = NEW_GAME;
  table: TableKind = 'club';

  constructor(card: unknown) {
    super();
    this.card = card;
  }

  choose(table: TableKind): void {
    this.table = table;
    this.notify();
  }

  take(card: unknown): void {
    this.card = card;
    this.notify();
  }
}

function begun(card: unknown): {
  readonly stand: Stand;
  readonly games: CardGames;
  readonly asked: string[];
  readonly answer: (wallGames: number, early?: boolean) => Promise<void>;
  readonly answerStages: (wallLeft: number) => Promise<void>;
  /** What each worker that was ended was asked last. */
  readonly ended: string[];
} {
  const asked: string[] = [];
  const ended: string[] = [];
  const stages: { readonly id: number; readonly hear: (message: FromWorker) => void }[] = [];
  const open: { readonly id: number; readonly table: TableKind; readonly hear: (message: FromWorker) => void }[] = [];
  const startWorker = (): WorkerLine => {
    let last = '';
    const line = notedLine((message, hear) => {
      if (message.type !== 'ask') return;
      last = message.question;
      if (last === 'fit') stages.push({ id: message.id, hear });
      const { table } = message.request as { readonly table?: TableKind };
      asked.push(table === undefined ? message.question : `${message.question} ${table}`);
      if (table !== undefined) open.push({ id: message.id, table, hear });
    });
    return { ...line, terminate: () => void ended.push(last) };
  };
  const stand = new Stand(card);
  const games = new CardGames({ session: stand, fits: new CardFits(NO_KEPT_FITS, startWorker), startWorker });
  const answer = async (wallGames: number, early = false): Promise<void> => {
    await vi.advanceTimersByTimeAsync(0);
    const last = open.at(-1);
    if (last === undefined) throw new Error('nobody asked for the chance');
    const { id, table, hear } = last;
    const fit = { kind: table, games: early ? 0 : 400, seed: 13, correction: [], table: { ...FIGURES, wallGames } };
    hear(early ? { type: 'progress', id, value: fit } : { type: 'answer', id, result: success(fit) });
    await vi.advanceTimersByTimeAsync(0);
  };
  const answerStages = async (wallLeft: number): Promise<void> => {
    await vi.advanceTimersByTimeAsync(0);
    const last = stages.at(-1);
    if (last === undefined) throw new Error('nobody asked how soon others win');
    last.hear({ type: 'answer', id: last.id, result: success([{ ...FIRST_TERMS, wallLeft }]) });
    await vi.advanceTimersByTimeAsync(0);
  };
  return { stand, games, asked, answer, answerStages, ended };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('what the card’s own games have shown', () => {
  it('they are asked for once the card has been in use for a while; what stands in until then says so', async () => {
    const { games, asked, answer } = begun(NARROW);
    await vi.advanceTimersByTimeAsync(2999);
    expect(asked).toEqual([]);
    await vi.advanceTimersByTimeAsync(1);
    expect(asked).toEqual(['fit', 'fitChance club']);
    await answer(0.3, true);
    expect(games.figures).toMatchObject({ status: 'pending', value: { games: 0, table: { wallGames: 0.3 } } });
    expect(games.said).toEqual({ table: 'club' });
    const before = games.key;
    await answer(0.4);
    expect(games.figures).toMatchObject({ status: 'done', value: { games: 400, table: { wallGames: 0.4 } } });
    expect(games.said.fit).toBe(games.figures.value);
    expect(games.key).not.toBe(before);
  });

  it('another kind of table is asked for anew and at once, one that is known is not', async () => {
    const { stand, games, asked, answer } = begun(NARROW);
    games.learn();
    await answer(0.4);
    stand.choose('quick');
    expect(games.said).toEqual({ table: 'quick' });
    await answer(0.1);
    stand.choose('club');
    expect(games.said.fit?.table.wallGames).toBe(0.4);
    stand.choose('quick');
    expect(games.said.fit?.table.wallGames).toBe(0.1);
    expect(asked).toEqual(['fit', 'fitChance club', 'fitChance quick']);
  });

  it('a card that comes back is known, at each kind of table', async () => {
    const { stand, games, asked, answer } = begun(NARROW);
    games.learn();
    await answer(0.4);
    stand.take(DEMO);
    await vi.advanceTimersByTimeAsync(3000);
    stand.take(structuredClone(NARROW));
    expect(games.said.fit?.table.wallGames).toBe(0.4);
    await vi.advanceTimersByTimeAsync(3000);
    // The narrow card's, then the demo card's, and not the narrow card's again.
    expect(asked.filter((each) => each.startsWith('fitChance'))).toEqual(['fitChance club', 'fitChance club']);
  });

  it('the same card out of another file is not asked for again, and what is known of it stays', async () => {
    const { stand, games, asked, answer, answerStages } = begun(NARROW);
    games.learn();
    await answer(0.4);
    await answerStages(90);
    stand.take(structuredClone(NARROW));
    expect(games.said).toMatchObject({ terms: { wallLeft: 90 }, fit: { games: 400 } });
    await vi.advanceTimersByTimeAsync(3000);
    expect(asked).toEqual(['fit', 'fitChance club']);
  });

  it('nothing of one card is said of another, whose games may not have been played', async () => {
    const { stand, games, answer, answerStages } = begun(NARROW);
    games.learn();
    await answer(0.4);
    await answerStages(90);
    stand.take(DEMO);
    expect(games.said).toEqual({ table: 'club' });
  });

  it('the worker that found how soon others win is ended once it has', async () => {
    const { games, ended, answerStages } = begun(NARROW);
    games.learn();
    await vi.advanceTimersByTimeAsync(0);
    expect(ended).toEqual([]);
    await answerStages(90);
    expect(ended).toContain('fit');
  });

  it('the demo card’s chance ships: what was asked stays answered once its figures are there', async () => {
    const { stand, games, answer } = begun(DEMO);
    const before = games.key;
    games.learn();
    await answer(0.1);
    expect(games.figures).toMatchObject({ status: 'done', value: { kind: 'club', games: 400 } });
    expect(games.key).toBe(before);
    stand.choose('relaxed');
    expect(games.key).not.toBe(before);
  });
});

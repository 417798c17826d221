import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type Result, success } from '../../core/base/result.ts';
import { FIRST_TERMS } from '../../core/reading/reach-model.ts';
import { Analysis } from '../../renderer/session/analysis.ts';
import { PATIENCE } from '../../renderer/session/ask.ts';
import { CardFits } from '../../renderer/session/card-fits.ts';
import { CardGames } from '../../renderer/session/card-games.ts';
import { GameSession } from '../../renderer/session/game-session.ts';
import type { WorkerLine } from '../../renderer/worker/client.ts';
import type { FromWorker } from '../../renderer/worker/messages.ts';
import { Pool } from '../../renderer/worker/pool.ts';
import { NO_KEPT_FITS } from './no-kept-fits.ts';
import { notedLine } from './noted-line.ts';

const DOCUMENT: unknown = JSON.parse(readFileSync(new URL('../../assets/demo.card.json', import.meta.url), 'utf8'));
/** A card whose chance does not ship. */
const OTHER: unknown = JSON.parse(
  readFileSync(new URL('../calibration/cards/narrow.card.json', import.meta.url), 'utf8'),
);
const kept = async () => success(null);

/** The far end of all workers: what they were told, in order, and answers given by hand. */
class Workers {
  readonly said: string[] = [];
  readonly #asked: { readonly line: (message: FromWorker) => void; readonly id: number; readonly question: string }[] =
    [];

  start(): WorkerLine {
    return notedLine((asked, line) => {
      if (asked.type === 'ask') this.#asked.push({ line, id: asked.id, question: asked.question });
      this.said.push(asked.type === 'ask' ? asked.question : asked.type);
    });
  }

  /** Sends something about the newest request of a question, and lets what follows from it happen. */
  async tell(
    question: string,
    message:
      | { readonly type: 'progress'; readonly value: unknown }
      | { readonly type: 'answer'; readonly result: Result<unknown> },
  ): Promise<void> {
    const asked = this.#asked.findLast((each) => each.question === question);
    if (asked === undefined) throw new Error(`nobody asked for ${question}`);
    asked.line({ ...message, id: asked.id });
    await vi.advanceTimersByTimeAsync(0);
  }
}

function begun(card = DOCUMENT): {
  readonly workers: Workers;
  readonly session: GameSession;
  readonly analysis: Analysis;
} {
  const workers = new Workers();
  const session = new GameSession(
    {
      desk: {
        keepDraft: kept,
        startGame: kept,
        appendEvent: kept,
        dropEvent: kept,
        changeGame: kept,
      },
      appVersion: '0',
      zone: 'UTC',
      now: () => '2026-11-25T19:00:00Z',
      newId: () => 'g-1',
    },
    card,
  );
  const startWorker = () => workers.start();
  const cardGames = new CardGames({ session, fits: new CardFits(NO_KEPT_FITS, startWorker), startWorker });
  const analysis = new Analysis({
    session,
    startWorker,
    cardGames,
    pool: new Pool(startWorker),
    incoming: { rates: null, subscribe: () => () => undefined },
  });
  session.apply({ type: 'dealt', seat: 'South', tiles: 'J FF N 0 13b 4578c 22d' });
  return { workers, session, analysis };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('what a rack means, asked of the workers', () => {
  it('CR-P6: the reading comes first: nothing else is asked for before its hands are there', async () => {
    const { workers, analysis } = begun();
    await vi.advanceTimersByTimeAsync(PATIENCE);
    expect(workers.said).toEqual(['read']);
    await workers.tell('read', { type: 'progress', value: { rack: '' } });
    expect(analysis.reading.status).toBe('done');
    expect(analysis.tiles.status).toBe('pending');
    expect(workers.said).toEqual(['read', 'gameChance', 'plan']);
  });

  it('CR-P6: how far a plan has come is told from 300 ms on, and no sooner', async () => {
    const { workers, analysis } = begun();
    await workers.tell('read', { type: 'progress', value: { rack: '' } });
    await vi.advanceTimersByTimeAsync(PATIENCE - 1);
    await workers.tell('plan', { type: 'progress', value: 0.2 });
    expect(analysis.plan.progress).toBeNull();
    await vi.advanceTimersByTimeAsync(1);
    await workers.tell('plan', { type: 'progress', value: 0.301 });
    expect(analysis.plan.progress).toBe(0.3);
    await workers.tell('plan', { type: 'answer', result: success({ options: [] }) });
    expect(analysis.plan.progress).toBeNull();
    expect(analysis.plan.status).toBe('done');
  });

  it('CR-P6: a reading that takes over 300 ms is told, so that the one before is not taken for it', async () => {
    const { workers, session, analysis } = begun();
    await workers.tell('read', { type: 'progress', value: { rack: 'old' } });
    session.apply({ type: 'gave', step: 'right', tiles: 'N 0 1b' });
    let told = 0;
    analysis.subscribe(() => (told += 1));
    await vi.advanceTimersByTimeAsync(PATIENCE - 1);
    expect(analysis.reading.late).toBe(false);
    await vi.advanceTimersByTimeAsync(1);
    expect([analysis.reading.late, analysis.reading.value, told]).toEqual([true, { rack: 'old' }, 1]);
    await workers.tell('read', { type: 'progress', value: { rack: 'new' } });
    expect(analysis.reading.late).toBe(false);
  });

  it('CR-P6: a change calls back at once what was being worked on, before it asks for what is new', async () => {
    const { workers, session } = begun();
    await workers.tell('read', { type: 'progress', value: { rack: '' } });
    workers.said.length = 0;
    session.undo();
    expect(workers.said.toSorted()).toEqual(['cancel', 'cancel', 'cancel']);
    session.redo();
    expect(workers.said.slice(3)).toEqual(['read']);
  });

  it('advice is asked for again with the chance that the games of the card have shown', async () => {
    const { workers, session, analysis } = begun(OTHER);
    session.apply({ type: 'discarded', seat: 'East', tile: '2d' });
    await workers.tell('read', { type: 'progress', value: { rack: '' } });
    await workers.tell('advise', { type: 'answer', result: success({ choices: [], provisional: true }) });
    expect(analysis.advice.value).toMatchObject({ provisional: true });
    await vi.advanceTimersByTimeAsync(3000);
    await workers.tell('fit', { type: 'answer', result: success([FIRST_TERMS]) });
    expect(analysis.advice.status).toBe('done');
    await workers.tell('fitChance', { type: 'answer', result: success({ kind: 'club', games: 400 }) });
    expect(analysis.advice.status).toBe('pending');
    // The reach of hands is at the level of the card, which these games say: the reading comes first, as ever.
    await workers.tell('read', { type: 'progress', value: { rack: '' } });
    await workers.tell('advise', { type: 'answer', result: success({ choices: [], provisional: false }) });
    expect(analysis.advice.value).toMatchObject({ provisional: false });
  });

  it('what all choices cost is shown until the next moment, and no longer', async () => {
    const { workers, session, analysis } = begun();
    session.describe({ advice: 'none' });
    session.apply({ type: 'discarded', seat: 'East', tile: '2d' });
    const open = { verdict: null, chance: 0.1, cost: 0, spends: false };
    await workers.tell('read', { type: 'progress', value: { rack: '' } });
    await workers.tell('advise', { type: 'answer', result: success({ choices: [open, open], of: 'few' }) });
    analysis.adviseAll();
    await workers.tell('advise', { type: 'answer', result: success({ choices: [], of: 'all' }) });
    expect(analysis.advice).toMatchObject({ status: 'done', value: { of: 'all' } });
    session.apply({ type: 'discarded', seat: 'West', tile: '4d' });
    expect(analysis.advice).toMatchObject({ status: 'pending', value: null });
    await workers.tell('read', { type: 'progress', value: { rack: '' } });
    await workers.tell('advise', { type: 'answer', result: success({ choices: [], of: 'the next' }) });
    expect(analysis.advice).toMatchObject({ status: 'done', value: { of: 'the next' } });
  });

  it('a discard is judged where advice is welcome after the choice, and nowhere else', async () => {
    for (const [advice, status] of [
      ['after-choice', 'pending'],
      ['at-once', 'none'],
      ['none', 'none'],
    ] as const) {
      const { session, analysis } = begun();
      session.describe({ advice });
      session.leavePasses(true);
      session.apply({ type: 'drew', tile: '9d' });
      expect(analysis.judged.status).toBe('none');
      session.apply({ type: 'discarded', seat: 'South', tile: 'N' });
      expect(analysis.judged.status, advice).toBe(status);
    }
  });
});

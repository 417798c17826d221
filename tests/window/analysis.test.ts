import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { success } from '../../core/base/result.ts';
import { Analysis, PATIENCE } from '../../renderer/session/analysis.ts';
import { GameSession } from '../../renderer/session/game-session.ts';
import type { StoppableLine } from '../../renderer/worker/client.ts';
import type { Asked, Told } from '../../renderer/worker/messages.ts';

const DOCUMENT: unknown = JSON.parse(readFileSync(new URL('../../assets/demo.card.json', import.meta.url), 'utf8'));
const kept = async () => success(null);

/** The far end of all workers: what they were told, in order, and answers given by hand. */
class Workers {
  readonly said: string[] = [];
  readonly #asked: { readonly line: (told: Told) => void; readonly id: number; readonly call: string }[] = [];

  start(): StoppableLine {
    let hear = (_: Told): void => undefined;
    return {
      postMessage: (asked: Asked) => {
        if (asked.type === 'ask') this.#asked.push({ line: (told) => hear(told), id: asked.id, call: asked.call });
        this.said.push(asked.type === 'ask' ? asked.call : asked.type);
      },
      addEventListener: (type, listener) => {
        if (type === 'message') hear = (data) => listener({ data } as MessageEvent<Told>);
      },
      terminate: () => undefined,
    };
  }

  /** Tells something about the newest question of a call, and lets what follows from it happen. */
  async tell(call: string, told: { readonly type: 'progress' | 'answer'; readonly value: unknown }): Promise<void> {
    const asked = this.#asked.findLast((each) => each.call === call);
    if (asked === undefined) throw new Error(`nobody asked for ${call}`);
    asked.line({ ...told, id: asked.id });
    await vi.advanceTimersByTimeAsync(0);
  }
}

function begun(): { readonly workers: Workers; readonly session: GameSession; readonly analysis: Analysis } {
  const workers = new Workers();
  const session = new GameSession(
    {
      desk: { startGame: kept, appendEvent: kept, dropEvent: kept, changeGame: kept },
      appVersion: '0',
      zone: 'UTC',
      now: () => '2026-11-25T19:00:00Z',
      newId: () => 'g-1',
    },
    DOCUMENT,
  );
  const analysis = new Analysis(session, () => workers.start(), { rates: null, subscribe: () => () => undefined });
  session.apply({ type: 'dealt', seat: 'South', tiles: 'J FF N 0 13b 4578c 22d' });
  return { workers, session, analysis };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('what a rack means, asked of the workers', () => {
  it('P6: the reading comes first: nothing else is asked for before its hands are there', async () => {
    const { workers, analysis } = begun();
    await vi.advanceTimersByTimeAsync(PATIENCE);
    expect(workers.said).toEqual(['read']);
    await workers.tell('read', { type: 'progress', value: { rack: '' } });
    expect(analysis.reading.status).toBe('done');
    expect(analysis.tiles.status).toBe('pending');
    expect(workers.said).toEqual(['read', 'plan']);
  });

  it('P6: how far a plan has come is told from 300 ms on, and no sooner', async () => {
    const { workers, analysis } = begun();
    await workers.tell('read', { type: 'progress', value: { rack: '' } });
    await vi.advanceTimersByTimeAsync(PATIENCE - 1);
    await workers.tell('plan', { type: 'progress', value: 0.2 });
    expect(analysis.planShare).toBeNull();
    await vi.advanceTimersByTimeAsync(1);
    await workers.tell('plan', { type: 'progress', value: 0.301 });
    expect(analysis.planShare).toBe(0.3);
    await workers.tell('plan', { type: 'answer', value: { ok: true, value: { options: [] } } });
    expect(analysis.planShare).toBeNull();
    expect(analysis.plan.status).toBe('done');
  });

  it('P6: a reading that takes over 300 ms is told, so that the one before is not taken for it', async () => {
    const { workers, session, analysis } = begun();
    await workers.tell('read', { type: 'progress', value: { rack: 'old' } });
    session.apply({ type: 'gave', step: 'right', tiles: 'N 0 1b' });
    let told = 0;
    analysis.subscribe(() => (told += 1));
    await vi.advanceTimersByTimeAsync(PATIENCE - 1);
    expect(analysis.readsLong).toBe(false);
    await vi.advanceTimersByTimeAsync(1);
    expect([analysis.readsLong, analysis.reading.value, told]).toEqual([true, { rack: 'old' }, 1]);
    await workers.tell('read', { type: 'progress', value: { rack: 'new' } });
    expect(analysis.readsLong).toBe(false);
  });

  it('P6: a change calls back at once what was being worked on, before it asks for what is new', async () => {
    const { workers, session } = begun();
    await workers.tell('read', { type: 'progress', value: { rack: '' } });
    workers.said.length = 0;
    session.undo();
    expect(workers.said.toSorted()).toEqual(['cancel', 'cancel']);
    session.redo();
    expect(workers.said.slice(2)).toEqual(['read']);
  });
});

import { unseenTiles } from '../../core/game/seen.ts';
import { formatTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import type { Knowledge, ReadingView, ThinkingCalls } from '../worker/calls.ts';
import { type Outcome, WorkerClient } from '../worker/client.ts';
import type { GameSession } from './game-session.ts';

/** Something computed in the background. While `pending`, `value` is what held before, if anything did. */
export interface Thought<Value> {
  readonly status: 'none' | 'pending' | 'done' | 'failed';
  readonly value: Value | null;
  /** Why it failed, in words. */
  readonly message: string;
}

const NO_THOUGHT = { status: 'none', value: null, message: '' } as const;

/**
 * What the session's rack means: asked of the workers anew whenever the rack changes, older
 * questions being dropped.
 */
export class Analysis {
  readonly #session: GameSession;
  readonly #reader: WorkerClient<ThinkingCalls>;
  readonly #listeners = new Set<() => void>();
  #reading: Thought<ReadingView> = NO_THOUGHT;
  #asked = '';
  #cardText: { readonly card: unknown; readonly text: string } = { card: null, text: '' };

  constructor(session: GameSession, startWorker: () => Worker) {
    this.#session = session;
    this.#reader = new WorkerClient(startWorker);
    session.subscribe(() => this.#refresh());
    this.#refresh();
  }

  get reading(): Thought<ReadingView> {
    return this.#reading;
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  #refresh(): void {
    const known = this.#knowledge();
    const asked = known === null ? '' : `${this.#session.id} ${known.rack} / ${known.gone}`;
    if (asked === this.#asked) return;
    this.#asked = asked;
    if (known === null) this.#forget();
    else void this.#read(known);
  }

  #forget(): void {
    this.#reader.cancelNewest('read');
    this.#reading = NO_THOUGHT;
    this.#tell();
  }

  async #read(known: Knowledge): Promise<void> {
    this.#reading = { status: 'pending', value: this.#reading.value, message: '' };
    this.#tell();
    const outcome = await this.#reader.askNewest('read', known);
    if (outcome.status === 'cancelled') return;
    this.#reading = thoughtOf(outcome);
    this.#tell();
  }

  /** What the player knows; null before the deal. */
  #knowledge(): Knowledge | null {
    const { state, card } = this.#session;
    if (state.seat === null || state.rack.size === 0) return null;
    if (this.#cardText.card !== card) this.#cardText = { card, text: JSON.stringify(card) };
    const gone = Tiles.fullSet.minus(state.rack.plus(unseenTiles(state)));
    return { card: this.#cardText.text, rack: formatTiles(state.rack), gone: formatTiles(gone) };
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

function thoughtOf<Value>(
  outcome: Outcome<{ readonly ok: true; readonly value: Value } | { readonly ok: false; readonly message: string }>,
): Thought<Value> {
  if (outcome.status === 'done' && outcome.value.ok) return { status: 'done', value: outcome.value.value, message: '' };
  const message = outcome.status === 'failed' ? outcome.message : '';
  if (outcome.status === 'done' && !outcome.value.ok)
    return { status: 'failed', value: null, message: outcome.value.message };
  return { status: 'failed', value: null, message };
}

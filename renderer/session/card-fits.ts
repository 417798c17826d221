import { type Result, success } from '../../core/base/result.ts';
import { DEMO_MARK } from '../../core/chance/demo-fit.ts';
import type { CardFit } from '../../core/chance/table-figures.ts';
import type { FitRequest } from '../../core/engine/chance-questions.ts';
import type { Desk } from '../../main/desk/desk.ts';
import { CANCELLED, type WorkerLine } from '../worker/client.ts';
import { type Engine, engine } from '../worker/engine.ts';

/** Who waits for a fit. */
export interface FitListener {
  /** Whoever no longer waits aborts it; games are played only as long as somebody waits. */
  readonly signal: AbortSignal;
  /** The part of the games that is played, 0 to 1. */
  readonly progress?: (part: number) => void;
  /** What stands in until then, with 0 games. */
  readonly early?: (fit: CardFit) => void;
}

/** Who waits for the games of a card, and what is known of them. */
interface Waiting {
  readonly stop: AbortController;
  readonly listeners: Set<FitListener>;
  early: CardFit | null;
}

interface Work {
  readonly waiting: Waiting;
  readonly result: Promise<Result<CardFit>>;
}

/**
 * What the games of any card at any kind of table brought. They are played once, by a worker of their own, whoever asks
 * first and however many ask, and are kept on disk.
 */
export class CardFits {
  readonly #desk: Pick<Desk, 'readFit' | 'keepFit'>;
  readonly #worker: Engine;
  readonly #known = new Map<string, CardFit>();
  readonly #work = new Map<string, Work>();

  constructor(desk: Pick<Desk, 'readFit' | 'keepFit'>, startWorker?: () => WorkerLine) {
    this.#desk = desk;
    this.#worker = engine(startWorker);
  }

  /** What is known by now of the card with this mark (`cardMark`). */
  known(mark: string, { table }: Pick<FitRequest, 'table'>): CardFit | null {
    return this.#known.get(`${mark} ${table}`) ?? null;
  }

  /** The fit of a card, from the disk or by playing its games now. */
  async fit(request: FitRequest, listener: FitListener): Promise<Result<CardFit>> {
    const { mark } = request.card;
    const key = `${mark} ${request.table}`;
    const known = this.#known.get(key);
    if (known !== undefined) return success(known);
    const { waiting, result } = this.#work.get(key) ?? this.#begin(key, mark, request);
    waiting.listeners.add(listener);
    if (waiting.early !== null) listener.early?.(waiting.early);
    const leave = (): void => {
      waiting.listeners.delete(listener);
      if (waiting.listeners.size > 0) return;
      waiting.stop.abort();
      this.#forget(key, waiting);
    };
    const { signal } = listener;
    signal.addEventListener('abort', leave, { once: true });
    if (signal.aborted) leave();
    const fit = await result;
    signal.removeEventListener('abort', leave);
    return signal.aborted ? CANCELLED : fit;
  }

  #begin(key: string, mark: string, request: FitRequest): Work {
    const waiting: Waiting = { stop: new AbortController(), listeners: new Set(), early: null };
    const work: Work = { waiting, result: this.#done(key, waiting, this.#find(mark, request, waiting)) };
    this.#work.set(key, work);
    return work;
  }

  /** What comes of it is known from then on; the worker goes when nobody waits any more. */
  async #done(key: string, waiting: Waiting, found: Promise<Result<CardFit>>): Promise<Result<CardFit>> {
    const result = await found;
    if (result.ok) this.#known.set(key, result.value);
    this.#forget(key, waiting);
    if (this.#work.size === 0) this.#worker.end();
    return result;
  }

  /** Unless it was begun anew since. */
  #forget(key: string, waiting: Waiting): void {
    if (this.#work.get(key)?.waiting === waiting) this.#work.delete(key);
  }

  async #find(mark: string, request: FitRequest, waiting: Waiting): Promise<Result<CardFit>> {
    const ships = mark === DEMO_MARK;
    const kept = ships ? null : await this.#desk.readFit(mark, request.table);
    if (kept?.ok === true && kept.value !== null) return success(kept.value);
    const made = await this.#worker.ask('fitChance', request, {
      signal: waiting.stop.signal,
      onProgress: (news) => hear(waiting, news),
    });
    // Kept only to save time: whatever is wrong with the disk is said where something of the person's is saved.
    if (made.ok && !ships) void this.#desk.keepFit(mark, made.value);
    return made;
  }
}

function hear(waiting: Waiting, news: number | CardFit): void {
  if (typeof news !== 'number') waiting.early = news;
  for (const { progress, early } of waiting.listeners) {
    if (typeof news === 'number') progress?.(news);
    else early?.(news);
  }
}

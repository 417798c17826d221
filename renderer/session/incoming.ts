import { legalEvents } from '../../core/game/legal.ts';
import { type IncomingRates, journalRates, PASSES_NEEDED, type PassLog } from '../../core/table/incoming-rates.ts';
import { type StoppableLine, WorkerClient } from '../worker/client.ts';
import type { LookCalls } from '../worker/look-calls.ts';
import type { GameSession } from './game-session.ts';

/** How long after the start, in ms, the own games are looked through; the start itself comes first. */
const SETTLING = 3000;

export interface IncomingParts {
  readonly session: GameSession;
  readonly startWorker: () => StoppableLine;
  /** The passes of the player's own games. */
  readonly readLog: () => Promise<PassLog>;
}

/**
 * What is taken to come in by passes: all tiles alike, or as people pass. The second is counted in
 * the player's own games if they hold enough passes, else at the simulated table. Until the player
 * chooses, it is taken exactly when the own games hold enough.
 */
export class IncomingChoice {
  readonly #session: GameSession;
  readonly #worker: WorkerClient<LookCalls>;
  readonly #readLog: () => Promise<PassLog>;
  readonly #listeners = new Set<() => void>();
  #wish: boolean | null = null;
  #settled = false;
  #counting = false;
  /** The passes logged before a game, by the game's id. */
  #log: { readonly game: string; readonly passes: PassLog | null } = { game: '', passes: null };
  /** Rates of the simulated table, by the card. */
  #table: { readonly card: unknown; readonly rates: IncomingRates | null } = { card: null, rates: null };

  constructor({ session, startWorker, readLog }: IncomingParts) {
    this.#session = session;
    this.#worker = new WorkerClient(startWorker);
    this.#readLog = readLog;
    session.subscribe(() => this.#refresh());
    this.#refresh();
    setTimeout(() => {
      this.#settled = true;
      this.#refresh();
    }, SETTLING);
  }

  /** Whether tiles are taken to come in as people pass. */
  get byRates(): boolean {
    return this.#wish ?? (this.#log.passes?.passes ?? 0) >= PASSES_NEEDED;
  }

  /** The rates that count now; null while all tiles are alike, and until the rates have been counted. */
  get rates(): IncomingRates | null {
    if (!this.byRates || this.#table.rates === null || this.#log.passes === null) return null;
    return journalRates(this.#log.passes, this.#table.rates);
  }

  choose(byRates: boolean): void {
    this.#wish = byRates;
    this.#refresh();
    this.#tell();
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Counts what is wanted and not yet known: soon after the start, so that it is there when a pass is due. */
  #refresh(): void {
    const { card, id, state } = this.#session;
    if (!this.#settled && legalEvents(state).give === null) return;
    if (this.#log.game !== id) {
      this.#log = { ...this.#log, game: id };
      void this.#count();
    }
    if (!this.byRates || this.#table.card === card) return;
    this.#table = { card, rates: null };
    void this.#simulate(card);
  }

  /** One count at a time: for a game that begins meanwhile, the count begins anew when it ends. */
  async #count(): Promise<void> {
    if (this.#counting) return;
    this.#counting = true;
    const { game } = this.#log;
    try {
      const passes = await this.#readLog();
      if (game === this.#log.game) this.#log = { game, passes };
    } finally {
      this.#counting = false;
    }
    if (game !== this.#log.game) return this.#count();
    this.#refresh();
    this.#tell();
  }

  async #simulate(card: unknown): Promise<void> {
    const outcome = await this.#worker.askNewest('rates', { card: JSON.stringify(card) });
    if (outcome.status !== 'done' || !outcome.value.ok || this.#table.card !== card) return;
    this.#table = { card, rates: outcome.value.value };
    this.#tell();
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

/** Tells one state of the rates from another. */
export function ratesKey(rates: IncomingRates | null): string {
  return rates === null ? 'even' : `${rates.source} ${rates.passes} ${rates.classes.map(({ rate }) => rate).join(' ')}`;
}

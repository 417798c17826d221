import type { Problem } from '../../../core/base/result.ts';
import { choiceCosts } from '../../../core/journal/choice-costs.ts';
import { ledgerSums } from '../../../core/journal/season-ledger.ts';
import type { Findings } from '../../../core/journal/findings.ts';
import { lookBackAt, type LookBackParts } from '../../session/look-back.ts';
import type { JournalGame } from './journal-game.ts';
import type { JournalStore } from './journal-store.ts';

/** How far a run has come. */
export interface RunProgress {
  readonly task: 'figures' | 'choices';
  readonly done: number;
  readonly of: number;
}

/** How often the progress is told at most, in ms. */
const PACE = 250;
/** How many findings are handed over at once. */
const HEAP = 16;

/**
 * Has the worker measure many games, one after the other, in the background: figures only, or the
 * whole look-back. It can be stopped at any time; what is done stays.
 */
export class StudyRun {
  readonly #store: JournalStore;
  readonly #app: LookBackParts;
  readonly #notify: () => void;
  #progress: RunProgress | null = null;
  #trouble = '';
  /** Why the work can't go on: its worker stopped twice. */
  #stopped = '';
  #task: RunProgress['task'] = 'figures';
  #toldAt = -PACE;
  #stop = new AbortController();

  /** `notify` is called whenever there is something new to draw. */
  constructor(store: JournalStore, app: LookBackParts, notify: () => void) {
    this.#store = store;
    this.#app = app;
    this.#notify = notify;
  }

  /** Null when nothing runs. */
  get progress(): RunProgress | null {
    return this.#progress;
  }
  get trouble(): string {
    return this.#trouble;
  }

  /** Empty while nothing keeps the run from its work. */
  get stopped(): string {
    return this.#stopped;
  }
  /** What was run last. */
  get task(): RunProgress['task'] {
    return this.#task;
  }

  stop(): void {
    this.#stop.abort();
    this.#progress = null;
    this.#notify();
  }

  /** Finds out what is not known yet of these games. Nothing happens while another run goes on. */
  async run(task: RunProgress['task'], games: readonly JournalGame[]): Promise<void> {
    const due = games.filter((game) => isDue(task, this.#store.findingsOf(game)));
    if (due.length === 0 || this.#progress !== null) return;
    const stop = new AbortController();
    this.#stop = stop;
    this.#stopped = '';
    this.#task = task;
    const heap: Findings[] = [];
    for (const [done, game] of due.entries()) {
      this.#progress = { task, done, of: due.length };
      this.#tellProgress();
      const findings = await this.#study(task, game, stop.signal);
      if (stop.signal.aborted || this.#stopped !== '') break;
      if (findings !== null) heap.push(findings);
      if (task === 'choices' || heap.length === HEAP) await this.#handOver(heap);
    }
    await this.#handOver(heap);
    if (this.#stop !== stop) return;
    this.#progress = null;
    this.#notify();
  }

  /** A game may be measured in a hundredth of a second: nobody reads as fast. */
  #tellProgress(): void {
    const now = performance.now();
    if (now - this.#toldAt < PACE) return;
    this.#toldAt = now;
    this.#notify();
  }

  async #handOver(heap: Findings[]): Promise<void> {
    if (heap.length === 0) return;
    const kept = await this.#store.learn(heap.splice(0));
    this.#trouble = kept.ok ? '' : kept.problem.message;
  }

  /** A game that can't be measured is skipped; where the worker stops again and again, no other one is tried. */
  #unmeasured({ code, message }: Problem): null {
    if (code === 'stopped') this.#stopped = message;
    return null;
  }

  /** Null for a game that can't be measured. */
  async #study(task: RunProgress['task'], game: JournalGame, signal: AbortSignal): Promise<Findings | null> {
    const { desk, worker } = this.#store;
    const record = await desk.openGame(game.id);
    if (!record.ok || signal.aborted) return null;
    const figures = await worker.ask('figures', { record: record.value }, { signal });
    if (!figures.ok) return this.#unmeasured(figures.problem);
    const findings: Findings = { id: game.id, key: this.#store.keyOf(game), figures: figures.value, choices: null };
    if (task === 'figures') return findings;
    const review = await lookBackAt({ record: record.value, exact: null }, worker, this.#app, { signal });
    if (!review.ok) {
      this.#unmeasured(review.problem);
      return findings;
    }
    return { ...findings, choices: choiceCosts(review.value), ledger: ledgerSums(review.value), review: review.value };
  }
}

function isDue(task: RunProgress['task'], findings: Findings | undefined): boolean {
  return findings === undefined || (task === 'choices' && findings.choices === null);
}

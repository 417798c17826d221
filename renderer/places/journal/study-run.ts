import { choiceCosts } from '../../../core/journal/choice-costs.ts';
import type { Findings } from '../../../main/desk/desk.ts';
import type { Answered } from '../../worker/calls.ts';
import type { Outcome } from '../../worker/client.ts';
import type { JournalGame } from './journal-game.ts';
import type { JournalStore } from './journal-store.ts';

/** How far a run has come. */
export interface RunProgress {
  readonly task: 'figures' | 'choices';
  readonly done: number;
  readonly of: number;
}

/** Findings are handed over in so large heaps. */
const HEAP = 16;

/**
 * Has the worker measure many games, one after the other, in the background: figures only, or the
 * whole look-back. It can be stopped at any time; what is done stays.
 */
export class StudyRun {
  readonly #store: JournalStore;
  readonly #tell: () => void;
  #progress: RunProgress | null = null;
  #trouble = '';
  #stop = new AbortController();

  /** `tell` is called whenever there is something new to draw. */
  constructor(store: JournalStore, tell: () => void) {
    this.#store = store;
    this.#tell = tell;
  }

  /** Null when nothing runs. */
  get progress(): RunProgress | null {
    return this.#progress;
  }
  get trouble(): string {
    return this.#trouble;
  }

  stop(): void {
    this.#stop.abort();
    this.#progress = null;
    this.#tell();
  }

  /** Finds out what is not known yet of these games. Nothing happens while another run goes on. */
  async run(task: RunProgress['task'], games: readonly JournalGame[]): Promise<void> {
    const due = games.filter((game) => isDue(task, this.#store.findingsOf(game)));
    if (due.length === 0 || this.#progress !== null) return;
    const stop = new AbortController();
    this.#stop = stop;
    const heap: Findings[] = [];
    for (const [done, game] of due.entries()) {
      this.#progress = { task, done, of: due.length };
      this.#tell();
      const findings = await this.#study(task, game, stop.signal);
      if (stop.signal.aborted) break;
      if (findings !== null) heap.push(findings);
      if (task === 'choices' || heap.length === HEAP) await this.#handOver(heap);
    }
    await this.#handOver(heap);
    if (this.#stop !== stop) return;
    this.#progress = null;
    this.#tell();
  }

  async #handOver(heap: Findings[]): Promise<void> {
    if (heap.length === 0) return;
    const kept = await this.#store.learn(heap.splice(0));
    this.#trouble = kept.ok ? '' : kept.problem.message;
  }

  /** Null for a game that can't be studied: it is passed over. */
  async #study(task: RunProgress['task'], game: JournalGame, signal: AbortSignal): Promise<Findings | null> {
    const { desk, worker } = this.#store;
    const record = await desk.openGame(game.id);
    if (!record.ok || signal.aborted) return null;
    const figures = valueOf(await worker.ask('figures', record.value, { signal }));
    if (figures === null) return null;
    const findings: Findings = { id: game.id, key: this.#store.keyOf(game), figures, choices: null };
    if (task === 'figures') return findings;
    const exact = valueOf(await worker.ask('review', record.value, { signal }));
    if (exact === null || signal.aborted) return findings;
    const review = valueOf(await worker.ask('lookAhead', { record: record.value, review: exact }, { signal }));
    if (review === null) return findings;
    return { ...findings, choices: choiceCosts(review), review };
  }
}

function isDue(task: RunProgress['task'], findings: Findings | undefined): boolean {
  return findings === undefined || (task === 'choices' && findings.choices === null);
}

function valueOf<Value>(outcome: Outcome<Answered<Value>>): Value | null {
  return outcome.status === 'done' && outcome.value.ok ? outcome.value.value : null;
}

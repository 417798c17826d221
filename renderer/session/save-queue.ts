import type { Problem, Result } from '../../core/base/result.ts';

/** Whether all that was entered lies safely on disk. */
export type SaveStatus =
  | { readonly status: 'nothing' }
  | { readonly status: 'saving' }
  | { readonly status: 'saved' }
  | { readonly status: 'failed'; readonly problem: Problem };

export interface SaveJob {
  /** What it saves, a game for instance: its jobs are done in order, and one that fails holds up no other thing. */
  readonly of?: string;
  /** Jobs of one name that wait side by side are one: only the last is done. */
  readonly name?: string;
  run(): Promise<Result<unknown>>;
}

/**
 * Saves one thing after the other, in order. "Saved" is said only when nothing waits and every last
 * answer was good. A failure keeps that job, and all behind it of the same thing, until `retry`.
 */
export class SaveQueue {
  readonly #changed: (status: SaveStatus) => void;
  #jobs: readonly SaveJob[] = [];
  #isWorking = false;
  #running: SaveJob | null = null;
  /** Why the jobs of a thing wait. */
  #held: ReadonlyMap<string | undefined, Problem> = new Map();
  #status: SaveStatus = { status: 'nothing' };

  constructor(changed: (status: SaveStatus) => void) {
    this.#changed = changed;
  }

  get status(): SaveStatus {
    return this.#status;
  }

  add(job: SaveJob): void {
    const last = this.#jobs.at(-1);
    const isAgain = job.name !== undefined && last?.name === job.name && last !== this.#running;
    this.#jobs = [...(isAgain ? this.#jobs.slice(0, -1) : this.#jobs), job];
    // What failed is tried again with each further step.
    this.retry();
  }

  /** Takes back the job that was added last, if it has that name and waits; one that was tried may have left a trace. */
  takeBack(name: string): void {
    const last = this.#jobs.at(-1);
    if (last?.name === name && last !== this.#running) this.#jobs = this.#jobs.slice(0, -1);
  }

  /** Tries again what failed, and all that waits behind it. */
  retry(): void {
    this.#held = new Map();
    if (this.#jobs.length > 0) void this.#work();
  }

  async #work(): Promise<void> {
    if (this.#isWorking) return;
    this.#isWorking = true;
    this.#show({ status: 'saving' });
    for (let job = this.#next(); job !== undefined; job = this.#next()) {
      this.#running = job;
      const answer = await job.run();
      this.#running = null;
      if (answer.ok) this.#jobs = this.#jobs.filter((other) => other !== job);
      else this.#held = new Map([...this.#held, [job.of, answer.problem]]);
    }
    this.#isWorking = false;
    const [problem] = this.#held.values();
    this.#show(problem === undefined ? { status: 'saved' } : { status: 'failed', problem });
  }

  #next(): SaveJob | undefined {
    return this.#jobs.find(({ of }) => !this.#held.has(of));
  }

  #show(status: SaveStatus): void {
    this.#status = status;
    this.#changed(status);
  }
}

import type { Problem, Result } from '../../core/base/result.ts';

/** Whether all that was entered lies safely on disk; `of` says what does not. */
export type SaveStatus =
  | { readonly status: 'nothing' }
  | { readonly status: 'saving' }
  | { readonly status: 'saved' }
  | { readonly status: 'failed'; readonly problem: Problem; readonly of: string };

export interface SaveJob {
  /** What it saves, a game for instance: its jobs are done in order, and one that fails holds up no other thing. */
  readonly of?: string;
  /** Jobs of one name that wait side by side are one: only the last is done. */
  readonly name?: string;
  /** The name of an earlier job that this one makes needless, with all steps between them, if that was not done. */
  readonly undoes?: string;
  /** Whether it stays when what was done before it is undone. */
  readonly stays?: boolean;
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
  /** Resolves when nothing is being saved any more. */
  #work: Promise<void> = Promise.resolve();
  #running: SaveJob | null = null;
  /** Whether the running job was let go: if it fails, nobody needs it. */
  #isLetGo = false;
  /** Why the jobs of a thing wait. */
  #held: ReadonlyMap<string | undefined, Problem> = new Map();
  #status: SaveStatus = { status: 'nothing' };

  constructor(changed: (status: SaveStatus) => void) {
    this.#changed = changed;
  }

  get status(): SaveStatus {
    return this.#status;
  }

  /** Why a thing is not saved; null where nothing of it was refused. */
  problemOf(of: string): Problem | null {
    return this.#held.get(of) ?? null;
  }

  /** Waits for what is being saved: all of it lies on disk then, or was refused. */
  async settled(): Promise<void> {
    while (this.#isWorking) await this.#work;
  }

  /** Whether something of a thing is not saved yet. */
  waitsFor(of: string): boolean {
    return this.#jobs.some((job) => job.of === of);
  }

  add(job: SaveJob): void {
    const last = this.#jobs.at(-1);
    const isAgain = job.name !== undefined && last?.name === job.name && last.of === job.of && last !== this.#running;
    this.#jobs = [...(isAgain ? this.#jobs.slice(0, -1) : this.#jobs), job];
    // What failed is tried again with each further step.
    this.retry();
  }

  /** Lets go what waits to be saved of a thing, but for what stays. */
  letGo(of: string): void {
    const isNeedless = (job: SaveJob): boolean => job.of === of && job.stays !== true;
    if (this.#running !== null && isNeedless(this.#running)) this.#isLetGo = true;
    this.#jobs = this.#jobs.filter((job) => !isNeedless(job) || job === this.#running);
    if (!this.#held.has(of)) return;
    this.#held = new Map([...this.#held].filter(([each]) => each !== of));
    this.#begin();
  }

  /** Tries again what failed, and all that waits behind it. */
  retry(): void {
    this.#held = new Map();
    this.#jobs = this.#withoutUndone();
    if (this.#jobs.length > 0) this.#begin();
  }

  #begin(): void {
    if (this.#isWorking) return;
    this.#isWorking = true;
    this.#show({ status: 'saving' });
    this.#work = this.#saveAll();
  }

  async #saveAll(): Promise<void> {
    for (let job = this.#next(); job !== undefined; job = this.#next()) {
      this.#running = job;
      this.#isLetGo = false;
      const answer = await job.run();
      this.#running = null;
      if (answer.ok || this.#isLetGo) this.#jobs = this.#jobs.filter((other) => other !== job);
      else this.#hold(job, answer.problem);
    }
    this.#isWorking = false;
    this.#tellEnd();
  }

  /** A job that failed holds up those behind it, unless one of them makes it needless. */
  #hold(job: SaveJob, problem: Problem): void {
    this.#jobs = this.#withoutUndone();
    if (this.#jobs.includes(job)) this.#held = new Map([...this.#held, [job.of, problem]]);
  }

  #next(): SaveJob | undefined {
    return this.#jobs.find(({ of }) => !this.#held.has(of));
  }

  /** What waits, without what was undone before it was done. */
  #withoutUndone(): readonly SaveJob[] {
    let left = this.#jobs;
    for (const job of this.#jobs) {
      const { of, undoes } = job;
      const at = left.indexOf(job);
      const from = left.findIndex(
        (other) => undoes !== undefined && other.of === of && other.name === undoes && other !== this.#running,
      );
      if (from < 0 || from >= at) continue;
      left = left.filter(
        (other, place) => place < from || place >= at || other.of !== of || other.stays || other === this.#running,
      );
    }
    return left;
  }

  #tellEnd(): void {
    const [held] = this.#held;
    if (held === undefined) this.#show({ status: 'saved' });
    else this.#show({ status: 'failed', problem: held[1], of: held[0] ?? '' });
  }

  #show(status: SaveStatus): void {
    this.#status = status;
    this.#changed(status);
  }
}

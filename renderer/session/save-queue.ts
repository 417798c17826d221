import type { Problem, Result } from '../../core/base/result.ts';

/** Whether all that was entered lies safely on disk. */
export type SaveStatus =
  | { readonly status: 'nothing' }
  | { readonly status: 'saving' }
  | { readonly status: 'saved' }
  | { readonly status: 'failed'; readonly problem: Problem };

export interface SaveJob {
  /** Jobs of one name that wait side by side are one: only the last is done. */
  readonly name?: string;
  run(): Promise<Result<unknown>>;
}

/**
 * Saves one thing after the other, in order. "Saved" is said only when nothing waits and the last
 * answer was good. A failure keeps that job and all behind it until `retry`.
 */
export class SaveQueue {
  readonly #changed: (status: SaveStatus) => void;
  #jobs: SaveJob[] = [];
  #running = false;
  #status: SaveStatus = { status: 'nothing' };

  constructor(changed: (status: SaveStatus) => void) {
    this.#changed = changed;
  }

  get status(): SaveStatus {
    return this.#status;
  }

  add(job: SaveJob): void {
    const last = this.#jobs.at(-1);
    const waits = this.#jobs.length > (this.#running ? 1 : 0);
    if (waits && job.name !== undefined && last?.name === job.name) this.#jobs = [...this.#jobs.slice(0, -1), job];
    else this.#jobs = [...this.#jobs, job];
    void this.#work();
  }

  /** Tries again what failed, and all that waits behind it; nothing where nothing waits. */
  retry(): void {
    if (this.#jobs.length > 0) void this.#work();
  }

  async #work(): Promise<void> {
    if (this.#running) return;
    this.#running = true;
    this.#show({ status: 'saving' });
    while (this.#jobs[0] !== undefined) {
      const answer = await this.#jobs[0].run();
      if (!answer.ok) {
        this.#running = false;
        this.#show({ status: 'failed', problem: answer.problem });
        return;
      }
      this.#jobs = this.#jobs.slice(1);
    }
    this.#running = false;
    this.#show({ status: 'saved' });
  }

  #show(status: SaveStatus): void {
    this.#status = status;
    this.#changed(status);
  }
}

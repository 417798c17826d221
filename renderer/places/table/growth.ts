import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Frames over which what comes after the first rows is spread: nothing below may move for longer. */
const FRAMES = 2;

/**
 * A long list whose first rows are drawn at once, and the others in the next frames. Rows that are there
 * stay; `restart` when the list is short again.
 */
export class Growth implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #first: number;
  #drawn: number;
  #wanted = 0;
  #frame = 0;

  /** `first`: how many rows come in the first frame. */
  constructor(host: ReactiveControllerHost, first: number) {
    this.#host = host;
    this.#first = first;
    this.#drawn = first;
    host.addController(this);
  }

  restart(): void {
    this.#drawn = this.#first;
  }

  /** The rows that are drawn now of those that come after `before` others. */
  part<Row>(rows: readonly Row[], before: number): readonly Row[] {
    this.#wanted = before === 0 ? rows.length : Math.max(this.#wanted, before + rows.length);
    return rows.slice(0, Math.max(0, this.#drawn - before));
  }

  hostUpdated(): void {
    if (this.#wanted <= this.#drawn || this.#frame !== 0) return;
    // What was just drawn is put on screen first: a task begun in a frame comes after it.
    this.#frame = requestAnimationFrame(() => setTimeout(() => this.#grow()));
  }

  #grow(): void {
    this.#frame = 0;
    this.#drawn += Math.ceil((this.#wanted - this.#first) / FRAMES);
    this.#host.requestUpdate();
  }

  hostDisconnected(): void {
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
  }
}

import type { ReactiveController, ReactiveControllerHost } from 'lit';

/**
 * A long list that is drawn a few rows a frame, so that the first are on screen at once. Rows that are
 * there stay; `restart` when the list is short again.
 */
export class Growth implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #step: number;
  #drawn: number;
  #wanted = 0;
  #frame = 0;

  /** `step`: how many rows come in the first frame, and in each that follows. */
  constructor(host: ReactiveControllerHost, step: number) {
    this.#host = host;
    this.#step = step;
    this.#drawn = step;
    host.addController(this);
  }

  restart(): void {
    this.#drawn = this.#step;
  }

  /** The rows that are drawn now of those that come after `before` others. */
  part<Row>(rows: readonly Row[], before: number): readonly Row[] {
    this.#wanted = before === 0 ? rows.length : Math.max(this.#wanted, before + rows.length);
    return rows.slice(0, Math.max(0, this.#drawn - before));
  }

  hostUpdated(): void {
    if (this.#wanted <= this.#drawn || this.#frame !== 0) return;
    this.#frame = requestAnimationFrame(() => {
      this.#frame = 0;
      this.#drawn += this.#step;
      this.#host.requestUpdate();
    });
  }

  hostDisconnected(): void {
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
  }
}

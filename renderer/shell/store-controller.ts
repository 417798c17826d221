import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Subscribable } from '../session/store.ts';

/** Draws an element again whenever one of its stores changes, while it is on the page. */
export class StoreController implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #stores: () => readonly Subscribable[];
  readonly #drawn: (() => readonly unknown[]) | null;
  #stops: readonly (() => void)[] = [];
  #last: readonly unknown[] = [];

  /**
   * `stores` is asked when the element comes onto the page, when its properties are set. `drawn`: the
   * values that the element draws; while they stay the same, a change does not redraw the element.
   */
  constructor(
    host: ReactiveControllerHost,
    stores: () => readonly Subscribable[],
    drawn: (() => readonly unknown[]) | null = null,
  ) {
    this.#host = host;
    this.#stores = stores;
    this.#drawn = drawn;
    host.addController(this);
  }

  hostConnected(): void {
    this.#stops = this.#stores().map((store) => store.subscribe(() => this.#changed()));
    this.#host.requestUpdate();
  }

  hostUpdate(): void {
    this.#last = this.#drawn?.() ?? [];
  }

  hostDisconnected(): void {
    for (const stop of this.#stops) stop();
    this.#stops = [];
  }

  #changed(): void {
    const now = this.#drawn?.();
    if (now === undefined || now.some((value, at) => value !== this.#last[at])) this.#host.requestUpdate();
  }
}

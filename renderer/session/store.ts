/** Something that calls back after every change. */
export interface Subscribable {
  /** Returns the way to stop the calls. */
  subscribe(listener: () => void): () => void;
}

/** The base of everything in the window that keeps something others draw. */
export class Store implements Subscribable {
  readonly #listeners = new Set<() => void>();

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Calls back everyone who subscribed; to be called after every change. */
  protected notify(): void {
    for (const listener of this.#listeners) listener();
  }
}

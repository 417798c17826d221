/**
 * Watches, while parts of a step are on their way, whether the person goes on by herself: pressed a key
 * or pointed, and has the focus on something since. Her focus is hers then, and is not to be moved.
 */
export class PersonWatch {
  #acted = false;
  readonly #end = new AbortController();

  constructor() {
    const acted = (): void => void (this.#acted = true);
    const { signal } = this.#end;
    for (const kind of ['keydown', 'pointerdown']) window.addEventListener(kind, acted, { capture: true, signal });
  }

  /** Ends the watch, and says whether the focus is where she put it since. */
  wentOn(): boolean {
    this.#end.abort();
    return this.#acted && document.activeElement !== document.body;
  }
}

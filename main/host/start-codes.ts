import { isSame, newSecret } from './secrets.ts';

/**
 * Who may use a code: `anyone` who knows it, or `me` alone, the person who runs this host; the
 * latter is for a code that other people on this computer can see.
 */
export type Holder = 'anyone' | 'me';

interface Code {
  readonly holder: Holder;
  /** When it ends, on the clock that nobody sets. */
  readonly until: number;
}

/** The codes of start addresses: each lives so many milliseconds and opens the door once. */
export class StartCodes {
  readonly #life: number;
  readonly #codes = new Map<string, Code>();

  constructor(life: number) {
    this.#life = life;
  }

  make(holder: Holder): string {
    this.#dropOld();
    const code = newSecret();
    this.#codes.set(code, { holder, until: performance.now() + this.#life });
    return code;
  }

  /**
   * Uses a code up. False for one that is unknown, too old, used before, or not for whoever asks;
   * whom it is not for leaves it as it was.
   */
  async use(given: string, isMine: () => Promise<boolean>): Promise<boolean> {
    this.#dropOld();
    const known = [...this.#codes].find(([code]) => isSame(given, code));
    if (known === undefined) return false;
    const [code, { holder }] = known;
    if (holder === 'me' && !(await isMine())) return false;
    // Of two that ask at the same time, one finds it gone by now.
    return this.#codes.delete(code);
  }

  #dropOld(): void {
    const now = performance.now();
    for (const [code, { until }] of this.#codes) if (until <= now) this.#codes.delete(code);
  }
}

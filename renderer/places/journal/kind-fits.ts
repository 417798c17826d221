import { markedCard } from '../../../core/card/mark.ts';
import { type KindFigures, kindFigures } from '../../../core/journal/own-table.ts';
import { TABLE_KINDS } from '../../../core/table/kinds.ts';
import type { AppContext } from '../../shell/app-context.ts';

/** What the games of the card in use show at each kind of table: read or played one kind after the other. */
export class KindFits {
  readonly #app: Pick<AppContext, 'fits' | 'session'>;
  readonly #notify: () => void;
  #stop: AbortController | null = null;
  #figures: readonly KindFigures[] = [];
  #progress = 0;
  #failed = false;

  /** `notify` is called whenever more is known. */
  constructor(app: Pick<AppContext, 'fits' | 'session'>, notify: () => void) {
    this.#app = app;
    this.#notify = notify;
  }

  get figures(): readonly KindFigures[] {
    return this.#figures;
  }
  /** Whether the games of all kinds are known. */
  get isWhole(): boolean {
    return this.#figures.length === TABLE_KINDS.length;
  }
  /** The part done of all kinds together, 0 to 1. */
  get progress(): number {
    return (this.#figures.length + this.#progress) / TABLE_KINDS.length;
  }
  get failed(): boolean {
    return this.#failed;
  }

  /** Begins, unless it has begun. */
  begin(): void {
    if (this.#stop === null) void this.#learn();
  }

  stop(): void {
    this.#stop?.abort();
    this.#stop = null;
  }

  async #learn(): Promise<void> {
    const { signal } = (this.#stop = new AbortController());
    const card = markedCard(this.#app.session.card);
    this.#figures = [];
    this.#failed = false;
    for (const table of TABLE_KINDS) {
      const fit = await this.#app.fits.fit({ card, table }, { signal, progress: (part) => this.#hear(part, signal) });
      if (signal.aborted) return;
      this.#progress = 0;
      if (fit.ok) this.#figures = [...this.#figures, kindFigures(fit.value)];
      else this.#failed = true;
      this.#notify();
    }
  }

  #hear(part: number, signal: AbortSignal): void {
    if (signal.aborted) return;
    this.#progress = part;
    this.#notify();
  }
}

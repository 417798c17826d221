/**
 * What a benchmark file gives. `tests/bench/<name>.bench.ts` exports `measures`, an array of these
 * (or a function that makes it, which may be asynchronous when data must be prepared first), and
 * may export `close`, called when all is measured.
 * `npm run bench` runs all of them in one process; `npm run bench -- reading` only the files whose
 * name holds "reading"; `--json FILE` writes the figures too; `--quick` takes few rounds.
 *
 * A measure compares two ways to the same answer in the same run, turn by turn, so that a slow or
 * busy machine slows both. Only the ratio is judged, never a time.
 */
export interface Measure {
  /** A sentence part for the table: "full reading of the demo card". */
  readonly name: string;
  /** What one call of `candidate` does, in one word: "reading", "pass table", "game". */
  readonly unit: string;
  /** The plain way: obviously right, nothing clever. Called once per round, or more often if it is quick. */
  readonly reference: () => unknown;
  /** The way the app does it. Vary the input from call to call, so that nothing is remembered. */
  readonly candidate: () => unknown;
  /**
   * How many times the reference must be called to do the work of one candidate call, when it does
   * only a sample of it (the time is scaled up by this). 1 if left out.
   */
  readonly referenceShare?: number;
  /**
   * Which time counts: the processor's own (`cpu`, if left out), which other programs do not change;
   * the clock on the wall, for work that waits for a disk; or what both functions answer with
   * themselves, in milliseconds (`own`), for work that another process does.
   */
  readonly clock?: 'cpu' | 'wall' | 'own';
  /** The candidate must be at least this many times as fast as the (scaled) reference. */
  readonly atLeast: number;
  /** Further figures, asked for after measuring: shown and written down, not judged. */
  readonly more?: () => Readonly<Record<string, number>>;
  /** Throws if the two don't give the same answer; called once, before measuring. */
  readonly check: () => void | Promise<void>;
}

/** What a benchmark file exports under the name `measures`. */
export type Measures = readonly Measure[] | (() => readonly Measure[] | Promise<readonly Measure[]>);

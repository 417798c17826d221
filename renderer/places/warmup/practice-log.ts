import type { Result } from '../../../core/base/result.ts';
import { type DecisionKind, EQUAL_WITHIN } from '../../../core/review/decision.ts';
import type { DealKind } from '../../../core/warmup/deal-kinds.ts';
import type { PracticeEntry } from '../../../core/warmup/history.ts';
import { ownMisses } from '../../../core/warmup/own-misses.ts';
import { SaveQueue, type SaveStatus } from '../../session/save-queue.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { today } from './answers.ts';

/** The practice history: what was answered, guessed and missed. Entries are kept in the background. */
export class PracticeLog {
  readonly #desk: AppContext['desk'];
  readonly #queue: SaveQueue;
  #entries: readonly PracticeEntry[] = [];

  constructor(desk: AppContext['desk'], tell: () => void) {
    this.#desk = desk;
    this.#queue = new SaveQueue(tell);
  }

  get entries(): readonly PracticeEntry[] {
    return this.#entries;
  }
  get saved(): SaveStatus {
    return this.#queue.status;
  }

  /** Reads what was kept before. */
  async read(): Promise<Result<null>> {
    const history = await this.#desk.practice({ do: 'history' });
    if (!history.ok) return history;
    this.#entries = history.value.entries;
    return { ok: true, value: null };
  }

  note(...entries: readonly PracticeEntry[]): void {
    this.#entries = [...this.#entries, ...entries];
    this.#queue.add({ run: () => this.#desk.practice({ do: 'note', entries }) });
  }

  /**
   * Takes in the costly passes of games that were looked back at, of each game once; those of the
   * demonstration are nobody's. `kindOf` tells the kind of a rack, null if it can't.
   */
  async takeMisses(kindOf: (rack: string) => Promise<DealKind | null>): Promise<void> {
    const [games, findings] = await Promise.all([this.#desk.listGames(), this.#desk.readFindings(null)]);
    if (!games.ok || !findings.ok) return;
    const played = new Set(games.value.filter(({ demo }) => !demo).map(({ id }) => id));
    const known = new Set(this.#entries.map((entry) => (entry.type === 'miss' ? entry.source : '')));
    for (const { id, choices } of findings.value) {
      const costly = choices?.some(({ kind, cost, forced }) => isPass(kind) && !forced && cost > EQUAL_WITHIN);
      if (played.has(id) && !known.has(id) && costly === true) await this.#takeMissesOf(id, kindOf);
    }
  }

  async #takeMissesOf(source: string, kindOf: (rack: string) => Promise<DealKind | null>): Promise<void> {
    const found = await this.#desk.readFindings(source);
    const review = found.ok ? found.value[0]?.review : undefined;
    for (const { rack, halfWidth, ...miss } of ownMisses(source, review?.decisions ?? [])) {
      const kind = await kindOf(rack);
      const within = halfWidth === null ? {} : { halfWidth };
      if (kind !== null) this.note({ type: 'miss', day: today(), kind, source, ...miss, ...within });
    }
  }
}

function isPass(kind: DecisionKind): boolean {
  return kind === 'pass' || kind === 'courtesy';
}

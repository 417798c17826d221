import type { Result } from '../../../core/base/result.ts';
import type { PassStep } from '../../../core/exchange/steps.ts';
import { type DecisionKind, EQUAL_WITHIN, isRight, type Judgement } from '../../../core/review/decision.ts';
import type { DealKind } from '../../../core/warmup/deal-kinds.ts';
import type { Asked, PracticeEntry } from '../../../core/warmup/history-file.ts';
import { PRACTICE } from '../../../core/warmup/progress.ts';
import { ownMisses } from '../../../core/warmup/session.ts';
import { answerDue, type WarmUp } from '../../../core/warmup/warm-up.ts';
import { SaveQueue, type SaveStatus } from '../../session/save-queue.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { today } from './room-parts.ts';

/** The practice history: what was answered, guessed and missed. Entries are kept in the background. */
export class PracticeLog {
  readonly #desk: AppContext['desk'];
  readonly #queue: SaveQueue;
  #entries: readonly PracticeEntry[] = [];
  /** What is not in the file yet. */
  #waiting: readonly PracticeEntry[] = [];

  constructor(desk: AppContext['desk'], notify: () => void) {
    this.#desk = desk;
    this.#queue = new SaveQueue(notify);
  }

  get entries(): readonly PracticeEntry[] {
    return this.#entries;
  }
  get saved(): SaveStatus {
    return this.#queue.status;
  }

  retrySaving(): void {
    this.#queue.retry();
  }

  /** Reads what was kept before. */
  async read(): Promise<Result<null>> {
    const history = await this.#desk.practiceHistory();
    if (!history.ok) return history;
    this.#entries = [...history.value, ...this.#waiting];
    return { ok: true, value: null };
  }

  note(...entries: readonly PracticeEntry[]): void {
    this.#entries = [...this.#entries, ...entries];
    this.#waiting = [...this.#waiting, ...entries];
    this.#queue.add({ run: async () => await this.#keep(entries) });
  }

  async #keep(entries: readonly PracticeEntry[]): Promise<Result<unknown>> {
    const kept = await this.#desk.notePractice(entries);
    if (kept.ok) this.#waiting = this.#waiting.filter((entry) => !entries.includes(entry));
    return kept;
  }

  /**
   * Adds the costly passes of games that were looked back at, once for each game; the demonstration
   * does not count. `kindOf` finds the kind of a rack, null if it fails.
   */
  async addMisses(kindOf: (rack: string) => Promise<DealKind | null>): Promise<void> {
    const [games, findings] = await Promise.all([this.#desk.listGames(), this.#desk.readFindings(null)]);
    if (!games.ok || !findings.ok) return;
    const played = new Set(games.value.filter(({ demo }) => !demo).map(({ id }) => id));
    const known = new Set(this.#entries.map((entry) => (entry.type === 'miss' ? entry.source : '')));
    for (const { id, choices } of findings.value) {
      const costly = choices?.some(({ kind, cost, forced }) => isPass(kind) && !forced && cost > EQUAL_WITHIN);
      if (played.has(id) && !known.has(id) && costly === true) await this.#addMissesOf(id, kindOf);
    }
  }

  async #addMissesOf(source: string, kindOf: (rack: string) => Promise<DealKind | null>): Promise<void> {
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

/** A decision of practice with what it cost. */
export interface Decided extends Judgement {
  readonly kind: DealKind;
  readonly step: PassStep;
  /** The player's own miss that it repeats; null for none. */
  readonly miss: string | null;
  /** How long it took, if the clock was on. */
  readonly seconds: number | null;
  /** The sitting that it belongs to. */
  readonly sitting?: string;
  /** The problem with its answer, and the mark of the card. */
  readonly asked: { readonly warmUp: WarmUp; readonly card: string };
}

/** What the history keeps of a decision: the answer, and a new miss if it was costly and repeated none. */
export function entriesOf({ seconds, miss, verdict, halfWidth, sitting, asked, ...judged }: Decided): PracticeEntry[] {
  const day = today();
  const decision = { day, ...judged, ...(halfWidth === null ? {} : { halfWidth }) };
  const answer: PracticeEntry = {
    type: 'answer',
    id: crypto.randomUUID(),
    miss,
    verdict,
    ...decision,
    ...(seconds === null ? {} : { seconds }),
    ...(sitting === undefined ? {} : { sitting }),
    ...askedOf(asked),
  };
  if (miss !== null || isRight(verdict)) return [answer];
  return [answer, { type: 'miss', id: crypto.randomUUID(), source: PRACTICE, ...decision }];
}

/** The longest words that are kept of a reason. */
const MOST_WORDS = 2000;

function askedOf({ warmUp, card }: Decided['asked']): { readonly asked?: Asked } {
  const due = answerDue(warmUp);
  if (due === null) return {};
  const { rack, gone, attempt } = due;
  const { seat, code } = warmUp.item;
  const dealt = code === undefined || warmUp.past.length > 0 ? {} : { code };
  const { give, blind, stops, keeps, aims, why } = attempt;
  const words = why.slice(0, MOST_WORDS);
  return { asked: { rack, gone, seat, ...dealt, give, blind, stops, keeps, aims: [...aims], why: words, card } };
}

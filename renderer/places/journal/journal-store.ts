import type { Result } from '../../../core/base/result.ts';
import { type JournalFilter, filterGames, type SortField, sortGames } from '../../../core/journal/filter.ts';
import { findingsKey } from '../../../core/journal/findings-key.ts';
import type { SeasonGame } from '../../../core/journal/season.ts';
import { FIRST_REACH_MODEL } from '../../../core/reading/reach-model.ts';
import type { Desk, Findings } from '../../../main/desk/desk.ts';
import type { WorkerClient } from '../../worker/client.ts';
import type { JournalCalls } from '../../worker/journal-calls.ts';
import { dayOf } from './dates.ts';
import { type JournalGame, journalGame } from './journal-game.ts';
import { startJournalWorker } from './journal-worker.ts';

/** How the list is ordered. */
export interface JournalSort {
  readonly field: SortField;
  readonly rising: boolean;
}

const NEWEST_FIRST: JournalSort = { field: 'startedAt', rising: false };

/** The games as the Journal's parts share them: the list, its filter, and what the engine found out about each. */
export class JournalStore {
  readonly desk: Desk;
  readonly worker: WorkerClient<JournalCalls>;
  /** One more for the look ahead of a look-back, so that nothing else waits for it. */
  readonly aheadWorker: WorkerClient<JournalCalls>;
  readonly #listeners = new Set<() => void>();
  #games: readonly JournalGame[] | null = null;
  #byId: ReadonlyMap<string, JournalGame> = new Map();
  #findings: ReadonlyMap<string, Findings> = new Map();
  #filter: JournalFilter = {};
  #sort: JournalSort = NEWEST_FIRST;
  #shown: readonly JournalGame[] | null = null;
  #trouble = '';
  /** How often the games were let go: those that come after that are nobody's any more. */
  #releases = 0;

  constructor(desk: Desk, worker = startJournalWorker(), aheadWorker = startJournalWorker()) {
    this.desk = desk;
    this.worker = worker;
    this.aheadWorker = aheadWorker;
  }

  /** All games, newest first; null until they have come. */
  get games(): readonly JournalGame[] | null {
    return this.#games;
  }
  get trouble(): string {
    return this.#trouble;
  }
  get filter(): JournalFilter {
    return this.#filter;
  }
  get sort(): JournalSort {
    return this.#sort;
  }

  /** The games that pass the filter, in the order chosen. */
  get shown(): readonly JournalGame[] {
    this.#shown ??= sortGames(
      filterGames(this.#games ?? [], this.#filter, {
        dayOf,
        dealtAwayOf: ({ id }) =>
          this.#findingsById(id)?.figures.aways.find(({ moment }) => moment === 'deal')?.away ?? null,
      }),
      this.#sort.field,
      this.#sort.rising,
    );
    return this.#shown;
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Fetches the games and what is known of them; they are dropped if the Journal is left meanwhile. */
  async load(): Promise<void> {
    const releases = this.#releases;
    const [entries, findings] = await Promise.all([this.desk.listGames(), this.desk.readFindings(null)]);
    if (releases !== this.#releases) return;
    this.#trouble = entries.ok ? '' : entries.problem.message;
    this.#setGames(entries.ok ? entries.value.map(journalGame) : (this.#games ?? []));
    if (findings.ok) this.#findings = new Map(findings.value.map((each) => [each.id, each]));
    this.#changed();
  }

  /** Lets go of the games when the Journal is left: a season of them need not stay in memory. Filter and order stay. */
  release(): void {
    this.#releases += 1;
    this.#games = null;
    this.#byId = new Map();
    this.#findings = new Map();
    this.#shown = null;
  }

  game(id: string): JournalGame | undefined {
    return this.#byId.get(id);
  }

  /** What a game's findings must be made from to hold. */
  keyOf(game: JournalGame): string {
    return findingsKey(game, FIRST_REACH_MODEL);
  }

  /** What is known of a game, if it still holds. */
  findingsOf(game: JournalGame): Findings | undefined {
    const findings = this.#findings.get(game.id);
    return findings?.key === this.keyOf(game) ? findings : undefined;
  }

  asSeason(games: readonly JournalGame[]): SeasonGame[] {
    return games.map((summary) => ({ summary, figures: this.findingsOf(summary)?.figures ?? null }));
  }

  narrow(filter: JournalFilter): void {
    this.#filter = filter;
    this.#changed();
  }

  order(sort: JournalSort): void {
    this.#sort = sort;
    this.#changed();
  }

  async remove(id: string): Promise<Result<null>> {
    const answer = await this.desk.removeGame(id);
    if (answer.ok) {
      this.#setGames((this.#games ?? []).filter((game) => game.id !== id));
      this.#changed();
    }
    return answer;
  }

  /** Keeps findings here and with the desk. */
  async learn(findings: readonly Findings[]): Promise<Result<null>> {
    const rows = findings.map(({ review: _, ...row }) => [row.id, row] as const);
    this.#findings = new Map([...this.#findings, ...rows]);
    this.#changed();
    return await this.desk.keepFindings(findings);
  }

  #setGames(games: readonly JournalGame[]): void {
    this.#games = games;
    this.#byId = new Map(games.map((game) => [game.id, game]));
  }

  #findingsById(id: string): Findings | undefined {
    const game = this.#findings.has(id) ? this.game(id) : undefined;
    return game === undefined ? undefined : this.findingsOf(game);
  }

  #changed(): void {
    this.#shown = null;
    for (const listener of this.#listeners) listener();
  }
}

const stores = new WeakMap<Desk, JournalStore>();

/** The Journal's store of a desk: one for the window, so that the filter stays while one looks elsewhere. */
export function journalStore(desk: Desk): JournalStore {
  const store = stores.get(desk) ?? new JournalStore(desk);
  stores.set(desk, store);
  return store;
}

import { failure, type Result } from '../../../core/base/result.ts';
import { markedCard } from '../../../core/card/mark.ts';
import {
  areExamplesCounted,
  filterGames,
  type JournalFilter,
  type SortField,
  sortGames,
} from '../../../core/journal/filter.ts';
import { findingsKey } from '../../../core/journal/findings-key.ts';
import type { Findings } from '../../../core/journal/findings.ts';
import type { SeasonGame } from '../../../core/journal/season.ts';
import { FIRST_REACH_MODEL } from '../../../core/reading/reach-model.ts';
import type { Desk, GameEntry, ImportedGames } from '../../../main/desk/desk.ts';
import { sendGames } from '../../backup/send-games.ts';
import { inPieces } from '../../session/in-pieces.ts';
import { DEMO_CARD } from '../../session/card-opener.ts';
import { Store } from '../../session/store.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { type Engine, engine } from '../../worker/engine.ts';
import { dayOf, type JournalGame, journalGame } from './journal-game.ts';

/** How the list is ordered. */
export interface JournalSort {
  readonly field: SortField;
  readonly rising: boolean;
}

const NEWEST_FIRST: JournalSort = { field: 'startedAt', rising: false };

/** The games as the Journal's parts share them: the list, its filter, and what the engine found out about each. */
export class JournalStore extends Store {
  readonly desk: Desk;
  readonly worker: Engine;
  /** One more for the look-back of a game, so that nothing else waits for it. */
  readonly lookBackWorker: Engine;
  #games: readonly JournalGame[] | null = null;
  #byId: ReadonlyMap<string, JournalGame> = new Map();
  #findings = new Map<string, Findings>();
  #known = 0;
  #filter: JournalFilter = {};
  #sort: JournalSort = NEWEST_FIRST;
  #shown: readonly JournalGame[] | null = null;
  #counted: readonly JournalGame[] | null = null;
  #trouble = '';
  /** Generation counter: results started under an older generation are discarded. */
  #generation = 0;

  constructor(desk: Desk, worker = engine(), lookBackWorker = engine()) {
    super();
    this.desk = desk;
    this.worker = worker;
    this.lookBackWorker = lookBackWorker;
  }

  /** All games, newest first; null until they are loaded. */
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

  /** Whether figures are made of the examples, not of the player's own games. */
  get examples(): boolean {
    return areExamplesCounted(this.#games ?? [], this.#filter);
  }

  /** Of the games shown, those that figures are made of: examples stay apart. */
  get counted(): readonly JournalGame[] {
    const { examples } = this;
    this.#counted ??= this.shown.filter((game) => game.demo === examples);
    return this.#counted;
  }

  /** Loads the games and what is known of them; discarded if the Journal is left meanwhile. */
  async load(): Promise<void> {
    const generation = this.#generation;
    const [entries, findings] = await Promise.all([this.desk.listGames(), this.desk.readFindings(null)]);
    if (generation !== this.#generation) return;
    const games: JournalGame[] = [];
    if (entries.ok) await inPieces(eachAdded(entries.value, games), new AbortController().signal);
    if (generation !== this.#generation) return;
    this.#trouble = entries.ok ? '' : entries.problem.message;
    this.#setGames(entries.ok ? games : (this.#games ?? []));
    if (findings.ok) this.#findings = new Map(findings.value.map((each) => [each.id, each]));
    this.#known += 1;
    this.#changed();
  }

  /** Forgets the games when the Journal is left: a whole season need not stay in memory. Filter and order stay. */
  release(): void {
    this.#generation += 1;
    this.#games = null;
    this.#byId = new Map();
    this.#findings = new Map();
    this.#shown = null;
    this.#counted = null;
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

  /** Grows whenever more is known of the games. */
  get known(): number {
    return this.#known;
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
    for (const { review: _, ...row } of findings) this.#findings.set(row.id, row);
    this.#known += 1;
    // Of all filters one alone asks what was found out.
    if (this.#filter.dealtAway === undefined) this.notify();
    else this.#changed();
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
    this.#counted = null;
    this.notify();
  }
}

/** Games of the list made ready between two places where the work may pause. */
const HEAP = 100;

function* eachAdded(entries: readonly GameEntry[], games: JournalGame[]): Generator<void> {
  for (const [place, entry] of entries.entries()) {
    games.push(journalGame(entry));
    if (place % HEAP === 0) yield;
  }
}

const stores = new WeakMap<Desk, JournalStore>();

/** The Journal's store of a desk: one for the window, so that the filter stays while one looks elsewhere. */
export function journalStore(desk: Desk): JournalStore {
  const store = stores.get(desk) ?? new JournalStore(desk);
  stores.set(desk, store);
  return store;
}

/** Invents the example season in the worker and puts it into the journal; `report` gets the part done, 0 to 1. */
export async function addSeason(
  { desk, about }: AppContext,
  store: JournalStore,
  report: (done: number) => void,
): Promise<Result<ImportedGames>> {
  const card = await desk.openCard(DEMO_CARD);
  if (!card.ok) return card;
  const document: unknown = JSON.parse(card.value.text);
  const request = { card: markedCard(document), appVersion: about.appVersion };
  const made = await store.worker.ask('season', request, { onProgress: report });
  if (!made.ok) return failure('not-made', made.problem.message);
  const sent = await sendGames(desk, made.value, () => undefined);
  await store.load();
  return sent;
}

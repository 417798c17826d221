import type { Rate } from '../../../core/base/statistics.ts';
import type { ChoiceCost, LedgerSums } from '../../../core/journal/findings.ts';
import { type AdviceRate, adviceRates, type SeasonGame, winRates } from '../../../core/journal/season.ts';
import type { BarRow } from '../../charts/wr-bars.ts';
import type { CoursePoint } from '../../charts/wr-course.ts';
import { inPieces } from '../../session/in-pieces.ts';
import type { JournalGame } from './journal-game.ts';
import type { JournalStore } from './journal-store.ts';
import {
  adviceChart,
  awayChart,
  costChart,
  type Drawn,
  jokerChart,
  luckChart,
  meanJokers,
  pointsChart,
  sectionChart,
  winChart,
} from './season-charts.ts';

/** All that the season shows; a chart that has nothing to show is null. */
export interface SeasonCharts {
  readonly wins: Drawn<BarRow> & { readonly all: Rate };
  readonly advice: (Drawn<BarRow> & { readonly rates: readonly AdviceRate[] }) | null;
  readonly jokers: (Drawn<BarRow> & { readonly mean: number }) | null;
  readonly points: ReturnType<typeof pointsChart>;
  readonly luck: (Drawn<BarRow> & { readonly games: number }) | null;
  readonly cost: Drawn<BarRow> & { readonly free: number; readonly judged: number; readonly due: number };
  readonly sections: Drawn<BarRow>;
  readonly away: Drawn<CoursePoint>;
}

/** Games looked at between two places where the work may pause. */
const HEAP = 250;
/** The least time, in ms, from one sum of what was found out to the next: many games are measured in a second. */
const PACE = 500;

/**
 * The sums of the season, kept until the games that they are of, or what is known of these, change. They are made in
 * pieces; the ones before stay until all of the new ones are there.
 */
export class SeasonSums {
  readonly #store: JournalStore;
  readonly #notify: () => void;
  #charts: Partial<SeasonCharts> = {};
  #games: readonly JournalGame[] | null = null;
  /** How much was known of the games; see `JournalStore.known`. */
  #known = 0;
  #stop = new AbortController();
  #isMaking = false;
  #madeAt = -PACE;
  #later: ReturnType<typeof setTimeout> | undefined;

  /** `notify` is called whenever there is something new to draw. */
  constructor(store: JournalStore, notify: () => void) {
    this.#store = store;
    this.#notify = notify;
  }

  /** As many as there are by now. */
  get charts(): Partial<SeasonCharts> {
    return this.#charts;
  }

  /** Brings the sums up to date; while games are measured, `measuring`, those of what was found out can wait. */
  refresh(measuring: boolean): void {
    const { counted, known } = this.#store;
    if (counted !== this.#games) void this.#make(counted, [listCharts(counted), foundCharts(counted, this.#store)]);
    else if (known !== this.#known && !measuring && !this.#isMaking) this.#makeFound(counted);
  }

  stop(): void {
    this.#stop.abort();
    clearTimeout(this.#later);
  }

  #makeFound(games: readonly JournalGame[]): void {
    clearTimeout(this.#later);
    const wait = this.#madeAt + PACE - performance.now();
    if (wait > 0) this.#later = setTimeout(this.#notify, wait);
    else void this.#make(games, [foundCharts(games, this.#store)]);
  }

  async #make(games: readonly JournalGame[], makers: readonly Maker[]): Promise<void> {
    this.#stop.abort();
    const stop = new AbortController();
    this.#stop = stop;
    this.#games = games;
    this.#known = this.#store.known;
    this.#isMaking = true;
    const isFirst = Object.keys(this.#charts).length === 0;
    let made: Partial<SeasonCharts> = {};
    const taken = (charts: Partial<SeasonCharts>): void => {
      made = { ...made, ...charts };
      // What stands on the page is replaced as a whole; an empty page fills from the top.
      if (isFirst) this.#show(made);
    };
    await inPieces(takenFrom(makers, taken), stop.signal);
    if (stop.signal.aborted) return;
    this.#isMaking = false;
    this.#madeAt = performance.now();
    this.#show({ ...this.#charts, ...made });
  }

  #show(charts: Partial<SeasonCharts>): void {
    this.#charts = charts;
    this.#notify();
  }
}

/** Yields what is made; nothing, where the work may only pause. */
type Maker = Generator<Partial<SeasonCharts> | undefined, void, void>;

function* takenFrom(makers: readonly Maker[], take: (charts: Partial<SeasonCharts>) => void): Generator<void> {
  for (const maker of makers) {
    for (const made of maker) {
      if (made !== undefined) take(made);
      yield;
    }
  }
}

/** What the games' list alone tells. */
function* listCharts(games: readonly JournalGame[]): Maker {
  yield { wins: { ...winChart(games), all: winRates(games).all } };
  const rates = adviceRates(games);
  yield { advice: rates.every(({ advice }) => advice === null) ? null : { ...adviceChart(rates), rates } };
  const mean = meanJokers(games);
  yield { jokers: mean === null ? null : { ...jokerChart(games), mean } };
  yield { points: pointsChart(games) };
}

/** What was found out about each of the games. */
function* foundCharts(games: readonly JournalGame[], store: JournalStore): Maker {
  const season: SeasonGame[] = [];
  const ledgers: LedgerSums[] = [];
  const judged: { readonly startedAt: string; readonly choices: readonly ChoiceCost[] }[] = [];
  for (const [place, game] of games.entries()) {
    const findings = store.findingsOf(game);
    season.push({ summary: game, figures: findings?.figures ?? null });
    if (findings?.ledger !== undefined) ledgers.push(findings.ledger);
    const choices = findings?.choices ?? null;
    if (choices !== null) judged.push({ startedAt: game.startedAt, choices });
    if (place % HEAP === 0) yield;
  }
  yield { luck: ledgers.length === 0 ? null : { ...luckChart(ledgers), games: ledgers.length } };
  judged.sort((one, other) => (one.startedAt < other.startedAt ? -1 : Number(one.startedAt > other.startedAt)));
  const choices = judged.flatMap((each) => each.choices);
  const free = choices.filter(({ forced }) => !forced).length;
  yield;
  yield { cost: { ...costChart(choices), free, judged: judged.length, due: games.length - judged.length } };
  yield { sections: sectionChart(season) };
  yield { away: awayChart(season) };
}

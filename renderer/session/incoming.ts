import { success } from '../../core/base/result.ts';
import { markedCard } from '../../core/card/mark.ts';
import { legalEvents } from '../../core/game/legal.ts';
import type { ExchangeState } from '../../core/exchange/state.ts';
import { replay } from '../../core/game/state.ts';
import { type IncomingRates, journalRates, PassLog } from '../../core/table/incoming-rates.ts';
import type { Desk } from '../../main/desk/desk.ts';
import type { CardFit } from '../../core/chance/table-figures.ts';
import type { FitRequest } from '../../core/engine/chance-questions.ts';
import { Ask } from './ask.ts';
import type { CardFits } from './card-fits.ts';
import type { GameSession } from './game-session.ts';
import { Store } from './store.ts';

/** How long after the start, in ms, the own games are looked through; the start itself comes first. */
const SETTLING = 3000;

export interface IncomingParts {
  readonly session: GameSession;
  readonly fits: Pick<CardFits, 'fit'>;
  /** The passes of the player's own games. */
  readonly readLog: (signal: AbortSignal) => Promise<PassLog>;
}

/**
 * What is taken to come in by passes: as people pass, or all tiles alike if the player chooses so. How people pass is
 * counted in the player's own games if they hold enough passes, else at the simulated table.
 */
export class IncomingChoice extends Store {
  readonly #session: GameSession;
  /** The passes logged before a game, asked anew for every game. */
  readonly #log: Ask<(signal: AbortSignal) => Promise<PassLog>, never, PassLog>;
  /** The card's games at the table that is played at, which say how its players pass. */
  readonly #games: Ask<FitRequest, CardFit, CardFit>;
  readonly #readLog: (signal: AbortSignal) => Promise<PassLog>;
  #chosen = true;
  #settled = false;

  constructor({ session, fits, readLog }: IncomingParts) {
    super();
    this.#session = session;
    this.#readLog = readLog;
    this.#log = new Ask(async (read, { signal }) => success(await read(signal)), { keeps: true });
    this.#games = new Ask((request, report) => fits.fit(request, report));
    for (const ask of [this.#log, this.#games]) {
      ask.subscribe(() => {
        if (ask.answer.status !== 'done' && ask.early.status !== 'done') return;
        this.#refresh();
        this.notify();
      });
    }
    session.subscribe(() => this.#refresh());
    this.#refresh();
    setTimeout(() => {
      this.#settled = true;
      this.#refresh();
    }, SETTLING);
  }

  /** Whether tiles are taken to come in as people pass. */
  get byRates(): boolean {
    return this.#chosen;
  }

  /** The rates that count now; null while all tiles are alike, and until the rates have been counted. */
  get rates(): IncomingRates | null {
    // Until the card's games have been played, those of other cards stand in.
    const [log, games] = [this.#log.answer.value, this.#games.answer.value ?? this.#games.early.value];
    if (!this.byRates || games === null || log === null) return null;
    return journalRates(log, games.table.incoming);
  }

  /** The rates that count now with any card's games, for a look ahead away from the Table; null while all tiles are alike. */
  async ratesFor({ table }: Pick<CardFit, 'table'>, signal: AbortSignal): Promise<IncomingRates | null> {
    if (!this.#chosen) return null;
    const log = this.#log.answer.value ?? (await this.#readLog(signal));
    return journalRates(log, table.incoming);
  }

  choose(byRates: boolean): void {
    this.#chosen = byRates;
    this.#refresh();
    this.notify();
  }

  /** Counts what is wanted and not yet known: soon after the start, so that it is there when a pass is due. */
  #refresh(): void {
    const { card, id, state, table } = this.#session;
    if (!this.#settled && legalEvents(state).give === null) return;
    void this.#log.ask(this.#readLog, id);
    const marked = markedCard(card);
    if (this.byRates) void this.#games.ask({ card: marked, table }, `${marked.mark} ${table}`);
  }
}

/** Tells one state of the rates from another. */
export function ratesKey(rates: IncomingRates | null): string {
  return rates === null ? 'even' : `${rates.source} ${rates.passes} ${rates.classes.map(({ rate }) => rate).join(' ')}`;
}

/** The newest games show what comes in; more would only take longer. */
const MOST_GAMES = 60;

/**
 * A way to read what came in by the passes of the player's own games; games that can't be read are left
 * out. A game that has not changed since the last reading is not opened again.
 */
export function passLogReader(desk: Pick<Desk, 'listGames' | 'openGame'>): (signal?: AbortSignal) => Promise<PassLog> {
  let known: ReadonlyMap<string, ExchangeState | null> = new Map();
  return async (signal) => {
    const games = await desk.listGames();
    if (!games.ok) return new PassLog();
    const read = new Map<string, ExchangeState | null>();
    for (const { id, events, lastEventAt } of games.value.filter(({ demo }) => !demo).slice(0, MOST_GAMES)) {
      if (signal?.aborted === true) break;
      const moment = `${id} ${events} ${lastEventAt}`;
      read.set(moment, known.get(moment) ?? (await exchangeOf(desk, id)));
    }
    known = read;
    return logOf(read.values());
  };
}

async function exchangeOf(desk: Pick<Desk, 'openGame'>, id: string): Promise<ExchangeState | null> {
  const record = await desk.openGame(id);
  return record.ok ? replay(record.value.events).state.exchange : null;
}

function logOf(exchanges: Iterable<ExchangeState | null>): PassLog {
  const log = new PassLog();
  for (const exchange of exchanges) if (exchange !== null) log.note(exchange);
  return log;
}

import type { ExchangeState } from '../../core/exchange/state.ts';
import { replay } from '../../core/game/state.ts';
import { PassLog } from '../../core/table/incoming-rates.ts';
import type { Desk } from '../../main/desk/desk.ts';

/** The newest games tell what comes in; more would only take longer. */
const MOST_GAMES = 60;

/**
 * A way to read what came in by the passes of the player's own games; games that can't be read are left
 * out. A game that has not changed since the last reading is not opened again.
 */
export function passLogReader(desk: Pick<Desk, 'listGames' | 'openGame'>): () => Promise<PassLog> {
  let known: ReadonlyMap<string, ExchangeState | null> = new Map();
  return async () => {
    const games = await desk.listGames();
    if (!games.ok) return new PassLog();
    const read = new Map<string, ExchangeState | null>();
    for (const { id, events, lastEventAt } of games.value.filter(({ demo }) => !demo).slice(0, MOST_GAMES)) {
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

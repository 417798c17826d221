import { replay } from '../../core/game/state.ts';
import { PassLog } from '../../core/table/incoming-rates.ts';
import type { Desk } from '../../main/desk/desk.ts';

/** The newest games tell what comes in; more would only take longer. */
const MOST_GAMES = 60;

/** What came in by the passes of the player's own games; games that can't be read are left out. */
export async function readPassLog(desk: Pick<Desk, 'listGames' | 'openGame'>): Promise<PassLog> {
  const log = new PassLog();
  const games = await desk.listGames();
  if (!games.ok) return log;
  for (const { id } of games.value.filter(({ demo }) => !demo).slice(0, MOST_GAMES)) {
    const record = await desk.openGame(id);
    const exchange = record.ok ? replay(record.value.events).state.exchange : null;
    if (exchange !== null) log.note(exchange);
  }
  return log;
}

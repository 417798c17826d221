import { type Result, success } from '../../core/base/result.ts';
import type { GameRecord } from '../../core/game/record.ts';
import type { Desk, ImportedGames } from '../../main/desk/desk.ts';

/** Games in one call: so many at most, and so many letters, which the desk's door lets through. */
const MOST_GAMES = 100;
const MOST_LETTERS = 700_000;

/** Brings games to the desk, batch by batch; `report` gets how many are done. */
export async function sendGames(
  desk: Pick<Desk, 'importGames'>,
  games: readonly GameRecord[],
  report: (done: number) => void,
): Promise<Result<ImportedGames>> {
  let total: ImportedGames = { added: 0, copied: 0, same: 0 };
  let done = 0;
  for (const batch of batches(games)) {
    const answer = await desk.importGames(batch);
    if (!answer.ok) return answer;
    const { added, copied, same } = answer.value;
    total = { added: total.added + added, copied: total.copied + copied, same: total.same + same };
    done += batch.length;
    report(done);
  }
  return success(total);
}

function* batches(games: readonly GameRecord[]): Generator<GameRecord[], void, void> {
  let batch: GameRecord[] = [];
  let letters = 0;
  for (const game of games) {
    const size = JSON.stringify(game).length;
    if (batch.length === MOST_GAMES || (batch.length > 0 && letters + size > MOST_LETTERS)) {
      yield batch;
      batch = [];
      letters = 0;
    }
    batch.push(game);
    letters += size;
  }
  if (batch.length > 0) yield batch;
}

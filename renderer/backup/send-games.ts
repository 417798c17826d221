import { type Result, success } from '../../core/base/result.ts';
import type { GameRecord } from '../../core/game/record.ts';
import type { Desk, ImportedGames } from '../../main/desk/desk.ts';

/** Games in one call: so many at most, and so many letters, which the desk's door lets through. */
const MOST_GAMES = 100;
const MOST_LETTERS = 700_000;

/** Brings games to the desk, heap by heap; `told` hears how many are done. */
export async function sendGames(
  desk: Pick<Desk, 'importGames'>,
  games: readonly GameRecord[],
  told: (done: number) => void,
): Promise<Result<ImportedGames>> {
  let total: ImportedGames = { added: 0, copied: 0, same: 0 };
  let done = 0;
  for (const heap of heaps(games)) {
    const answer = await desk.importGames(heap);
    if (!answer.ok) return answer;
    const { added, copied, same } = answer.value;
    total = { added: total.added + added, copied: total.copied + copied, same: total.same + same };
    done += heap.length;
    told(done);
  }
  return success(total);
}

function* heaps(games: readonly GameRecord[]): Generator<GameRecord[], void, void> {
  let heap: GameRecord[] = [];
  let letters = 0;
  for (const game of games) {
    const size = JSON.stringify(game).length;
    if (heap.length === MOST_GAMES || (heap.length > 0 && letters + size > MOST_LETTERS)) {
      yield heap;
      heap = [];
      letters = 0;
    }
    heap.push(game);
    letters += size;
  }
  if (heap.length > 0) yield heap;
}

import type { JournalGame } from './journal-game.ts';

/** A game deleted from the list, and the one that stood before it there. */
export interface RemovedGame {
  readonly game: JournalGame;
  /** The id of the row before; null at the top. */
  readonly after: string | null;
}

/** A row of the list: a game, or the place of one that was deleted and can be brought back from there. */
export interface GameRow {
  readonly game: JournalGame;
  readonly isRemoved: boolean;
}

/** The rows of the list: games deleted just now keep their places, so that no other row moves under the pointer. */
export function rowsWith(shown: readonly JournalGame[], removed: readonly RemovedGame[]): GameRow[] {
  const rows = shown.map((game) => ({ game, isRemoved: false }));
  let waiting = removed;
  while (waiting.length > 0) {
    const left = waiting.filter(({ game, after }) => {
      const place = after === null ? -1 : rows.findIndex((row) => row.game.id === after);
      if (after !== null && place < 0) return true;
      rows.splice(place + 1, 0, { game, isRemoved: true });
      return false;
    });
    // The rows before these are not shown now: neither are they.
    if (left.length === waiting.length) break;
    waiting = left;
  }
  return rows;
}

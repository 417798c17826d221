import { fingerprint } from '../base/fingerprint.ts';
import { writeGameFile } from '../game/file/write-game-file.ts';
import { type GameRecord, instant, isLater, lastEnteredAt } from '../game/record.ts';

/** The result of a merge. */
export interface MergedGames {
  /** Every game of both sides, by rising id. */
  readonly games: readonly GameRecord[];
  /** Games that only the other side had. */
  readonly added: number;
  /** Games of which both sides had different versions: the newest edit keeps the id, the other is kept as a copy. */
  readonly copied: number;
}

/**
 * Merges two sets of games. Nothing is lost: of two versions of a game the newest edit keeps the
 * id, the other one becomes a game of its own, its `copyOf` naming the first. The order of merges
 * does not matter, and merging again changes nothing.
 */
export function mergeGames(mine: readonly GameRecord[], theirs: readonly GameRecord[]): MergedGames {
  const kept = new Map<string, GameRecord>();
  for (const game of mine) keep(kept, game);
  const fresh = new Set(theirs.map(({ id }) => id).filter((id) => !kept.has(id)));
  const copied = theirs.reduce((copies, game) => copies + keep(kept, game), 0);
  const games = [...kept.values()].sort((one, other) => (one.id < other.id ? -1 : Number(one.id > other.id)));
  return { games, added: fresh.size, copied };
}

/** When a person last changed a game: as its file says, or the last event entered or corrected if that came later, else its start. */
export function editedAt(game: GameRecord): string {
  const event = lastEnteredAt(game.events);
  const edited = game.editedAt ?? (event === '' ? game.startedAt : event);
  return isLater(event, edited) ? event : edited;
}

/** Puts a game among those kept; 1 if a version had to become a copy, otherwise 0. */
function keep(kept: Map<string, GameRecord>, game: GameRecord): number {
  const other = kept.get(game.id);
  if (other === undefined) {
    kept.set(game.id, game);
    return 0;
  }
  if (writeGameFile(other) === writeGameFile(game)) return 0;
  const [newer, older] = isNewer(game, other) ? [game, other] : [other, game];
  kept.set(newer.id, newer);
  const copy = asCopy(older);
  const isNew = !kept.has(copy.id);
  return Math.max(keep(kept, copy), isNew ? 1 : 0);
}

/** The newest edit; between edits of the same instant the text decides, so that every order agrees. */
function isNewer(one: GameRecord, other: GameRecord): boolean {
  const [a, b] = [instant(editedAt(one)), instant(editedAt(other))];
  return a === b ? writeGameFile(one) > writeGameFile(other) : a > b;
}

/** The version as a game of its own; the same version always makes the same copy. */
function asCopy(game: GameRecord): GameRecord {
  return { ...game, id: idWith(game, '-copy-'), copyOf: game.id };
}

/** The game under another id, where its own can't be used; the same game always gets the same one. */
export function underFreeId(game: GameRecord): GameRecord {
  return { ...game, id: idWith(game, '-') };
}

function idWith(game: GameRecord, between: string): string {
  return `${game.id.slice(0, 40)}${between}${fingerprint(writeGameFile(game))}`;
}

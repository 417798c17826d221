/** A new game's id: its time, so that ids sort, and a few random letters. */
export function newGameId(startedAt: string): string {
  const stamp = startedAt.slice(0, 19).replaceAll(/[-:]/g, '').replace('T', '-');
  return `${stamp}-${crypto.randomUUID().slice(0, 6)}`;
}

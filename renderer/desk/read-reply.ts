import { inPieces } from '../session/in-pieces.ts';

/** How the host begins, parts and ends an answer that is a long list: one member a line. */
const FIRST = '{"ok":true,"value":[\n';
const BETWEEN = ',\n';
const LAST = '\n]}';
/** Members read at once. */
const HEAP = 100;

/** The plain data that a text of the host holds; a long list is read in pieces, so that the window goes on meanwhile. */
export async function readReply(text: string): Promise<unknown> {
  if (!text.startsWith(FIRST) || !text.endsWith(LAST)) return JSON.parse(text);
  // No text inside JSON holds the end of a line as it is.
  const members = text.slice(FIRST.length, -LAST.length).split(BETWEEN);
  const value: unknown[] = [];
  await inPieces(heapsOf(members, value), new AbortController().signal);
  return { ok: true, value };
}

function* heapsOf(members: readonly string[], value: unknown[]): Generator<void> {
  for (let at = 0; at < members.length; at += HEAP) {
    value.push(...(JSON.parse(`[${members.slice(at, at + HEAP).join(BETWEEN)}]`) as unknown[]));
    yield;
  }
}

import type { IncomingMessage } from 'node:http';

/** Reads a request's body as text; undefined when it is larger than `most` bytes or is not UTF-8. */
export async function readBody(request: IncomingMessage, most: number): Promise<string | undefined> {
  if (Number(request.headers['content-length'] ?? 0) > most) return undefined;
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of request) {
    const bytes: Uint8Array = Buffer.from(chunk);
    size += bytes.length;
    if (size > most) return undefined;
    chunks.push(bytes);
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(chunks));
  } catch {
    return undefined;
  }
}

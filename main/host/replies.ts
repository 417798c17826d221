import type { ServerResponse } from 'node:http';
import type { Result } from '../../core/base/result.ts';
import { SAFE_HEADERS } from '../window/headers.ts';

export interface Reply {
  readonly status: number;
  readonly type: string;
  readonly body: string | Uint8Array;
  readonly headers?: Readonly<Record<string, string>>;
}

/** A reply in words for a person. */
export function sentence(status: number, words: string, headers: Readonly<Record<string, string>> = {}): Reply {
  return { status, type: 'text/plain; charset=utf-8', body: `${words}\n`, headers };
}

export function json(status: number, value: unknown): Reply {
  return { status, type: 'application/json; charset=utf-8', body: JSON.stringify(value) };
}

/** A list with more members than this is written one member a line. */
const LONG = 500;

/** What a call of the desk answered. A long list stands one member a line, so that its reader can take it in pieces. */
export function told(result: Result<unknown>): Reply {
  const plain = json(200, result);
  if (!result.ok || !Array.isArray(result.value) || result.value.length <= LONG) return plain;
  return {
    ...plain,
    body: `{"ok":true,"value":[\n${result.value.map((each) => JSON.stringify(each)).join(',\n')}\n]}`,
  };
}

/** Sends a reply; `bare` leaves out the body, for HEAD. */
export function send(response: ServerResponse, { status, type, body, headers }: Reply, bare: boolean): void {
  response.writeHead(status, {
    ...SAFE_HEADERS,
    ...headers,
    'content-type': type,
    'content-length': Buffer.byteLength(body),
  });
  response.end(bare ? undefined : body);
}

import type { ServerResponse } from 'node:http';
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

import type { ServerResponse } from 'node:http';

/** What a page of ours may load and do: its own files, and nothing else. */
export const CONTENT_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self'",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** Sent with every reply. */
export const SAFE_HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy': CONTENT_POLICY,
  'x-content-type-options': 'nosniff',
  'cross-origin-resource-policy': 'same-origin',
  'cross-origin-opener-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
  'cache-control': 'no-store',
};

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

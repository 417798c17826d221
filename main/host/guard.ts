import { randomBytes, timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';

/** Bytes of chance in the token and in a start address: 256 bits. */
const TOKEN_BYTES = 32;

/**
 * Who may speak to the host. The same-origin policy of browsers compares names, not addresses, so a
 * hostile page can make its own name point here; therefore the name is checked, the origin too,
 * and each request must carry a token that only this host's own pages get.
 */
export class Guard {
  readonly #token = randomBytes(TOKEN_BYTES).toString('hex');
  readonly #codes = new Set<string>();
  readonly #hosts: readonly string[];
  readonly #cookie: string;

  constructor(port: number) {
    this.#hosts = [`127.0.0.1:${port}`, `localhost:${port}`];
    this.#cookie = `windrow-${port}`;
  }

  /** True when the request is addressed to us by name and comes from a page of ours or from none. */
  isAddressedToUs({ headers, rawHeaders }: IncomingMessage): boolean {
    const hosts = rawHeaders.filter((_, place) => place % 2 === 0).filter((name) => name.toLowerCase() === 'host');
    if (hosts.length !== 1 || !this.#hosts.includes(headers.host ?? '')) return false;
    if (headers.origin !== undefined && headers.origin !== `http://${headers.host}`) return false;
    const site = headers['sec-fetch-site'];
    return site === undefined || site === 'same-origin' || site === 'none';
  }

  /** True when the request carries the token. */
  isOurs({ headers }: IncomingMessage): boolean {
    const cookies = (headers.cookie ?? '').split(';').map((cookie) => cookie.trim());
    const prefix = `${this.#cookie}=`;
    const given = cookies.filter((cookie) => cookie.startsWith(prefix)).map((cookie) => cookie.slice(prefix.length));
    return given.length === 1 && given.every((token) => isSame(token, this.#token));
  }

  /** A code for a start address; it opens the door once. */
  newCode(): string {
    const code = randomBytes(TOKEN_BYTES).toString('hex');
    this.#codes.add(code);
    return code;
  }

  /** The cookie for a start code; undefined for a code that is unknown or was used before. */
  cookieFor(code: string): string | undefined {
    const known = [...this.#codes].find((other) => isSame(code, other));
    if (known === undefined) return undefined;
    this.#codes.delete(known);
    return `${this.#cookie}=${this.#token}; HttpOnly; SameSite=Strict; Path=/`;
  }
}

/** Compares in a time that tells nothing about where two texts differ. */
function isSame(given: string, secret: string): boolean {
  const [one, other] = [Buffer.from(given), Buffer.from(secret)];
  return one.length === other.length && timingSafeEqual(one, other);
}

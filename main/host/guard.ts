import type { IncomingMessage } from 'node:http';
import { isOwnConnection } from './owner.ts';
import { isSame, newSecret } from './secrets.ts';
import { type Holder, StartCodes } from './start-codes.ts';

/** The header in which a page sends its key with each call. */
const KEY_HEADER = 'x-windrow-key';

/** What a start code gives to a browser: neither opens a call without the other. */
export interface Secrets {
  /** The text of the header that sets the cookie. */
  readonly cookie: string;
  /** Kept by the page, for its own tab. */
  readonly key: string;
}

/**
 * Who may speak to the host. The same-origin policy of browsers compares names, not addresses, so a
 * hostile page can make its own name point here; therefore the name is checked, the origin too.
 * And each request must carry a secret that only this host's own pages get. Cookies know no ports:
 * a browser sends ours to every other server on this computer. So the cookie opens the page, which
 * anyone may know, and a call needs the key besides, which browsers send nowhere by themselves.
 */
export class Guard {
  readonly #token = newSecret();
  readonly #key = newSecret();
  readonly #codes: StartCodes;
  readonly #hosts: readonly string[];
  readonly #cookie: string;

  /** Codes of start addresses live so many milliseconds. */
  constructor(port: number, codeLife: number) {
    this.#codes = new StartCodes(codeLife);
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

  /** True when the request carries the cookie: the page may be loaded. */
  hasCookie({ headers }: IncomingMessage): boolean {
    const cookies = (headers.cookie ?? '').split(';').map((cookie) => cookie.trim());
    const prefix = `${this.#cookie}=`;
    const given = cookies.filter((cookie) => cookie.startsWith(prefix)).map((cookie) => cookie.slice(prefix.length));
    return given.length === 1 && given.every((token) => isSame(token, this.#token));
  }

  /** True when the request carries the key too: a call may be made. */
  mayCall(request: IncomingMessage): boolean {
    return this.hasCookie(request) && isSame(String(request.headers[KEY_HEADER] ?? ''), this.#key);
  }

  /** A code for a start address. */
  newCode(holder: Holder): string {
    return this.#codes.make(holder);
  }

  /** Uses up a start code; undefined when it opens nothing for whoever asks. */
  async secretsFor(code: string, { socket }: IncomingMessage): Promise<Secrets | undefined> {
    if (!(await this.#codes.use(code, () => isOwnConnection(socket)))) return undefined;
    return { cookie: `${this.#cookie}=${this.#token}; HttpOnly; SameSite=Strict; Path=/`, key: this.#key };
  }
}

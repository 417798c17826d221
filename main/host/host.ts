import { createServer, type IncomingMessage, type Server } from 'node:http';
import { expectValue, failure } from '../../core/base/result.ts';
import { callDesk, LARGEST_CALL } from '../desk/calls.ts';
import { openDesk } from '../desk/open.ts';
import type { Desk } from '../desk/desk.ts';
import { readBody } from './body.ts';
import { Guard } from './guard.ts';
import { json, type Reply, send, sentence, told } from './replies.ts';
import type { Holder } from './start-codes.ts';
import { readWindowFile } from '../window/window-files.ts';

export interface HostOptions {
  /** The desk's folder. */
  readonly folder: string;
  /** The built window's folder. */
  readonly root: string;
  /** 0, the default, lets the system choose. */
  readonly port?: number;
  /** Within so many milliseconds a request must have come whole; 30 seconds, if left out. */
  readonly patience?: number;
  /** So many milliseconds a start address lives; `CODE_LIFE`, if left out. */
  readonly codeLife?: number;
  /** Whether a new address is printed when somebody presses Enter in a terminal. */
  readonly printsOnEnter?: boolean;
}

export interface Host {
  /** A start address; it works once, for minutes, and the tab that opens it may go on. */
  readonly url: string;
  /** Another start address, for another tab or browser: of anyone who knows it, if nobody is named. */
  newUrl(holder?: Holder): string;
  /** Why nothing can be saved for now, in words for a person; null where all can be. */
  readonly onlyReading: string | null;
  /** Stops serving and closes the desk. */
  close(): Promise<void>;
}

const ADDRESS = '127.0.0.1';
const PATIENCE = 30_000;

/** How long a start address lives, in milliseconds. */
export const CODE_LIFE = 300_000;

/** How a browser, or a tab of it, gets in again: where somebody listens for Enter, and elsewhere. */
const COME_BACK = {
  enter: 'press Enter in the terminal where Windrow runs, and open the address that it prints.',
  start: 'stop Windrow, start it again, and open the address that it prints.',
} as const;

/**
 * Serves the window and the desk to browsers on this computer. Throws, with a sentence for a
 * person, when the folder is in use or can't be opened.
 */
export async function startHost(options: HostOptions): Promise<Host> {
  const { folder, root, port = 0, patience = PATIENCE, codeLife = CODE_LIFE, printsOnEnter = false } = options;
  const opened = await openDesk({ folder, host: 'browser' });
  if (!opened.ok) throw new Error(opened.problem.message);
  const desk = opened.value;
  const limits = { headersTimeout: patience, requestTimeout: patience, connectionsCheckingInterval: patience / 4 };
  const server = createServer(limits);
  const chosen = await listen(server, port).catch(async (error: unknown) => {
    await desk.close();
    throw new Error(`Another program has the port ${port} on this computer. Close it, then start again.`, {
      cause: error,
    });
  });
  const guard = new Guard(chosen, codeLife);
  const comeBack = COME_BACK[printsOnEnter ? 'enter' : 'start'];
  server.on('request', (request, response) => {
    void answer({ desk, root, guard, comeBack }, request).then((reply) =>
      send(response, reply, request.method === 'HEAD'),
    );
  });
  server.on('upgrade', (_request, socket) => socket.destroy());
  const newUrl = (holder: Holder = 'anyone'): string => `http://${ADDRESS}:${chosen}/start/${guard.newCode(holder)}`;
  const onlyReading = expectValue(await desk.whyOnlyReading());
  return { url: newUrl(), newUrl, onlyReading, close: () => closeAll(server, desk.close) };
}

async function listen(server: Server, port: number): Promise<number> {
  return await new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, ADDRESS, () => {
      const address = server.address();
      if (typeof address === 'object' && address !== null) resolve(address.port);
    });
  });
}

async function closeAll(server: Server, closeDesk: () => Promise<void>): Promise<void> {
  const closed = new Promise((resolve) => server.close(resolve));
  server.closeAllConnections();
  await closed;
  await closeDesk();
}

interface Serving {
  readonly desk: Desk;
  readonly root: string;
  readonly guard: Guard;
  readonly comeBack: string;
}

async function answer(serving: Serving, request: IncomingMessage): Promise<Reply> {
  try {
    return await answerGuarded(serving, request);
  } catch {
    return sentence(500, 'Something went wrong inside Windrow. What was saved before is safe. Load the page again.');
  }
}

async function answerGuarded({ desk, root, guard, comeBack }: Serving, request: IncomingMessage): Promise<Reply> {
  if (!guard.isAddressedToUs(request)) return sentence(403, 'This address is not for you.');
  const path = (request.url ?? '').split('?')[0] ?? '';
  if (path.startsWith('/start/')) return await start({ guard, comeBack }, request, path.slice('/start/'.length));
  if (!guard.hasCookie(request)) return sentence(403, `This browser was not let in: ${comeBack}`);
  if (path.startsWith('/desk/')) {
    if (!guard.mayCall(request)) return sentence(403, `This tab was not let in: ${comeBack}`);
    return await answerCall(desk, request, path.slice('/desk/'.length));
  }
  if (!isReading(request)) return sentence(405, 'Only reading is possible here.', { allow: 'GET, HEAD' });
  const file = await readWindowFile(root, path);
  return file === undefined ? sentence(404, 'There is nothing here.') : { status: 200, ...file };
}

function isReading({ method }: IncomingMessage): boolean {
  return method === 'GET' || method === 'HEAD';
}

/**
 * Exchanges the code of a start address for the secrets. The key goes behind a `#`: that part of an
 * address a browser sends to nobody, and the page takes it out at once.
 */
async function start(
  { guard, comeBack }: Omit<Serving, 'desk' | 'root'>,
  request: IncomingMessage,
  code: string,
): Promise<Reply> {
  const secrets = request.method === 'GET' ? await guard.secretsFor(code, request) : undefined;
  if (secrets === undefined) {
    return sentence(403, `This start address is used up, too old or not yours: ${comeBack}`);
  }
  return sentence(303, 'Welcome.', { location: `/#key=${secrets.key}`, 'set-cookie': secrets.cookie });
}

async function answerCall(desk: Desk, request: IncomingMessage, name: string): Promise<Reply> {
  if (request.method !== 'POST') return sentence(405, 'Calls are sent by POST.', { allow: 'POST' });
  if (!/^application\/json\b/.test(request.headers['content-type'] ?? ''))
    return sentence(415, 'Calls are sent as JSON.');
  const body = await readBody(request, LARGEST_CALL);
  if (body === undefined) return json(413, failure('too-large', 'This is too much at once. Nothing was changed.'));
  const result = await callDesk(desk, name, parsed(body));
  return told(result);
}

function parsed(text: string): unknown {
  try {
    const value: unknown = JSON.parse(text);
    return value;
  } catch {
    return undefined;
  }
}

import { type ChildProcess, spawn } from 'node:child_process';
import { resolve } from 'node:path';
import { failure, type Result } from '../../core/base/result.ts';
import type { Desk } from '../../main/desk/desk.ts';
import { letIn, type Secrets } from './let-in.ts';

/** The built host, as `npm start` runs it. */
const HOST = resolve('dist/host/main.js');
/** Sets another clock in a program that imports it. */
const CLOCK = resolve('tests/attack/support/clock.mjs');
/** So long a start and a call may take, in milliseconds. */
const PATIENCE = 30_000;

const running = new Set<ChildProcess>();
process.on('exit', () => {
  for (const child of running) child.kill('SIGKILL');
});

/** A start that came to nothing: what was said, and the exit code. */
export class Refused extends Error {
  readonly code: number | null;

  constructor(said: string, code: number | null) {
    super(said === '' ? `it ended with ${code} and said nothing` : said);
    this.code = code;
  }
}

export interface StartOptions {
  /** Milliseconds by which its clock differs from ours. */
  readonly clock?: number;
}

/** A Windrow that runs as a program of its own, and a client that was let in. */
export class Windrow {
  /** The desk as a page reaches it. A call that nobody answers has the code `gone`. */
  readonly desk: Desk;
  readonly port: number;
  readonly secrets: Secrets;
  readonly #child: ChildProcess;
  readonly #base: string;

  private constructor(child: ChildProcess, address: string, secrets: Secrets) {
    this.#child = child;
    this.#base = new URL('/', address).href;
    this.port = Number(new URL(address).port);
    this.secrets = secrets;
    const get = (_: object, name: string | symbol): unknown =>
      typeof name === 'string' && name !== 'then'
        ? async (...given: readonly unknown[]) => await this.post(name, JSON.stringify(given))
        : undefined;
    this.desk = new Proxy({}, { get }) as Desk;
  }

  /** Throws `Refused` when it does not open. */
  static async start(folder: string, options: StartOptions = {}): Promise<Windrow> {
    const { child, address } = spawnWindrow(folder, options);
    const url = await address;
    return new Windrow(child, url, await letIn(url));
  }

  get pid(): number {
    return this.#child.pid ?? 0;
  }

  /** A call with these arguments, as text. An answer that is none of a desk has the code `status-…`. */
  async post(call: string, body: string): Promise<Result<unknown>> {
    const headers = { ...this.secrets, 'content-type': 'application/json' };
    const signal = AbortSignal.timeout(PATIENCE);
    try {
      const reply = await fetch(`${this.#base}desk/${call}`, { method: 'POST', headers, body, signal });
      const text = await reply.text();
      if (reply.status !== 200) return failure(`status-${reply.status}`, `status ${reply.status}: ${text.trim()}`);
      return JSON.parse(text) as Result<unknown>;
    } catch (error) {
      return failure('gone', `nobody answered: ${String(error)}`);
    }
  }

  signal(name: 'SIGSTOP' | 'SIGCONT' | 'SIGUSR2'): void {
    this.#child.kill(name);
  }

  /** kill -9: no farewell. */
  async kill(): Promise<void> {
    await ended(this.#child, 'SIGKILL');
  }

  /** Asks it to end, as Ctrl+C does; answers its exit code. */
  async stop(): Promise<number | null> {
    return await ended(this.#child, 'SIGTERM');
  }
}

/** So long a lock that a kill left without content counts as being written just now, in milliseconds. */
const WRITING = 3100;

/** Started again after a start that was killed: once more, if that left half a lock. */
export async function startAfterKill(folder: string, milliseconds: number): Promise<Windrow> {
  await startAndKill(folder, milliseconds);
  return await Windrow.start(folder).catch(async (error: unknown) => {
    if (!(error instanceof Refused)) throw error;
    await new Promise((done) => setTimeout(done, WRITING));
    return await Windrow.start(folder);
  });
}

/** Starts Windrow and kills it after so many milliseconds, whatever it does just then. */
async function startAndKill(folder: string, milliseconds: number): Promise<void> {
  const { child, address } = spawnWindrow(folder, {});
  address.catch(() => undefined);
  await new Promise((done) => setTimeout(done, milliseconds));
  await ended(child, 'SIGKILL');
}

function spawnWindrow(folder: string, { clock }: StartOptions): { child: ChildProcess; address: Promise<string> } {
  const preload = clock === undefined ? [] : ['--import', CLOCK];
  const env = { ...process.env, WINDROW_FOLDER: folder, WINDROW_CLOCK: String(clock ?? 0) };
  const child = spawn(process.execPath, [...preload, HOST], { env, stdio: ['ignore', 'pipe', 'pipe'] });
  running.add(child);
  child.on('close', () => running.delete(child));
  return { child, address: addressOf(child) };
}

async function addressOf(child: ChildProcess): Promise<string> {
  let [out, complaints] = ['', ''];
  return await new Promise((found, reject) => {
    const timer = setTimeout(() => reject(new Refused(`it did not open within ${PATIENCE / 1000} s`, null)), PATIENCE);
    child.stderr?.setEncoding('utf8').on('data', (part: string) => (complaints += part));
    child.stdout?.setEncoding('utf8').on('data', (part: string) => {
      out += part;
      const address = /http:\/\/127\.0\.0\.1:\d+\/\S+(?=\s)/.exec(out)?.[0];
      if (address !== undefined) found(address);
    });
    child.on('error', reject);
    child.on('close', (code) => {
      clearTimeout(timer);
      reject(new Refused(complaints.trim(), code));
    });
  });
}

async function ended(child: ChildProcess, signal: 'SIGKILL' | 'SIGTERM'): Promise<number | null> {
  if (child.exitCode !== null || child.signalCode !== null) return child.exitCode;
  const closed = new Promise<number | null>((done) => child.once('close', done));
  child.kill(signal);
  return await closed;
}

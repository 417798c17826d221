import { spawn } from 'node:child_process';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Host, startHost } from '../../main/host/host.ts';
import { openStart } from './support/let-in.mjs';

/** A user of most systems that owns nothing. */
const NOBODY = 65_534;

let base = '';
let host: Host;

beforeAll(async () => {
  base = await mkdtemp(join(tmpdir(), 'windrow-codes-'));
  await mkdir(join(base, 'window'));
  await writeFile(join(base, 'window', 'index.html'), '<!doctype html><title>Windrow</title>');
  host = await startHost({ folder: join(base, 'desk'), root: join(base, 'window') });
});

afterAll(async () => {
  await host.close();
  await rm(base, { recursive: true });
});

async function statusOf(address: string): Promise<number> {
  return (await fetch(address, { redirect: 'manual' })).status;
}

/** The status that a program of another user gets. */
async function statusFor(user: number, address: string): Promise<number> {
  const script = `fetch(${JSON.stringify(address)}, { redirect: 'manual' }).then(({ status }) => console.log(status))`;
  const child = spawn(process.execPath, ['-e', script], { uid: user, gid: user, cwd: '/', env: {} });
  let said = '';
  child.stdout.on('data', (chunk) => (said += String(chunk)));
  await new Promise((done) => child.on('close', done));
  return Number(said);
}

test('CR-L5: a start address is too old after its time, and a new one opens', async () => {
  const short = await startHost({ folder: join(base, 'short'), root: join(base, 'window'), codeLife: 2000 });
  const [old, late] = [short.newUrl(), short.newUrl('me')];
  await pause(2100);
  expect([await statusOf(old), await statusOf(late)]).toEqual([403, 403]);
  expect(await statusOf(short.newUrl())).toBe(303);
  await short.close();
});

test('CR-L5: of ten browsers that open one address at the same time, one is let in', async () => {
  for (const holder of ['anyone', ...(process.platform === 'linux' ? (['me'] as const) : [])] as const) {
    const address = host.newUrl(holder);
    const all = await Promise.all(Array.from({ length: 10 }, () => statusOf(address)));
    expect(all.filter((status) => status === 303)).toHaveLength(1);
    expect(all.filter((status) => status === 403)).toHaveLength(9);
  }
});

test('CR-L5: a code of other times, an empty one and half of one open nothing, and use nothing up', async () => {
  const address = host.newUrl();
  const half = address.slice(0, -32);
  for (const wrong of [half, `${address}0`, new URL('/start/', address).href, address.toUpperCase()]) {
    expect(await statusOf(wrong).catch(() => 403)).toBe(403);
  }
  expect((await openStart(address)).key).toHaveLength(64);
});

test.skipIf(process.platform !== 'linux')(
  'CR-L5: an address for me alone opens to my own program, also by the longer form of the address',
  async () => {
    expect(await statusOf(host.newUrl('me'))).toBe(303);
    const { port, pathname, host: name } = new URL(host.newUrl('me'));
    const status = await new Promise((resolve, reject) => {
      const sent = request({ host: '::ffff:127.0.0.1', port, path: pathname, headers: { host: name } }, (reply) => {
        reply.resume();
        resolve(reply.statusCode);
      });
      sent.on('error', reject);
      sent.end();
    });
    expect(status).toBe(303);
  },
);

test.skipIf(process.platform !== 'linux' || process.getuid?.() !== 0)(
  'CR-L5: an address for me alone stays shut to another user of the computer, who does not use it up',
  async () => {
    const address = host.newUrl('me');
    expect(await statusFor(NOBODY, address)).toBe(403);
    expect(await statusFor(NOBODY, host.newUrl())).toBe(303);
    expect(await statusOf(address)).toBe(303);
  },
);

test('where a terminal listens for Enter, that is the way to come back in', async () => {
  const options = { folder: join(base, 'listening'), root: join(base, 'window'), printsOnEnter: true };
  const listening = await startHost(options);
  const refused = await fetch(new URL('/', listening.url));
  expect(await refused.text()).toMatch(
    /^This browser was not let in: press Enter in the terminal where Windrow runs, /,
  );
  await listening.close();
});

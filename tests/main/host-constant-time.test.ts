import type Crypto from 'node:crypto';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { type Host, startHost } from '../../main/host/host.ts';
import { openStart } from './support/let-in.mjs';

/** Each pair of texts that the library for it compared, in a time that tells nothing of where they differ. */
const { compared } = vi.hoisted(() => ({ compared: [] as string[][] }));
vi.mock('node:crypto', async (load) => {
  const crypto = await load<typeof Crypto>();
  const timingSafeEqual: typeof crypto.timingSafeEqual = (one, other) => {
    compared.push([one, other].map((each) => Buffer.from(each as Uint8Array).toString()));
    return crypto.timingSafeEqual(one, other);
  };
  return { ...crypto, timingSafeEqual };
});

let base = '';
let host: Host;
let cookie = '';
let key = '';

beforeAll(async () => {
  base = await mkdtemp(join(tmpdir(), 'windrow-compared-'));
  await mkdir(join(base, 'window'));
  await writeFile(join(base, 'window', 'index.html'), '<!doctype html><title>Windrow</title>');
  host = await startHost({ folder: join(base, 'desk'), root: join(base, 'window') });
  ({ cookie, key } = await openStart(host.url));
});
afterAll(async () => {
  await host.close();
  await rm(base, { recursive: true });
});
beforeEach(() => void compared.splice(0));

/** The same text, another last letter. */
const nearly = (secret: string): string => secret.slice(0, -1) + (secret.endsWith('0') ? '1' : '0');

const tokenOf = (set: string): string => set.split('=')[1] ?? '';

test('CR-L5: a wrong cookie is compared with the right one in constant time', async () => {
  await fetch(new URL('/', host.url), { headers: { cookie: nearly(cookie) } });
  expect(compared).toEqual([[nearly(tokenOf(cookie)), tokenOf(cookie)]]);
});

test('CR-L5: so is a wrong key', async () => {
  const headers = { cookie, 'x-windrow-key': nearly(key), 'content-type': 'application/json' };
  const { status } = await fetch(new URL('/desk/about', host.url), { method: 'POST', headers, body: '[]' });
  expect(status).toBe(403);
  expect(compared).toContainEqual([nearly(key), key]);
});

test('CR-L5: so is a wrong start code', async () => {
  const address = host.newUrl();
  const code = address.split('/').at(-1) ?? '';
  expect((await fetch(nearly(address), { redirect: 'manual' })).status).toBe(403);
  expect(compared).toContainEqual([nearly(code), code]);
});

import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { connect, type Socket } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { type Host, startHost } from '../../main/host/host.ts';
import { openStart } from './support/let-in.mjs';

/** So long the host waits for a request to come whole, in milliseconds. */
const PATIENCE = 1200;

let base = '';
let host: Host;
let port = 0;
let cookie = '';
let key = '';

beforeAll(async () => {
  base = await mkdtemp(join(tmpdir(), 'windrow-attacks-'));
  await mkdir(join(base, 'window'));
  await writeFile(join(base, 'window', 'index.html'), '<!doctype html><title>Windrow</title>');
  host = await startHost({ folder: join(base, 'desk'), root: join(base, 'window'), patience: PATIENCE });
  port = Number(new URL(host.url).port);
  ({ cookie, key } = await openStart(host.url));
});

afterEach(async () => {
  for (const socket of open) socket.destroy();
  open.clear();
  expect(await isWell(), 'the host is well after it').toBe(true);
});

afterAll(async () => {
  await host.close();
  await rm(base, { recursive: true });
});

const open = new Set<Socket>();

async function isWell(): Promise<boolean> {
  const headers = { cookie, 'x-windrow-key': key, 'content-type': 'application/json' };
  const reply = await fetch(`http://127.0.0.1:${port}/desk/about`, { method: 'POST', headers, body: '[]' });
  return reply.ok && ((await reply.json()) as { ok: boolean }).ok;
}

/** Sends bytes on a bare connection and gathers what comes until it is closed, or for so long. */
async function raw(bytes: string | Uint8Array, milliseconds = 5000): Promise<string> {
  return await new Promise((resolve) => {
    const socket = connect(port, '127.0.0.1', () => socket.write(bytes));
    open.add(socket);
    let answer = '';
    socket.on('data', (part) => (answer += part.toString('latin1')));
    socket.on('error', () => undefined);
    socket.on('close', () => resolve(answer));
    setTimeout(() => socket.destroy(), milliseconds).unref();
  });
}

function head(method: string, path: string, lines: readonly string[] = []): string {
  return [`${method} ${path} HTTP/1.1`, `Host: 127.0.0.1:${port}`, ...lines, '', ''].join('\r\n');
}

/** Both secrets of a page that was let in, as lines of a head. */
const ours = (): string => `Cookie: ${cookie}\r\nX-Windrow-Key: ${key}`;
const JSON_LINE = 'Content-Type: application/json';

describe('attacks on the local host', () => {
  test('CR-L4: each request of a pipeline is checked by itself', async () => {
    const first = head('GET', '/', [ours()]);
    const second = head('GET', '/');
    const third = head('GET', '/', [ours(), 'Origin: http://evil.example', 'Connection: close']);
    const answers = (await raw(first + second + third)).match(/HTTP\/1\.1 \d+/g);
    expect(answers).toEqual(['HTTP/1.1 200', 'HTTP/1.1 403', 'HTTP/1.1 403']);
  });

  test.each(['OPTIONS', 'TRACE', 'PUT', 'DELETE', 'PATCH', 'PROPFIND', 'SEARCH'])(
    'CR-L6: %s does nothing, with both secrets or with none',
    async (method) => {
      for (const path of ['/', '/index.html', '/desk/about', '/start/x', '*']) {
        for (const lines of [[ours()], []]) {
          const answer = await raw(head(method, path, [...lines, 'Connection: close']));
          expect(answer, path).toMatch(/^HTTP\/1\.1 40[0345]/);
          expect(answer.toLowerCase()).not.toContain('access-control');
        }
      }
    },
  );

  test('CR-L6: it is no proxy: CONNECT and addresses of others are refused', async () => {
    expect(await raw(head('CONNECT', 'evil.example:443', [ours()]))).not.toMatch(/ 200 /);
    for (const address of ['http://evil.example/', `http://127.0.0.1:${port}/`, '//evil.example/index.html']) {
      expect(await raw(head('GET', address, [ours(), 'Connection: close'])), address).toMatch(/^HTTP\/1\.1 40[034]/);
    }
  });

  test('a request that says its length twice, or in two ways, is refused', async () => {
    const double = [ours(), JSON_LINE, 'Content-Length: 2', 'Content-Length: 40'];
    const both = [ours(), JSON_LINE, 'Content-Length: 2', 'Transfer-Encoding: chunked'];
    for (const lines of [double, both]) {
      expect(await raw(`${head('POST', '/desk/about', lines)}[]`)).toMatch(/^HTTP\/1\.1 400/);
    }
  });

  test('headers without end, and bytes that are no request, are refused', async () => {
    expect(await raw(head('GET', '/', [ours(), `X-Filling: ${'x'.repeat(100_000)}`]))).toMatch(/^HTTP\/1\.1 431/);
    expect(await raw('\u0016\u0003\u0001\u0002\u0000\u0001')).toMatch(/^HTTP\/1\.1 400|^$/);
    expect(await raw(`GET /\r\n\r\n`)).toMatch(/^HTTP\/1\.1 40[03]|^$/);
  });

  test('a body said to be of 10 GB is refused before it comes', async () => {
    const answer = await raw(head('POST', '/desk/about', [ours(), JSON_LINE, 'Content-Length: 10000000000']));
    expect(answer).toMatch(/^HTTP\/1\.1 413/);
  });

  test('a body that breaks off, is no UTF-8, or is no JSON changes nothing', async () => {
    const broken = head('POST', '/desk/saveCard', [ours(), JSON_LINE, 'Content-Length: 500']);
    const socket = connect(port, '127.0.0.1', () => socket.write(`${broken}["mine`, () => socket.destroy()));
    await new Promise((resolve) => socket.on('close', resolve));
    for (const body of [Buffer.from([0x5b, 0xff, 0xfe, 0x5d]), Buffer.from('[')]) {
      const lines = [ours(), JSON_LINE, `Content-Length: ${body.length}`, 'Connection: close'];
      expect(await raw(Buffer.concat([Buffer.from(head('POST', '/desk/saveCard', lines)), body]))).toContain(
        '"ok":false',
      );
    }
  });

  test('300 visitors who dawdle over head or body are sent away, and hinder nobody meanwhile', async () => {
    const dawdling = [
      ...Array.from({ length: 150 }, () => raw(`GET / HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nX-Slow: `, 60_000)),
      ...Array.from({ length: 150 }, () =>
        raw(`${head('POST', '/desk/about', [ours(), JSON_LINE, 'Content-Length: 100'])}[`, 60_000),
      ),
    ];
    expect(await isWell()).toBe(true);
    const answers = await Promise.all(dawdling);
    expect(answers.filter((answer) => !/^HTTP\/1\.1 408|^$/.test(answer))).toEqual([]);
  }, 60_000);

  test('CR-L5: a thousand and more wrong cookies, keys and start codes open nothing', async () => {
    const name = cookie.split('=')[0] ?? '';
    const type = { 'content-type': 'application/json' };
    for (let turn = 0; turn < 500; turn += 1) {
      const wrong = turn.toString(16).padStart(64, '0');
      const [page, call, start] = await Promise.all([
        fetch(`http://127.0.0.1:${port}/`, { headers: { cookie: `${name}=${wrong}` } }),
        fetch(`http://127.0.0.1:${port}/desk/about`, {
          method: 'POST',
          headers: { cookie, 'x-windrow-key': wrong, ...type },
          body: '[]',
        }),
        fetch(`http://127.0.0.1:${port}/start/${wrong}`, { redirect: 'manual' }),
      ]);
      expect([page.status, call.status, start.status]).toEqual([403, 403, 403]);
    }
  }, 60_000);

  test('a port that another program has is told in a sentence, and the folder is let go', async () => {
    const folder = join(base, 'second');
    await expect(startHost({ folder, root: join(base, 'window'), port })).rejects.toThrow(/^Another program .*\.$/);
    const other = await startHost({ folder, root: join(base, 'window') });
    await other.close();
  });
});

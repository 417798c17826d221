import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { type IncomingHttpHeaders, request } from 'node:http';
import { connect } from 'node:net';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Host, startHost } from '../../main/host/host.ts';
import { openStart } from './support/let-in.mjs';
import { TRAVERSALS } from './support/traversals.ts';

let base = '';
let host: Host;
let port = 0;
let cookie = '';
let key = '';

beforeAll(async () => {
  base = await mkdtemp(join(tmpdir(), 'windrow-host-'));
  const root = join(base, 'window');
  await mkdir(join(root, 'assets'), { recursive: true });
  await writeFile(join(root, 'index.html'), '<!doctype html><title>Windrow</title>');
  await writeFile(join(root, 'assets', 'app.js'), 'export {};');
  await writeFile(join(base, 'secret.html'), 'SECRET');
  await symlink(join(base, 'secret.html'), join(root, 'link.html'));
  host = await startHost({ folder: join(base, 'desk'), root });
  port = Number(new URL(host.url).port);
  ({ cookie, key } = await openStart(host.url));
});

afterAll(async () => {
  await host.close();
  await rm(base, { recursive: true });
});

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

/** A request as an attacker could write it: any method, path, headers; the path is sent as it is. */
async function ask(method: string, path: string, headers: Record<string, string> = {}, body = ''): Promise<Answer> {
  return await new Promise((resolve, reject) => {
    const options = { host: '127.0.0.1', port, method, path, headers: { host: `127.0.0.1:${port}`, ...headers } };
    const sent = request(options, (response) => {
      let text = '';
      response.setEncoding('utf8');
      response.on('data', (part: string) => (text += part));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, text }));
    });
    sent.on('error', reject);
    sent.end(body);
  });
}

/** Bytes on a bare connection, for what an HTTP library would not send. */
async function askRaw(text: string): Promise<string> {
  return await new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () => socket.write(text));
    let answer = '';
    socket.on('data', (part) => (answer += part.toString()));
    socket.on('close', () => resolve(answer));
    socket.on('error', reject);
    socket.setTimeout(2000, () => socket.destroy());
  });
}

async function call(name: string, given: unknown, headers: Record<string, string> = {}): Promise<Answer> {
  return await ask(
    'POST',
    `/desk/${name}`,
    { cookie, 'x-windrow-key': key, 'content-type': 'application/json', ...headers },
    JSON.stringify(given),
  );
}

describe('the door', () => {
  test('CR-L5: a start address lets one browser in, once, and keeps the token out of the address', async () => {
    const path = new URL(host.newUrl()).pathname;
    const first = await ask('GET', path);
    expect(first.status).toBe(303);
    expect(first.headers.location).toMatch(/^\/#key=[0-9a-f]{64}$/);
    const set = first.headers['set-cookie']?.[0] ?? '';
    expect(set).toMatch(/^windrow-\d+=[0-9a-f]{64}; HttpOnly; SameSite=Strict; Path=\/$/);
    expect(path).not.toContain(set.split(/[=;]/)[1]);
    const second = await ask('GET', path);
    expect(second.status).toBe(403);
    expect(second.headers['set-cookie']).toBeUndefined();
    expect(second.text.trim().match(/[^.]+\./g)).toHaveLength(1);
    expect((await ask('POST', new URL(host.newUrl()).pathname)).status).toBe(403);
  });

  test('CR-L5: both secrets are the same for all browsers of a start and others at the next start', async () => {
    const other = await startHost({ folder: join(base, 'other-desk'), root: join(base, 'window') });
    const [again, next] = [await openStart(host.newUrl()), await openStart(other.url)];
    await other.close();
    const secrets = ({ cookie: set, key: given }: typeof again): string[] => [set.split('=')[1] ?? '', given];
    expect(again).toEqual({ cookie, key });
    expect(secrets(next).every((secret) => /^[0-9a-f]{64}$/.test(secret))).toBe(true);
    expect(new Set([...secrets(again), ...secrets(next)]).size).toBe(4);
  });

  test('CR-L5: the cookie alone opens the page but no call: one sentence says how to come back in', async () => {
    const about = async (headers: Record<string, string>): Promise<Answer> =>
      await ask('POST', '/desk/about', { 'content-type': 'application/json', ...headers }, '[]');
    expect((await ask('GET', '/', { cookie })).status).toBe(200);
    const refused = await about({ cookie });
    expect(refused.status).toBe(403);
    expect(refused.text).toBe(
      'This tab was not let in: stop Windrow, start it again, and open the address that it prints.\n',
    );
    const wrong = [{ 'x-windrow-key': key }, { cookie, 'x-windrow-key': '' }];
    const mixed = [
      { cookie, 'x-windrow-key': cookie.split('=')[1] ?? '' },
      { cookie, 'x-windrow-key': `${key}, ${key}` },
    ];
    for (const headers of [...wrong, ...mixed]) expect((await about(headers)).status).toBe(403);
    expect((await about({ cookie, 'x-windrow-key': key })).status).toBe(200);
  });

  test.each(['', 'windrow-1=x', 'nonsense', 'SAME NAME, WRONG TOKEN', 'TWO TOKENS'])(
    'CR-L5: no entry with the cookie %j',
    async (kind) => {
      const name = cookie.split('=')[0] ?? '';
      const wrong = { 'SAME NAME, WRONG TOKEN': `${name}=${'0'.repeat(64)}`, 'TWO TOKENS': `${cookie}; ${name}=1` };
      const given = Object.entries(wrong).find(([label]) => label === kind)?.[1] ?? kind;
      for (const path of ['/', '/assets/app.js']) expect((await ask('GET', path, { cookie: given })).status).toBe(403);
      expect((await call('about', [], { cookie: given })).status).toBe(403);
    },
  );

  test('CR-L3: the Host must be ours, with the port: 12 other spellings are refused', async () => {
    const spellings = [
      `windrow.example:${port}`,
      `127.0.0.1.:${port}`,
      `localhost.:${port}`,
      '127.0.0.1',
      'localhost',
      `2130706433:${port}`,
      `0x7f.0.0.1:${port}`,
      `0177.0.0.1:${port}`,
      `127.1:${port}`,
      `[::1]:${port}`,
      `[::ffff:127.0.0.1]:${port}`,
      `127.0.0.1:${port + 1}`,
      `LOCALHOST:${port}`,
      `user@127.0.0.1:${port}`,
      `0.0.0.0:${port}`,
    ];
    for (const spelling of spellings) {
      const answer = await ask('GET', '/', { host: spelling, cookie });
      expect(answer.status, spelling).toBe(403);
    }
    expect((await ask('GET', '/', { cookie })).status).toBe(200);
    expect((await ask('GET', '/', { host: `localhost:${port}`, cookie })).status).toBe(200);
  });

  test('CR-L3: no Host, an empty one or two of them are refused', async () => {
    const empty = `GET / HTTP/1.1\r\nHost: \r\nCookie: ${cookie}\r\nConnection: close\r\n\r\n`;
    expect(await askRaw(empty)).toMatch(/^HTTP\/1\.1 40[03]/);
    expect(await askRaw(`GET / HTTP/1.1\r\nCookie: ${cookie}\r\nConnection: close\r\n\r\n`)).toMatch(/^HTTP\/1\.1 400/);
    const two = `GET / HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nHost: evil.example\r\nCookie: ${cookie}\r\nConnection: close\r\n\r\n`;
    expect(await askRaw(two)).toMatch(/^HTTP\/1\.1 40[03]/);
  });

  test('CR-L4: a foreign Origin is refused on every method, and none gets a CORS header', async () => {
    const foreign = [
      'http://evil.example',
      'null',
      `http://127.0.0.1:${port + 1}`,
      `https://127.0.0.1:${port}`,
      `http://localhost:${port}`,
    ];
    for (const origin of foreign) {
      for (const method of ['GET', 'HEAD', 'POST', 'OPTIONS', 'PUT', 'DELETE']) {
        const answer = await ask(method, method === 'POST' ? '/desk/about' : '/', { cookie, origin });
        expect(answer.status, `${method} ${origin}`).toBe(403);
        expect(Object.keys(answer.headers).some((name) => name.startsWith('access-control'))).toBe(false);
      }
    }
    expect((await call('about', [], { origin: `http://127.0.0.1:${port}` })).status).toBe(200);
  });

  test('CR-L4: another site is refused even where no Origin is sent', async () => {
    for (const site of ['cross-site', 'same-site']) {
      expect((await ask('GET', '/', { cookie, 'sec-fetch-site': site })).status).toBe(403);
    }
  });

  test('CR-L4: an upgrade to a web socket is cut off', async () => {
    const upgrade = `GET / HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nCookie: ${cookie}\r\nConnection: Upgrade\r\nUpgrade: websocket\r\n\r\n`;
    expect(await askRaw(upgrade)).toBe('');
  });

  test('CR-L2: it listens on 127.0.0.1 only, at a port that the system chose', async () => {
    expect(new URL(host.url).hostname).toBe('127.0.0.1');
    expect(port).toBeGreaterThan(1023);
    const others = Object.values(networkInterfaces()).flatMap((list) => (list ?? []).map(({ address }) => address));
    for (const address of [...others.filter((one) => one !== '127.0.0.1' && !one.startsWith('fe80')), '127.0.0.2']) {
      const refused = new Promise((resolve) => {
        const socket = connect(port, address, () => resolve(false));
        socket.on('error', () => resolve(true));
      });
      expect(await refused, address).toBe(true);
    }
  });
});

describe('files', () => {
  test('CR-L6: the window is served with its policy and safe headers on every reply', async () => {
    const answers = [
      await ask('GET', '/', { cookie }),
      await ask('GET', '/assets/app.js', { cookie }),
      await ask('GET', '/nothing.js', { cookie }),
      await ask('GET', '/'),
      await call('about', []),
    ];
    expect(answers.map(({ status }) => status)).toEqual([200, 200, 404, 403, 200]);
    for (const { headers } of answers) {
      expect(headers['content-security-policy']).toMatch(/^default-src 'none'; script-src 'self'; style-src 'self';/);
      expect(headers['content-security-policy']).not.toMatch(/unsafe|data:|\*|http/);
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['cross-origin-resource-policy']).toBe('same-origin');
      expect(headers['referrer-policy']).toBe('no-referrer');
    }
    expect(answers[0]?.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(answers[1]?.headers['content-type']).toBe('text/javascript; charset=utf-8');
  });

  test('CR-L6: files are for GET and HEAD only', async () => {
    for (const method of ['POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS']) {
      expect((await ask(method, '/index.html', { cookie })).status).toBe(405);
    }
    const head = await ask('HEAD', '/index.html', { cookie });
    expect(head).toMatchObject({ status: 200, text: '' });
    expect(Number(head.headers['content-length'])).toBeGreaterThan(10);
  });

  test('CR-L6: 30 and more ways to climb out of the folder all lead nowhere', async () => {
    expect(TRAVERSALS.length).toBeGreaterThanOrEqual(30);
    for (const path of [...TRAVERSALS, '/link.html', '/assets', '/assets/', '/']) {
      const answer = await ask('GET', path, { cookie });
      expect(answer.text, path).not.toContain('SECRET');
      expect(answer.text, path).not.toContain('root:');
      if (path !== '/') expect([400, 403, 404], path).toContain(answer.status);
    }
    for (const path of ['../secret.html', 'http://127.0.0.1/../secret.html']) {
      const raw = `GET ${path} HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nCookie: ${cookie}\r\nConnection: close\r\n\r\n`;
      expect(await askRaw(raw)).not.toContain('SECRET');
    }
  });
});

describe('calls', () => {
  test('a call is a POST with a list of arguments, and its answer a result', async () => {
    expect(JSON.parse((await call('about', [])).text)).toMatchObject({ ok: true, value: { host: 'browser' } });
    expect(JSON.parse((await call('openCard', ['demo'])).text)).toMatchObject({
      ok: true,
      value: { entry: { id: 'demo' } },
    });
    expect((await ask('GET', '/desk/about', { cookie, 'x-windrow-key': key })).status).toBe(405);
    expect((await call('about', [], { 'content-type': 'text/plain' })).status).toBe(415);
  });

  test.each(['nothing', '__proto__', 'constructor', 'close', 'toString', '', 'about/', '../about'])(
    'unknown call %j is refused',
    async (name) => {
      expect(JSON.parse((await call(name, [])).text)).toMatchObject({ ok: false, problem: { code: 'unknown-call' } });
    },
  );

  test('wrong arguments are refused with a sentence, and change nothing', async () => {
    const before = (await call('listCards', [])).text;
    const wrong: [string, unknown][] = [
      ['about', [1]],
      ['about', {}],
      ['about', null],
      ['openCard', []],
      ['openCard', ['../../etc/passwd']],
      ['openCard', [5]],
      ['saveCard', ['.hidden', '{}']],
      ['saveCard', ['a/b', '{}']],
      ['openGame', ['../x']],
      ['appendEvent', ['g', -1, {}]],
      ['appendEvent', ['g', 1.5, { type: 'noted', at: 'now' }]],
      ['changeGame', ['g', { events: [] }]],
      ['changePreferences', [{ textSize: 1000 }]],
      ['changePreferences', [{ folder: '/' }]],
    ];
    for (const [name, given] of wrong) {
      expect(JSON.parse((await call(name, given)).text), name).toMatchObject({
        ok: false,
        problem: { code: 'wrong-arguments' },
      });
    }
    expect((await call('listCards', [])).text).toBe(before);
  });

  test('a body that is too large, cut short or no text is refused', async () => {
    const large = await call('saveCard', [null, 'x'.repeat(1_100_000)]);
    expect(large.status).toBe(413);
    const ours = { cookie, 'x-windrow-key': key, 'content-type': 'application/json' };
    const broken = await ask('POST', '/desk/about', ours, '[');
    expect(JSON.parse(broken.text)).toMatchObject({ ok: false });
    const chunked = `POST /desk/about HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nCookie: ${cookie}\r\nX-Windrow-Key: ${key}\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\nConnection: close\r\n\r\n`;
    const part = `${(200_000).toString(16)}\r\n${'x'.repeat(200_000)}\r\n`;
    expect(await askRaw(`${chunked}${part.repeat(6)}0\r\n\r\n`)).toMatch(/^HTTP\/1\.1 413/);
  });

  test('CR-J6: a second host on the same folder says who has it', async () => {
    const second = startHost({ folder: join(base, 'desk'), root: join(base, 'window') });
    await expect(second).rejects.toThrow('Windrow is already open with this folder.');
  });
});

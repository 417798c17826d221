import { connect } from 'node:net';
import { join } from 'node:path';
import { contentOf, differences } from './content.ts';
import { PROBE } from './forms.ts';
import type { Attack, Troubles } from './table.ts';
import { Windrow } from './windrow.ts';

/** Bytes on a bare connection, and the statuses that may come back before it is closed, in their order. */
interface Shape {
  readonly name: string;
  readonly bytes: string;
  readonly wanted: RegExp;
}

/** Stands among the statuses where the connection was still open when we gave up. */
const OPEN = 'open';
const [REFUSED, CLOSED, WAITS] = [/^(4\d\d|501|505)?$/, /^$/, /^open$/];

/** Requests that no browser would send: nothing is smuggled by them, and Windrow goes on. */
export const RAW_SHAPES: Attack = {
  name: 'HTTP: raw shapes',
  share: 2,
  run: async (trials, base) => {
    const windrow = await Windrow.start(join(base, 'desk'));
    const before = await contentOf(windrow.desk);
    await trials.each(
      shapes(windrow),
      ({ name }) => name,
      async ({ bytes, wanted }) => {
        const answer = await send(windrow.port, bytes);
        const statuses = (answer.match(/HTTP\/1\.1 \d+|^open$/gm) ?? [])
          .map((line) => line.split(' ').at(-1))
          .join(' ');
        const troubles: string[] = wanted.test(statuses) ? [] : [`statuses "${statuses}"`];
        if (/access-control/i.test(answer)) troubles.push('it lets other pages read');
        const after = await windrow.desk.about();
        return [...troubles, ...(after.ok ? [] : [`Windrow does not go on: ${after.problem.message}`])];
      },
    );
    await trials.try('what they left', async (): Promise<Troubles> =>
      differences(before, await contentOf(windrow.desk)),
    );
    await windrow.kill();
  },
};

function shapes({ port, secrets }: Windrow): Shape[] {
  const here = `Host: 127.0.0.1:${port}`;
  const ours = Object.entries(secrets).map(([name, value]) => `${name}: ${value}`);
  const head = (first: string, ...lines: readonly string[]): string =>
    [first, ...lines, 'Connection: close', '', ''].join('\r\n');
  const probe = `POST /desk/${PROBE.call} HTTP/1.1`;
  const length = `Content-Length: ${PROBE.body.length}`;
  const json = 'Content-Type: application/json';
  const call = (...lines: readonly string[]): string => head(probe, ...lines) + PROBE.body;
  const whole = [here, ...ours, json, length];
  const chunked = [here, ...ours, json, 'Transfer-Encoding: chunked'];
  const size = PROBE.body.length.toString(16);
  const get = (...lines: readonly string[]): string => head('GET / HTTP/1.1', ...lines);
  const refused: Readonly<Record<string, string>> = {
    'host twice': call(here, ...whole),
    'another host besides': call(...whole, 'Host: evil.example'),
    'an empty host': call('Host:', ...ours, json, length),
    'no host': call(...ours, json, length),
    'host behind a blank': call(...whole.slice(1), `Host : 127.0.0.1:${port}`),
    'host in a folded line': call(...whole.slice(1), `X: y\r\n ${here}`),
    'length twice, the same': call(...whole, length),
    'length twice, unlike': call(...whole, 'Content-Length: 1'),
    'length and chunks': call(...chunked, length),
    'negative length': call(here, ...ours, json, 'Content-Length: -1'),
    'length of letters': call(here, ...ours, json, 'Content-Length: 0x10'),
    'length with a plus': call(here, ...ours, json, `Content-Length: +${PROBE.body.length}`),
    'length of 10 GB': call(here, ...ours, json, 'Content-Length: 10000000000'),
    'chunks twice':
      head(probe, ...chunked, 'Transfer-Encoding: chunked, chunked') + `${size}\r\n${PROBE.body}\r\n0\r\n\r\n`,
    'chunks that are none': head(probe, here, ...ours, json, 'Transfer-Encoding: xchunked') + PROBE.body,
    'chunks not last': head(probe, here, ...ours, json, 'Transfer-Encoding: chunked, identity') + PROBE.body,
    'a chunk of a negative size': head(probe, ...chunked) + `-${size}\r\n${PROBE.body}\r\n0\r\n\r\n`,
    'a chunk of a size beyond numbers': head(probe, ...chunked) + `${'f'.repeat(40)}\r\n${PROBE.body}\r\n0\r\n\r\n`,
    'a chunk that is longer than it says': head(probe, ...chunked) + `1\r\n${PROBE.body}\r\n0\r\n\r\n`,
    'a chunk with a size in words': head(probe, ...chunked) + `size\r\n${PROBE.body}\r\n0\r\n\r\n`,
    'lines that end with LF alone': call(...whole).replaceAll('\r\n', '\n'),
    'a CR alone within a line': call(...whole, 'X: a\rX: b'),
    'a zero in a header': call(...whole, 'X: a\u0000b'),
    'a header without colon': call(...whole, 'nonsense'),
    'a header without name': call(...whole, ': x'),
    'a header of 100,000 letters': call(...whole, `X: ${'x'.repeat(100_000)}`),
    '5,000 headers': call(...whole, ...Array.from({ length: 5000 }, (_, at) => `X-${at}: x`)),
    'HTTP/3.7': call(...whole).replace('HTTP/1.1', 'HTTP/3.7'),
    'HTTP/0.9': 'GET /\r\n\r\n',
    'no request at all': '\u0016\u0003\u0001\u0002\u0000\u0001\r\n\r\n',
    'a method of other letters': call(...whole).replace('POST', 'P\u0001ST'),
    'secrets in capitals of names, twice': call(
      ...whole,
      ...ours.map((line) => line.replace(/^[^:]+/, (name) => name.toUpperCase())),
    ),
    'an address of another server': head('GET http://evil.example/ HTTP/1.1', here, ...ours),
    'an address without scheme': head('GET //evil.example/index.html HTTP/1.1', here, ...ours),
    'a path of *': head('OPTIONS * HTTP/1.1', here, ...ours),
    'a path of 200,000 letters': head(`GET /${'a'.repeat(200_000)} HTTP/1.1`, here, ...ours),
    'an origin in a second line': get(
      here,
      ...ours,
      `Origin: http://127.0.0.1:${port}`,
      'Origin: http://evil.example',
    ).replace('GET', 'PUT'),
    'a site in a second line': call(...whole, 'Sec-Fetch-Site: same-origin', 'Sec-Fetch-Site: cross-site'),
  };
  const closed: Readonly<Record<string, string>> = {
    'an upgrade to a web socket': `GET / HTTP/1.1\r\n${[here, ...ours, 'Connection: Upgrade', 'Upgrade: websocket', 'Sec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==', 'Sec-WebSocket-Version: 13'].join('\r\n')}\r\n\r\n`,
    'an upgrade to HTTP/2': `GET / HTTP/1.1\r\n${[here, ...ours, 'Connection: Upgrade, HTTP2-Settings', 'Upgrade: h2c', 'HTTP2-Settings: AAMAAABk'].join('\r\n')}\r\n\r\n`,
    CONNECT: head('CONNECT evil.example:443 HTTP/1.1', 'Host: evil.example:443', ...ours),
  };
  const broken = head(probe, here, ...ours, json, 'Content-Length: 500') + PROBE.body;
  const pipeline = `GET / HTTP/1.1\r\n${[here, ...ours].join('\r\n')}\r\n\r\n`;
  const smuggled = call(here, json, length);
  return [
    ...Object.entries(refused).map(([name, bytes]) => ({ name, bytes, wanted: REFUSED })),
    ...Object.entries(closed).map(([name, bytes]) => ({ name, bytes, wanted: CLOSED })),
    { name: 'a body that breaks off', bytes: broken, wanted: WAITS },
    { name: 'HTTP/2 from the start', bytes: 'PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n', wanted: REFUSED },
    { name: 'a call without secrets behind one with them', bytes: pipeline + smuggled, wanted: /^200 403$/ },
    {
      name: 'a call behind the body of another',
      bytes: `${pipeline.replace('GET', 'PUT').replace('\r\n\r\n', `\r\nContent-Length: 0\r\n\r\n`)}${smuggled}`,
      wanted: /^405 403$/,
    },
  ];
}

/** So long an answer may take, in milliseconds; after the last bytes nothing more is sent. */
const PATIENCE = 5000;

async function send(port: number, bytes: string): Promise<string> {
  return await new Promise((resolve) => {
    let answer = '';
    const socket = connect(port, '127.0.0.1', () => socket.write(bytes, 'latin1'));
    socket.on('data', (part) => (answer += part.toString('latin1')));
    socket.on('error', () => undefined);
    socket.on('close', () => resolve(answer));
    const giveUp = (): void => {
      if (!socket.destroyed) answer += `\n${OPEN}\n`;
      socket.destroy();
    };
    setTimeout(giveUp, PATIENCE).unref();
  });
}

import { TRAVERSALS } from '../main/support/traversals.ts';
import type { Secrets } from './let-in.ts';
import type { Windrow } from './windrow.ts';

/** A request, and what it must be answered with. */
export interface Form {
  readonly name: string;
  readonly method: string;
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body?: string;
  /** The statuses that are well. */
  readonly wanted: readonly number[];
  /** True where a refusal in the words of a call is well too. */
  readonly mayAnswer?: boolean;
}

const REFUSED = [400, 403];

/** Would be seen in the settings if it went through. */
export const PROBE = { call: 'changePreferences', body: '[{"tourStep":9}]' } as const;

const TYPES = [
  '',
  'text/plain',
  'text/plain; application/json',
  'text/json',
  'application/x-www-form-urlencoded',
  'multipart/form-data; boundary=x',
  'application/jsonx',
  'APPLICATION/JSON',
  ' application/xml',
  '*/*',
  'application/*',
  'json',
];
const METHODS = ['GET', 'HEAD', 'PUT', 'DELETE', 'PATCH', 'OPTIONS', 'TRACE', 'PROPFIND', 'SEARCH', 'MKCOL', 'COPY'];
const SITES = ['cross-site', 'same-site', 'SAME-ORIGIN', 'same-origin, none', 'none; x', 'null', '?1', ''];
const INHERITED = [Object.prototype, Array.prototype, Function.prototype, Promise.prototype]
  .flatMap((prototype) => Object.getOwnPropertyNames(prototype))
  .map((name) => encodeURIComponent(name));
const OTHER_NAMES =
  ' . .. %2e close about/ /about About ABOUT about%00 about%20 abou aboutt about.json about;x about%2f %61bout about%ff desk/about ' +
  '../desk/about __proto__/about 0 undefined null default then %F0%9F%80%84 call import eval process';
const NAMES = [...new Set(INHERITED), ...OTHER_NAMES.split(' '), 'x'.repeat(5000)];

/** A page and a call that are let in, and the same with one thing wrong each. */
export async function formsFor({
  port,
  secrets,
}: Windrow): Promise<{ page: Form; call: Form; wrong: readonly Form[] }> {
  const here = `127.0.0.1:${port}`;
  const page: Form = {
    name: 'the page',
    method: 'GET',
    path: '/',
    headers: { host: here, ...secrets },
    wanted: [200],
  };
  const json = { 'content-type': 'application/json' };
  const call: Form = {
    ...page,
    name: 'a call',
    method: 'POST',
    path: '/desk/about',
    headers: { ...page.headers, ...json },
    body: '[]',
  };
  const probe: Form = { ...call, path: `/desk/${PROBE.call}`, body: PROBE.body };
  const both = (name: string, headers: Readonly<Record<string, string>>): Form[] =>
    [page, probe].map((form) => ({
      ...form,
      name: `${form.method} with ${name}`,
      headers: { ...form.headers, ...headers },
      wanted: REFUSED,
    }));
  const wrong: Form[] = [
    ...hostsBut(here, port).flatMap((host) => both(`host "${host}"`, { host })),
    ...originsBut(here, port).flatMap((origin) => both(`origin "${origin}"`, { origin })),
    ...SITES.flatMap((site) => both(`site "${site}"`, { 'sec-fetch-site': site })),
    ...falseSecrets(secrets).map(({ name, headers }) => ({
      ...probe,
      name,
      headers: { host: here, ...json, ...headers },
      wanted: REFUSED,
    })),
    ...TYPES.map((type) => ({
      ...probe,
      name: `type "${type}"`,
      headers: { ...page.headers, 'content-type': type },
      wanted: [400, 415],
    })),
    ...METHODS.map((method) => ({ ...probe, name: `${method} for POST`, method, wanted: [400, 405, 501] })),
    ...METHODS.slice(2).map((method) => ({ ...page, name: `${method} for GET`, method, wanted: [400, 405, 501] })),
    ...TRAVERSALS.map((path) => path.replaceAll('secret.html', 'host/main.js')).map((path) => ({
      ...page,
      name: `path ${path}`,
      path,
      wanted: [400, 403, 404],
    })),
    ...NAMES.map((name) => ({
      ...call,
      name: `call "${name.slice(0, 40)}"`,
      path: `/desk/${name}`,
      wanted: [400, 403, 404, 405],
      mayAnswer: true,
    })),
    ...startCodes(page),
  ];
  return { page, call, wrong };
}

function hostsBut(here: string, port: number): string[] {
  const others = ['evil.example', 'localhost.evil.example', '127.0.0.1.evil.example', '0.0.0.0', '127.1', '2130706433'];
  const more = ['[::1]', '[::ffff:127.0.0.1]', '127.0.0.2', '0x7f.1', '017700000001', 'localhost.', '127.0.0.1.'];
  const named = [...others, ...more].map((name) => `${name}:${port}`);
  return [
    ...named,
    'evil.example',
    '127.0.0.1',
    'localhost',
    `127.0.0.1:${port + 1}`,
    `${here}:${port}`,
    `${here}@evil`,
    `a@${here}`,
    `${here},evil`,
  ];
}

function originsBut(here: string, port: number): string[] {
  const others = ['null', 'http://evil.example', `http://evil.example:${port}`, `https://${here}`, `http://${here}/`];
  const more = [`http://localhost:${port}`, `http://127.0.0.1:${port + 1}`, `http://127.0.0.1`, `HTTP://${here}`];
  return [
    ...others,
    ...more,
    `http://${here}, http://evil.example`,
    `http://${here}.evil.example`,
    `http://a@${here}`,
    `file://`,
    `//${here}`,
  ];
}

/** Each secret left out, and in many ways nearly right, with the others right. */
function falseSecrets(secrets: Secrets): { name: string; headers: Record<string, string> }[] {
  return Object.entries(secrets).flatMap(([header, right]) => {
    const others = Object.fromEntries(Object.entries(secrets).filter(([name]) => name !== header));
    const last = right.endsWith('0') ? '1' : '0';
    const start = right.slice(0, right.indexOf('=') + 1);
    const secret = right.slice(start.length);
    const texts: Readonly<Record<string, string>> = {
      empty: '',
      'with another end': right.slice(0, -1) + last,
      'with another beginning': start + (secret.startsWith('0') ? '1' : '0') + secret.slice(1),
      'cut short': right.slice(0, -1),
      'too long': `${right}0`,
      'in capitals': start + secret.toUpperCase(),
      'turned round': start + [...secret].reverse().join(''),
      zeros: start + '0'.repeat(secret.length),
      'without what is secret': start,
      'in quotes': `${start}"${secret}"`,
      encoded: `${start}%${secret.charCodeAt(0).toString(16)}${secret.slice(1)}`,
      'given twice': start === '' ? `${right}, ${right}` : `${right}; ${right}`,
      'and a false one': start === '' ? `${right}, x` : `${right}; ${start}x`,
      'of another port': start === '' ? `x${right}` : `windrow-1=${secret}`,
    };
    const named = Object.entries(texts).map(([name, text]) => ({
      name: `${header} ${name}`,
      headers: { ...others, [header]: text },
    }));
    return [{ name: `no ${header}`, headers: others }, ...named];
  });
}

function startCodes(page: Form): Form[] {
  const codes = [
    '',
    'x',
    '0'.repeat(64),
    '%00',
    '..',
    '../',
    '__proto__',
    'undefined',
    '[object%20Object]',
    'f'.repeat(5000),
  ];
  return codes.map((code) => ({
    ...page,
    name: `start code "${code.slice(0, 20)}"`,
    path: `/start/${code}`,
    wanted: REFUSED,
  }));
}

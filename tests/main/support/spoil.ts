import type { Random } from '../../../core/base/random.ts';

/** One way in which a file goes bad. What can't be done to these bytes gives them back as they are. */
type Damage = (bytes: Buffer, random: Random) => Uint8Array;

/** What crashes, disks, sync programs, careless hands and hostile ones do to files. */
const DAMAGES: Readonly<Record<string, Damage>> = {
  'cut short': (bytes, random) => bytes.subarray(0, random.below(bytes.length)),
  emptied: () => Buffer.alloc(0),
  'zeros at the end': (bytes, random) => Buffer.from(bytes).fill(0, random.below(bytes.length)),
  'zeros within': (bytes, random) => {
    const at = random.below(bytes.length);
    return Buffer.from(bytes).fill(0, at, Math.min(bytes.length, at + 1 + random.below(64)));
  },
  'one bit turned': (bytes, random) => turned(bytes, random, 1),
  'many bits turned': (bytes, random) => turned(bytes, random, 2 + random.below(30)),
  'a stretch doubled': (bytes, random) => {
    const at = random.below(bytes.length);
    return Buffer.concat([bytes.subarray(0, at), bytes.subarray(random.below(at + 1))]);
  },
  'a stretch lost': (bytes, random) => {
    const at = random.below(bytes.length);
    return Buffer.concat([bytes.subarray(0, at), bytes.subarray(at + 1 + random.below(40))]);
  },
  noise: (bytes, random) => Uint8Array.from({ length: random.below(bytes.length) }, () => random.below(256)),
  'wrong type': (bytes, random) => retyped(bytes, random, () => pick(VALUES, random)),
  'wrong types': (bytes, random) =>
    retyped(
      retyped(bytes, random, () => pick(VALUES, random)),
      random,
      () => pick(VALUES, random),
    ),
  'hostile key': (bytes, random) => inText(bytes, (text) => text.replace(/"[a-zA-Z]+":/, `"${pick(KEYS, random)}":`)),
  deep: (bytes, random) => {
    const depth = 40 * 2 ** random.below(10);
    const [open, close] = pick([['[', ']'] as const, ['{"a":', '}'] as const], random);
    const nest = `${open.repeat(depth)}1${close.repeat(depth)}`;
    return inText(bytes, (text) => text.replace(/:\s*("[^"]*"|\d+)/, () => `:${nest}`));
  },
  'byte order mark': (bytes) => Buffer.concat([Buffer.from('\uFEFF'), bytes]),
  'other encoding': (bytes) => Buffer.from(bytes.toString('utf8'), 'utf16le'),
};

const KEYS = ['__proto__', 'constructor', 'prototype', 'toString', ''];
const LITERALS = [
  'null',
  'true',
  'false',
  '0',
  '-1',
  '0.5',
  '1e308',
  '9007199254740993',
  '""',
  '"x"',
  '[]',
  '{}',
  '[[]]',
];
const HOSTILE = [
  '{"__proto__":{"x":1}}',
  '{"length":5}',
  '"\\ud800"',
  '"\\u0000"',
  '"../../etc/passwd"',
  '"=1+1"',
  '[null]',
];
const VALUES: readonly unknown[] = [...LITERALS, ...HOSTILE, `"${'J'.repeat(2000)}"`].map(parsed);

/** One in so many is blown up instead: that takes long. */
const HUGE_ONE_IN = 800;

/** Bytes with something wrong: cut, zeroed, bits turned, blown up, nested, of wrong types, and more. */
export function spoiled(bytes: Buffer, random: Random): Uint8Array {
  if (bytes.length === 0) return Buffer.from('{');
  if (random.below(HUGE_ONE_IN) === 0) return blownUp(bytes, random);
  return pick(Object.values(DAMAGES), random)(bytes, random);
}

/** From 1 to 20 MB, or beyond 40, which is not looked at any more; by one long text or by very many small ones. */
function blownUp(bytes: Buffer, random: Random): Uint8Array {
  const megabytes = 1 + random.below(24);
  const size = 1_000_000 * (megabytes > 20 ? 2 * megabytes : megabytes);
  const filling = random.below(2) === 0 ? `"${'x'.repeat(size)}"` : `[${'1,'.repeat(size / 2)}1]`;
  return inText(bytes, (text) => text.replace(/:\s*("[^"]*"|\d+)/, () => `:${filling}`));
}

function pick<Item>(items: readonly Item[], random: Random): Item {
  return items[random.below(items.length)] as Item;
}

function turned(bytes: Buffer, random: Random, times: number): Uint8Array {
  const copy = Buffer.from(bytes);
  for (let turn = 0; turn < times; turn += 1) {
    const at = random.below(copy.length);
    copy[at] = (copy[at] ?? 0) ^ (1 << random.below(8));
  }
  return copy;
}

function inText(bytes: Buffer, change: (text: string) => string): Buffer {
  return Buffer.from(change(bytes.toString('utf8')));
}

/** Puts another value in some place of the document, or of one of its lines. */
function retyped(bytes: Buffer, random: Random, value: () => unknown): Buffer {
  return inText(bytes, (text) => {
    const whole = parsed(text);
    if (whole !== undefined) return JSON.stringify(replaced(whole, random, value));
    const lines = text.split('\n');
    const at = random.below(Math.max(1, lines.length - 1));
    const line = parsed(lines[at] ?? '');
    return line === undefined ? text : lines.with(at, JSON.stringify(replaced(line, random, value))).join('\n');
  });
}

/** The value with one part, at any depth, replaced. */
function replaced(part: unknown, random: Random, value: () => unknown): unknown {
  if (typeof part !== 'object' || part === null || random.below(6) === 0) return value();
  const names = Object.keys(part);
  if (names.length === 0) return value();
  const name = pick(names, random);
  const inner = replaced(Reflect.get(part, name), random, value);
  return Array.isArray(part) ? part.with(Number(name), inner) : { ...part, [name]: inner };
}

function parsed(text: string): unknown {
  try {
    const value: unknown = JSON.parse(text);
    return value;
  } catch {
    return undefined;
  }
}

import { expect, test } from 'vitest';
import { type Random, randomFromSeed } from '../../core/base/random.ts';
import { completionsAt } from '../../core/card/completion.ts';
import { readCardFile, writeCardFile } from '../../core/card/file.ts';
import { inspectCard } from '../../core/card/inspect.ts';
import { readLine } from '../../core/card/line.ts';
import { parsePattern } from '../../core/card/parse.ts';
import { formatPattern } from '../../core/card/pattern.ts';
import { SEED } from './arbitrary.ts';

/** 100,000 damaged files in every run; WINDROW_FUZZ=1000000 makes it a million. */
const FILES = Number(process.env['WINDROW_FUZZ'] ?? 100_000);

const SOUND = JSON.stringify({
  format: 'windrow.card',
  version: 1,
  title: 'Small',
  season: 'S',
  sections: [
    {
      name: 'One',
      lines: [
        { id: 'a', pattern: "FFFF NEWS 11a' 2222b", slide2: 3 },
        { id: 'b', pattern: 'FF 222a 444b= 666c DDD', points: 30 },
      ],
    },
    { name: 'Two', lines: [{ id: 'c', pattern: 'NN EE WW SS DDa DDb DDc', concealed: true, note: 'n' }] },
  ],
});
const PIECES = [
  '{',
  '}',
  '[',
  ']',
  '"',
  ',',
  ':',
  'null',
  '-1',
  '1e999',
  '[[[[',
  '"\\uD800"',
  '\\',
  '9',
  'F',
  'a',
  "'",
  '=',
  ' ',
  '\u0000',
  '\uFFFF',
  '"__proto__":{},',
  '"lines":',
  '"pattern":',
  '"id":"a",',
];

function pick<Item>(items: readonly Item[], random: Random): Item {
  return items[random.below(items.length)] as Item;
}

/** One to four of: a piece put in, a stretch taken out, a stretch doubled, a letter turned, the end cut off. */
function damaged(text: string, random: Random): string {
  let result = text;
  for (let times = 1 + random.below(4); times > 0; times -= 1) {
    const at = random.below(result.length + 1);
    const to = Math.min(result.length, at + random.below(30));
    switch (random.below(5)) {
      case 0:
        result = result.slice(0, at) + pick(PIECES, random) + result.slice(at);
        break;
      case 1:
        result = result.slice(0, at) + result.slice(to);
        break;
      case 2:
        result = result.slice(0, to) + result.slice(at);
        break;
      case 3:
        result = `${result.slice(0, at)}${String.fromCharCode((result.codePointAt(at) ?? 0) ^ (1 << random.below(7)))}${result.slice(at + 1)}`;
        break;
      default:
        if (random.below(4) === 0) result = result.slice(0, at);
    }
  }
  return result;
}

/** A file whose fields hold values of any type, so that it gets past the first gates. */
function strange(random: Random): string {
  const value = (depth: number): unknown => {
    switch (random.below(depth > 3 ? 6 : 9)) {
      case 0:
        return null;
      case 1:
        return random.below(5) - 1;
      case 2:
        return pick(['FF 222a 333b 444c DDD', '', 'F', "11a' 22b=", 'a', 'NEWS'], random);
      case 3:
        return random.below(2) === 0;
      case 4:
        return 1e300;
      case 5:
        return [];
      case 6:
        return Array.from({ length: random.below(4) }, () => value(depth + 1));
      default:
        return Object.fromEntries(
          [
            'name',
            'lines',
            'id',
            'pattern',
            'slide',
            'slide2',
            'points',
            'note',
            'concealed',
            'x',
            '__proto__',
          ].flatMap((name) => (random.below(2) === 0 ? [] : [[name, value(depth + 1)]])),
        );
    }
  };
  return JSON.stringify({ format: 'windrow.card', version: 1, title: value(3), sections: [value(0), value(1)] });
}

test(
  `${FILES} damaged files neither throw nor hang, and what opens can be written and opened again`,
  { timeout: 1_200_000 },
  () => {
    const random = randomFromSeed(SEED);
    let slowest = 0;
    let opened = 0;
    for (let file = 0; file < FILES; file += 1) {
      const text = file % 4 === 0 ? strange(random) : damaged(SOUND, random);
      const started = process.cpuUsage();
      const read = readCardFile(text);
      if (read.ok && file % 8 === 0) {
        opened += 1;
        inspectCard(read.value.document, read.value);
        const again = readCardFile(writeCardFile(read.value.document));
        expect(again.ok && again.value.problems).toEqual(read.value.problems);
      }
      slowest = Math.max(slowest, process.cpuUsage(started).user / 1_000);
    }
    expect(opened).toBeGreaterThan(FILES / 100);
    expect(slowest).toBeLessThan(1_000);
  },
);

test('20,000 damaged patterns neither throw nor hang in reading, completing and building', { timeout: 120_000 }, () => {
  const random = randomFromSeed(SEED + 1);
  const sound = "FF NEWS 222a 44bam= 66b' DDc 0 ww";
  for (let round = 0; round < 20_000; round += 1) {
    const text = damaged(sound, random);
    parsePattern(text);
    if (round % 20 === 0) completionsAt(text, random.below(text.length + 2));
    const { pattern } = readLine({ pattern: text });
    const again = readLine({ pattern: formatPattern(pattern) });
    expect(again.pattern).toEqual(pattern);
    expect(again.groups.every(({ group }) => group.ok)).toBe(true);
  }
});

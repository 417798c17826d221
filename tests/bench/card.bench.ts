import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expectValue } from '../../core/base/result.ts';
import { linesOf } from '../../core/card/card.ts';
import { readCardFile } from '../../core/card/file.ts';
import { understoodLines, type UnderstoodLine } from '../../core/card/line.ts';
import { formatPattern } from '../../core/card/pattern.ts';
import { referenceWays } from '../reference/ways.ts';
import type { Measure } from './measure.ts';

/** `npm run bench` starts in the project's folder. */
const demoText = readFileSync(join(process.cwd(), 'assets/demo.card.json'), 'utf8');

/** The largest card that the app promises: 300 lines; 200 × 144 + 100 × 192 = 48,000 ways. */
const bigText = JSON.stringify({
  format: 'windrow.card',
  version: 1,
  title: 'Big',
  season: '',
  sections: [
    {
      name: 'All',
      lines: Array.from({ length: 300 }, (_, line) => ({
        id: `line-${line}`,
        pattern: line % 3 === 2 ? "FF 1111a 2222b 3333c'" : "FFFF 111a 222b 3333c'",
        slide: 1,
        slide2: line % 3 === 2 ? 2 : 3,
      })),
    },
  ],
});

/** Reads a whole card file, ways written out, against the plain enumeration of its lines, or of a share of them. */
function readingOf(name: string, text: string, share: number): Measure {
  const lines = understoodLines(expectValue(readCardFile(text)).document);
  const sample = lines.filter((_, place) => place % share === 0);
  return {
    name,
    unit: 'card file',
    candidate: () => readCardFile(text),
    reference: () => sample.map(referenceOf),
    referenceShare: share,
    atLeast: 1,
    check: () => checkLines(text, sample),
  };
}

function referenceOf({ pattern, slide, slide2 }: UnderstoodLine): Set<string> {
  return referenceWays(formatPattern(pattern), slide, slide2);
}

function checkLines(text: string, lines: readonly UnderstoodLine[]): void {
  const read = linesOf(expectValue(readCardFile(text)).card);
  for (const line of lines) {
    const ways = read.find(({ id }) => id === line.id)?.ways.length;
    if (ways !== referenceOf(line).size) throw new Error(`${line.id}: the two counts of ways differ`);
  }
}

export const measures: readonly Measure[] = [
  readingOf('read the demo card, all ways', demoText, 1),
  readingOf('read a card of 300 lines, 48,000 ways', bigText, 50),
];

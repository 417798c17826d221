import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, it } from 'vitest';

const RENDERER = resolve(import.meta.dirname, '../../renderer');

const sources = readdirSync(RENDERER, { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.(?:ts|css)$/.test(file))
  .map((file) => ({ file, text: readFileSync(join(RENDERER, file), 'utf8') }));

/** The files of elements with a timer, and what it is for. */
const TIMED = {
  'parts/announcer.ts': 'gathers what is said close together into one sentence',
  'parts/drag-controller.ts': 'tells the click that ends a drag from another',
  'places/journal/season-sums.ts': 'draws figures that come in at most some times a second',
  'places/table/growth.ts': 'draws the rest of a long list once its first rows are on screen',
  'places/warmup/wr-warm-up-run.ts': 'draws the clock for those who asked for one',
};

/** Where the sources hold what a pattern means, as "file: what was found". */
function found(pattern: RegExp): string[] {
  return sources.flatMap(({ file, text }) => [...text.matchAll(pattern)].map(([what]) => `${file}: ${what.trim()}`));
}

it('CR-O3: there is no double click, no long press and no menu of the right button', () => {
  expect(sources.length).toBeGreaterThan(200);
  expect(found(/@?(?:dblclick|auxclick|contextmenu)\b/g)).toEqual([]);
});

it('CR-O3: nothing is told by hovering alone: no title, no content that a rule for hovering shows', () => {
  expect(found(/\stitle=[$"'][^\n]*/g)).toEqual([]);
  expect(found(/@(?:mouseover|mouseenter|pointerenter|pointerover)\b/g)).toEqual([]);
  expect(found(/:hover[^{}]*\{[^{}]*\b(?:display|visibility|content|opacity)\s*:[^{}]*\}/g)).toEqual([]);
});

it('CR-O3: no element goes on or takes anything away by a timer; those that there are, are read here', () => {
  const timed = sources
    .filter(({ file }) => /^(?:places|parts|shell|help|print|charts)\//.test(file))
    .filter(({ text }) => /\bset(?:Timeout|Interval)\(/.test(text));
  expect(timed.map(({ file }) => file).toSorted()).toEqual(Object.keys(TIMED).toSorted());
});

it('the checks find what they look for', () => {
  expect(' title="South won"').toMatch(/\stitle=[$"'][^\n]*/);
  expect('.tip:hover span { display: block }').toMatch(/:hover[^{}]*\{[^{}]*\bdisplay\s*:/);
});

import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

/**
 * The rules of the exchange stand once, in core/exchange/steps.ts: who wants to change one finds one line.
 * Each pattern is what a copy of a rule looks like; a copy anywhere else fails.
 */
const house = resolve(import.meta.dirname, '../..');
const HOME = 'core/exchange/steps.ts';

const COPIES: Readonly<Record<string, RegExp>> = {
  'at which steps tiles may go unseen': /'left'\s*(?:\|\||&&|,)[^;\n]{0,20}'right2'/,
  'which steps make up a round':
    /'right'[^;\n]{0,16}'across'[^;\n]{0,16}'left'(?!\s*\]\s*as const)|'left2'[^;\n]{0,16}'across2'/,
  'how many tiles a pass has': /\b(?:PASS_SIZE|GIVEN)\b\s*(?::[^=\n]+)?=\s*3\b|PassSize\[\] = \[/,
  'that in the courtesy the smaller number counts': /Math\.min\([^;\n]*(?:asked|offered\b|offered\()/,
  'how far the tiles of a step travel': /\bright2:\s*[1-3]\b|\bleft2:\s*[1-3]\b/,
};

/** What looks like a copy and speaks of something else. */
const OTHERS: Readonly<Record<string, string>> = {
  'core/game/evening.ts': 'chairs of an evening',
  'core/table/policies/planner.ts': 'passes still to come, a weight of that model',
};

const files = ['core', 'main', 'renderer'].flatMap((layer) =>
  readdirSync(join(house, layer), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts'))
    .map((name) => ({ path: `${layer}/${name}`, code: readFileSync(join(house, layer, name), 'utf8') })),
);

test('the sources were read, and the table stands where it should', () => {
  expect(files.length).toBeGreaterThan(300);
  expect(files.find(({ path }) => path === HOME)?.code).toContain('export const STEPS');
});

test.each(Object.entries(COPIES))('%s is written once', (_, copy) => {
  const copies = files.filter(({ path, code }) => path !== HOME && !(path in OTHERS) && copy.test(code));
  expect(copies.map(({ path }) => path)).toEqual([]);
});

test('that a joker is never passed is decided once: what deals with the exchange asks mayBePassed', () => {
  const sees = /from '[^']*\/exchange\/(?:steps|state|moves)\.ts'/;
  const compares = /(?:[!=]== JOKER\b|\.count\(JOKER\) [>=]|includes\(JOKER\))/;
  const copies = files.filter(({ path, code }) => path !== HOME && sees.test(code) && compares.test(code));
  expect(copies.map(({ path }) => path).filter((path) => !(path in JOKERS_OF_PLAY))).toEqual([]);
});

/** Files that know the exchange and ask of a joker for another reason. */
const JOKERS_OF_PLAY: Readonly<Record<string, string>> = {
  'core/chance/moment-chance.ts': 'a discarded joker is dead',
  'core/game/tile-fields.ts': 'a discarded joker is dead',
  'core/engine/others-document.ts': 'a discarded joker is dead',
  'core/others/others.ts': 'a discarded joker is dead',
  'core/game/seat-log.ts': 'jokers dealt, drawn and taken in a swap',
  'core/reading/verdicts.ts': 'a joker is always kept (MD-V2)',
  'core/review/choices.ts': 'a discarded joker is dead',
  'core/review/play-choices.ts': 'a discarded joker is dead',
  'core/table/policies/beginner.ts': 'the place of no kind in a list of worths',
  'core/table/policies/by-weight.ts': 'the place of no kind in a list of worths',
  'core/warmup/find-deal.ts': 'racks with as many jokers as another',
  'renderer/places/table/play/moves.ts': 'a discarded joker is dead',
  'renderer/places/table/play/advised.ts': 'whether a complete hand has no joker',
  'renderer/places/table/play/wr-group-entry.ts': 'the natural kind of an exposed group',
};

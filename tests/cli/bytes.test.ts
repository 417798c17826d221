import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { windrowAlone } from './run-windrow.ts';

/** What a command wrote when its form was fixed; only reach, and what is made of it, was written anew when it was repaired and when this card was no longer the demo card with its own fit. */
const before = (name: string): string => readFileSync(join(import.meta.dirname, 'bytes', `${name}.txt`), 'utf8');

/** The chance came later, and moves with what the simulated table shows: it is checked where it is made. */
const withoutChance = (text: string): string =>
  text.replaceAll(/"chance":[\d.]+,/g, '').replaceAll(/^(About \d+ games? in 100|This is provisional).*\n\n/gm, '');

/** The sentences that say why are tested in tests/plan; what is fixed is where they stand. */
const withoutReasons = (text: string): string => text.replaceAll(/^([^:\n]+:) [A-Z].*\.$/gm, '$1');

const TILES = 'FF N 0 13b 4578c 22d J';
/** The demo card as it was then; its lines stand in other sections since, with other points. */
const FIRST_CARD = 'tests/golden/0.1.0/card.json';
const RACK = ['--rack', TILES, '--card', FIRST_CARD] as const;
const NOW = ['--rack', TILES] as const;

test.each([
  ['read', ['read', ...RACK, '--json', '--top', '4']],
  ['readaway', ['read', ...RACK, '--gone', 'NN 5c', '--by', 'away', '--draws', '12', '--json', '--top', '3']],
  ['readtext', ['read', ...RACK, '--top', '3']],
  ['pass', ['pass', ...RACK, '--json', '--top', '4']],
  ['passgive', ['pass', ...RACK, '--step', 'left', '--give', 'N 0 1b', '--json']],
  ['passcourtesy', ['pass', ...RACK, '--step', 'courtesy', '--by', 'expectedAway', '--json', '--top', '5']],
  ['passtext', ['pass', ...RACK, '--top', '3']],
  ['card', ['card', FIRST_CARD, '--json']],
  ['deal', ['deal', '--seed', '5', '--json']],
  ['demoread', ['read', ...NOW, '--json', '--top', '4']],
  ['demopass', ['pass', ...NOW, '--json', '--top', '4']],
  ['demotext', ['read', ...NOW, '--top', '3']],
  ['democard', ['card', 'assets/demo.card.json', '--json']],
  ['deal14', ['deal', '--seed', '5', '--tiles', '14', '--json']],
])('%s writes the same bytes as ever', async (name, args) => {
  expect(withoutReasons(withoutChance((await windrowAlone(args)).out))).toBe(
    withoutReasons(withoutChance(before(name))),
  );
});

test('readlines writes the same bytes as ever', async () => {
  const racks = 'FF N 0 13b 4578c 22d J\nJJ FF NE 0 1389b 25c 7d\n';
  const { out } = await windrowAlone(['read', '--rack', '-', '--top', '2', '--card', FIRST_CARD], racks);
  expect(withoutChance(out)).toBe(withoutChance(before('readlines')));
});

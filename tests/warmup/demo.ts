import { readFileSync } from 'node:fs';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import type { Yardstick } from '../../core/review/yardstick.ts';
import { itemOfDeal } from '../../core/warmup/item.ts';
import { problemOf, type Sheet } from '../../core/warmup/sheet.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import type { Tiles } from '../../core/tiles/tiles.ts';

export const DEMO_TEXT = readFileSync(new URL('../../assets/demo.card.json', import.meta.url), 'utf8');

/** The demo card, ready for counting. */
export const yardstick: Yardstick = {
  compiled: compileCard(expectValue(readCardFile(DEMO_TEXT)).card),
  model: FIRST_REACH_MODEL,
};

/** A sheet of three deals for a class. */
export function classSheet(changes: Partial<Sheet> = {}): Sheet {
  return {
    kind: 'windrow.sheet',
    schemaVersion: 1,
    appVersion: '0.1.0',
    id: 'thursday',
    title: 'Thursday class',
    madeAt: '2026-11-25T10:00:00Z',
    zone: 'UTC',
    paper: 'letter',
    card: JSON.parse(DEMO_TEXT),
    problems: [1, 2, 3].map((seed) => problemOf(itemOfDeal({ seed, tiles: 13, kind: 'any' }))),
    ...changes,
  };
}

export function tiles(text: string): Tiles {
  return expectValue(parseTiles(text));
}

/** Runs something made of steps to its end. */
export function finish<Value>(steps: Generator<unknown, Value>): Value {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

import { readFileSync } from 'node:fs';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import type { Engine } from '../../core/review/worth.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import type { Tiles } from '../../core/tiles/tiles.ts';

export const DEMO_TEXT = readFileSync(new URL('../../assets/demo.card.json', import.meta.url), 'utf8');

/** The demo card, ready for counting. */
export const engine: Engine = {
  compiled: compileCard(expectValue(readCardFile(DEMO_TEXT)).card),
  model: FIRST_REACH_MODEL,
};

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

import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { type CompiledCard, compileCard } from '../../core/reading/compiled.ts';

/** The three cards of the calibration, by the name that the report gives them. */
export const CARD_FILES = {
  demo: 'assets/demo.card.json',
  wide: 'tests/calibration/cards/wide.card.json',
  narrow: 'tests/calibration/cards/narrow.card.json',
} as const;
export type CardName = keyof typeof CARD_FILES;
export const CARD_NAMES: readonly CardName[] = ['demo', 'wide', 'narrow'];

/** `root` is the project's top folder. */
export function calibrationCard(name: CardName, root: string): CompiledCard {
  const read = expectValue(readCardFile(readFileSync(resolve(root, CARD_FILES[name]), 'utf8')));
  if (read.problems.length > 0) throw new Error(`${name}: ${read.problems[0]?.message}`);
  return compileCard(read.card);
}

import { readFileSync } from 'node:fs';
import { readCardFile } from '../../core/card/file.ts';
import { expectValue } from '../../core/base/result.ts';
import { type CompiledCard, compileCard } from '../../core/reading/compiled.ts';
import { makeTableCard, type TableCard } from '../../core/table/table-card.ts';

export const demoCard: CompiledCard = compileCard(
  expectValue(readCardFile(readFileSync(new URL('../../assets/demo.card.json', import.meta.url), 'utf8'))).card,
);
export const demoTable: TableCard = makeTableCard(demoCard);

interface LineSketch {
  readonly id: string;
  readonly pattern: string;
  readonly slide?: number;
  readonly concealed?: boolean;
  readonly points?: number;
}

/** A card of a few lines, for cases worked out by hand. */
export function cardOf(...lines: LineSketch[]): CompiledCard {
  const document = {
    format: 'windrow.card',
    version: 1,
    title: 'Trial',
    season: '',
    sections: [{ name: 'All', lines }],
  };
  return compileCard(expectValue(readCardFile(JSON.stringify(document))).card);
}

import { readFileSync } from 'node:fs';
import { type CardFile, readCardFile } from '../../core/card/file.ts';
import { expectValue } from '../../core/base/result.ts';
import { type CompiledCard, compileCard } from '../../core/reading/compiled.ts';
import { cardMark } from '../../core/card/mark.ts';
import { shippedChance } from '../../core/chance/card-chance.ts';
import { type ExchangeTerms, USUAL_EXCHANGE } from '../../core/future/terms.ts';
import { makeTableCard, type TableCard } from '../../core/table/table-card.ts';

const demoFile = expectValue(
  readCardFile(readFileSync(new URL('../../assets/demo.card.json', import.meta.url), 'utf8')),
);
export const demoCard: CompiledCard = compileCard(demoFile.card);
/** The demo card in its first order, for what is fixed to the bit. */
export const firstCard: CompiledCard = compileCard(
  expectValue(readCardFile(readFileSync(new URL('../golden/0.1.0/card.json', import.meta.url), 'utf8'))).card,
);
export const demoTable: TableCard = makeTableCard(demoCard);
/** What the engine assumes of an exchange with the demo card. */
export const demoTerms: ExchangeTerms = {
  fit: shippedChance(cardMark(demoFile.document), 'club') ?? USUAL_EXCHANGE.fit,
};

interface LineSketch {
  readonly id: string;
  readonly pattern: string;
  readonly slide?: number;
  readonly concealed?: boolean;
  readonly points?: number;
}

/** A card of a few lines, for cases worked out by hand. */
export function cardOf(...lines: LineSketch[]): CompiledCard {
  return compileCard(trialFile(lines).card);
}

/** The same as a document. */
export function cardDocument(...lines: readonly LineSketch[]): CardFile['document'] {
  return trialFile(lines).document;
}

function trialFile(lines: readonly LineSketch[]): CardFile {
  const document = {
    format: 'windrow.card',
    version: 1,
    title: 'Trial',
    season: '',
    sections: [{ name: 'All', lines }],
  };
  return expectValue(readCardFile(JSON.stringify(document)));
}

import { type Result, success } from '../../core/base/result.ts';
import type { Card } from '../../core/card/card.ts';
import { readCardFile } from '../../core/card/file.ts';
import { fitsGroups } from '../../core/game/hand-view.ts';
import type { Group } from '../../core/game/tile-fields.ts';
import { type CompiledCard, compileCard } from '../../core/reading/compiled.ts';

let kept: { readonly text: string; readonly compiled: CompiledCard } | undefined;
let keptOpen: { readonly whole: CompiledCard; readonly groups: string; readonly open: CompiledCard } | undefined;

/** A card made ready for counting; the last one is kept, since a game stays with its card. */
export function compiledCard(text: string): Result<CompiledCard> {
  if (kept?.text === text) return success(kept.compiled);
  const read = readCardFile(text);
  if (!read.ok) return read;
  kept = { text, compiled: compileCard(read.value.card) };
  return success(kept.compiled);
}

/** The card with only the ways that hold the groups laid open; a line without any stays, empty. */
export function openCard(whole: CompiledCard, fixed: readonly Group[]): CompiledCard {
  if (fixed.length === 0) return whole;
  const groups = fixed.map(({ kind, size }) => `${kind} ${size}`).join();
  if (keptOpen?.whole !== whole || keptOpen.groups !== groups) {
    keptOpen = { whole, groups, open: compileCard(withOpenWays(whole.card, fixed)) };
  }
  return keptOpen.open;
}

function withOpenWays(card: Card, fixed: readonly Group[]): Card {
  return {
    ...card,
    sections: card.sections.map((section) => ({
      ...section,
      lines: section.lines.map((line) => ({
        ...line,
        ways: line.concealed ? [] : line.ways.filter((way) => fitsGroups(way, fixed)),
      })),
    })),
  };
}

import type { CompiledCard } from './compiled.ts';

/** How much of a rack's reach lies in one section. */
export interface SectionShare {
  readonly section: string;
  /** From 0 to 1; the shares of a reading sum to one. */
  readonly share: number;
}

/**
 * The lean: each line counts with the reach of its best way, a section with the sum over its
 * lines, and the shares are these sums over the whole. Only a line's best way counts because its
 * ways share most of their tiles. If nothing can be reached any more, every section has an equal
 * share. Largest share first, then the card's order.
 */
export function leanOf(compiled: CompiledCard, reaches: Float64Array): SectionShare[] {
  const best = bestOfLines(compiled, reaches);
  const { sections } = compiled.card;
  const sums = new Float64Array(sections.length);
  let line = 0;
  for (const [place, section] of sections.entries()) {
    for (let more = 0; more < section.lines.length; more += 1, line += 1) {
      sums[place] = (sums[place] as number) + (best[line] as number);
    }
  }
  const whole = sums.reduce((sum, next) => sum + next, 0);
  const shares = sections.map((section, place) => ({
    section: section.name,
    share: whole > 0 ? (sums[place] as number) / whole : 1 / sections.length,
  }));
  return shares.sort((one, other) => other.share - one.share);
}

/** For each line, in the order of `compiled.lines`, the largest value of its ways; 0 for a line without ways. */
export function bestOfLines(compiled: CompiledCard, values: Float64Array): Float64Array {
  const best = new Float64Array(compiled.lines.length);
  for (let way = 0; way < compiled.wayCount; way += 1) {
    const line = compiled.lineOf[way] as number;
    best[line] = Math.max(best[line] as number, values[way] as number);
  }
  return best;
}

/** A block of cases whose mean outcome is taken as one. */
export interface Block {
  readonly count: number;
  /** Mean of what was predicted. */
  readonly predicted: number;
  /** Share that came true. */
  readonly share: number;
}

/**
 * Pools neighbours until the shares rise: the least-squares monotone fit (pool adjacent violators:
 * Ayer, Brunk, Ewing, Reid and Silverman, "An empirical distribution function for sampling with
 * incomplete information", Annals of Mathematical Statistics 26 (1955), 641-647).
 */
export function pooled(blocks: readonly Block[]): Block[] {
  const rising: Block[] = [];
  for (const block of blocks) {
    let last = block;
    for (let before = rising.at(-1); before !== undefined && before.share >= last.share; before = rising.at(-1)) {
      rising.pop();
      last = joined(before, last);
    }
    rising.push(last);
  }
  return rising;
}

function joined(one: Block, other: Block): Block {
  const count = one.count + other.count;
  const mean = (of: 'predicted' | 'share'): number => (one.count * one[of] + other.count * other[of]) / count;
  return { count, predicted: mean('predicted'), share: mean('share') };
}

/** One case: what was predicted, 0 to 1, and whether it came true. */
export interface Case {
  readonly predicted: number;
  readonly won: boolean;
}

/** Cases by rising prediction in blocks of the same weight, as near as may be. */
export function blocksOf(cases: readonly Case[], count: number, weigh: (each: Case) => number = () => 1): Block[] {
  const sorted = [...cases].sort((one, other) => one.predicted - other.predicted);
  const total = sorted.reduce((sum, each) => sum + weigh(each), 0);
  const groups: Case[][] = Array.from({ length: count }, () => []);
  let before = 0;
  for (const each of sorted) {
    const weight = weigh(each);
    const place = Math.floor(((before + weight / 2) / total) * count);
    groups[Math.min(count - 1, place)]?.push(each);
    before += weight;
  }
  return groups.filter((group) => group.length > 0).map(blockOf);
}

function blockOf(cases: readonly Case[]): Block {
  const sum = cases.reduce((all, { predicted }) => all + predicted, 0);
  const won = cases.filter((each) => each.won).length;
  return { count: cases.length, predicted: sum / cases.length, share: won / cases.length };
}

/**
 * A second, slow reading of a pattern, from the words of its grammar alone and sharing no code
 * with `core/card`: every assignment of suits, winds, dragon and shifts that it speaks of is tried, and each hand
 * is laid from a real pile of 152 tiles and 8 jokers.
 */
const SUIT_LETTERS = ['b', 'c', 'd'];
const NAMED: Record<string, string> = { bam: 'b', crak: 'c', dot: 'd' };
const DRAGON_OF: Record<string, string> = { b: 'G', c: 'R', d: '0' };

interface Assignment {
  suits: Record<string, string>;
  winds: Record<string, string>;
  dragon: string;
  first: number;
  second: number;
}

/**
 * The distinct ways of a valid pattern, each as sorted texts such as `2x5b 4xF`; with `distinct` only those in which no
 * number with `'` is the same as one without a mark.
 */
export function referenceWays(pattern: string, slide: number, slide2: number, distinct = false): Set<string> {
  const ways = new Set<string>();
  const groups = pattern
    .trim()
    .split(/\s+/)
    .flatMap((text) => (text === 'NEWS' ? ['N', 'E', 'W', 'S'] : [text]));
  for (const assignment of assignments(pattern, slide, slide2)) {
    const tiles = groups.map((group) => layGroup(group, assignment));
    if (tiles.some((tile) => tile === undefined)) continue;
    if (distinct && meets(pattern, assignment)) continue;
    if (!canLie(tiles as [number, string][])) continue;
    ways.add(
      (tiles as [number, string][])
        .map(([size, tile]) => `${size}x${tile}`)
        .sort()
        .join(' '),
    );
  }
  return ways;
}

function* assignments(pattern: string, slide: number, slide2: number): Generator<Assignment> {
  const [ws, xs] = /[wx]/.test(pattern) ? ['NEWS', 'NEWS'] : ['N', 'E'];
  const dragons = /D(\s|$)/.test(pattern) ? 'GR0' : 'G';
  const firsts = /\d[a-z]+(\s|$)/.test(pattern) ? shifts(slide) : [0];
  const seconds = pattern.includes("'") ? shifts(slide2) : [0];
  for (const suits of suitChoices()) {
    for (const w of ws) {
      for (const x of xs) {
        if (w === x) continue;
        for (const dragon of dragons) {
          for (const first of firsts) {
            for (const second of seconds) yield { suits, winds: { w, x }, dragon, first, second };
          }
        }
      }
    }
  }
}

function suitChoices(): Record<string, string>[] {
  const triples = SUIT_LETTERS.flatMap((a) => SUIT_LETTERS.flatMap((b) => SUIT_LETTERS.map((c) => [a, b, c] as const)));
  return triples.filter((triple) => new Set(triple).size === 3).map(([a, b, c]) => ({ a, b, c, ...NAMED }));
}

function shifts(slide: number): number[] {
  const all = [...Array(17).keys()].map((place) => place - 8);
  return slide === 0 ? [0] : all.filter((shift) => Math.abs(shift) % slide === 0);
}

/** Size and tile of a group, or nothing if a number leaves 1 to 9. */
function layGroup(group: string, { suits, winds, dragon, first, second }: Assignment): [number, string] | undefined {
  const number = /^([1-9])\1*(a|bam|b|crak|c|dot)([='])?$/.exec(group);
  if (number !== null) {
    const [, digit = '', suit = '', mark] = number;
    const moved = Number(digit) + (mark === '=' ? 0 : mark === "'" ? second : first);
    if (moved < 1 || moved > 9) return undefined;
    return [group.lastIndexOf(digit) + 1, `${moved}${suits[suit]}`];
  }
  const size = /^(.)\1*/.exec(group)?.[0].length ?? 0;
  const symbol = group[0] ?? '';
  if (symbol === 'D') return [size, group.length === size ? dragon : (DRAGON_OF[suits[group.slice(size)] ?? ''] ?? '')];
  return [size, winds[symbol] ?? symbol];
}

function meets(pattern: string, { first, second }: Assignment): boolean {
  const numbers = (mark: RegExp): string[] => [...pattern.matchAll(mark)].map(([, digit = '']) => digit);
  const plain = numbers(/(\d)[a-z]+(?=\s|$)/g).map((digit) => Number(digit) + first);
  return numbers(/(\d)[a-z]+'/g).some((digit) => plain.includes(Number(digit) + second));
}

/** Lays singles and pairs from the pile first, then the rest, with jokers where the pile is empty. */
function canLie(tiles: readonly [number, string][]): boolean {
  const pile = new Map<string, number>();
  let jokers = 8;
  for (const [size, tile] of [...tiles].sort(([one], [other]) => Math.min(one, 3) - Math.min(other, 3))) {
    for (let laid = 0; laid < size; laid += 1) {
      const left = pile.get(tile) ?? (tile === 'F' ? 8 : 4);
      if (left > 0) pile.set(tile, left - 1);
      else if (size < 3) return false;
      else jokers -= 1;
    }
  }
  return jokers >= 0;
}

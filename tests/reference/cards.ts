import { readFileSync } from 'node:fs';
import { type Random, shuffle } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import type { Card, Line } from '../../core/card/card.ts';
import { readCardFile } from '../../core/card/file.ts';
import type { Way, WayGroup } from '../../core/card/way.ts';
import { shuffledSet } from '../../core/tiles/deal.ts';
import { KINDS, type Kind, supplyOf } from '../../core/tiles/kinds.ts';
import { Tiles } from '../../core/tiles/tiles.ts';

/** The demo card, as shipped; tests and benchmarks run in the project's folder. */
export function demoCard(): Card {
  return expectValue(readCardFile(readFileSync('assets/demo.card.json', 'utf8'))).card;
}

/**
 * A card of so many ways, one a line, in the manner of another card: ways of that card with the
 * number, wind and dragon tiles renamed at random, so that group sizes and repeats stay.
 */
export function grownCard(card: Card, ways: number, random: Random): Card {
  const models = card.sections.flatMap((section) => section.lines.flatMap((line) => line.ways));
  return cardOf(
    Array.from({ length: ways }, (_, place) => {
      const names = [KINDS[0] as Kind, KINDS[1] as Kind, ...shuffle(KINDS.slice(2), random)];
      const model = models[place % models.length] as Way;
      return wayOf(model.groups.map(({ kind, size }) => ({ kind: names[kind] as Kind, size })));
    }),
  );
}

/** A card of lines made of ways given, all in one section unless told otherwise. */
export function cardOf(ways: readonly Way[], concealed = false, sections = ['Only']): Card {
  const lines = ways.map((way, place) =>
    lineOf([way], `line-${place}`, sections[place % sections.length] as string, concealed),
  );
  return {
    title: 'Test',
    season: '',
    sections: sections.map((name) => ({ name, lines: lines.filter(({ section }) => section === name) })),
  };
}

export function lineOf(ways: readonly Way[], id: string, section = 'Only', concealed = false, name = section): Line {
  return { id, section, name, pattern: '', concealed, points: 25, note: '', ways };
}

export function wayOf(groups: readonly WayGroup[]): Way {
  const sorted = [...groups].sort((one, other) => one.kind - other.kind || one.size - other.size);
  return { key: sorted.map(({ kind, size }) => `${kind}:${size}`).join(' '), groups: sorted, asPrinted: groups };
}

/** A random way of 14 tiles in groups of 1 to 6 that the set can supply; kinds often repeat. */
export function randomWay(random: Random, kinds: readonly Kind[] = KINDS.slice(1)): Way {
  for (;;) {
    const groups: WayGroup[] = [];
    let left = 14;
    while (left > 0) {
      const size = Math.min(left, 1 + random.below(6));
      groups.push({ kind: kinds[random.below(kinds.length)] as Kind, size });
      left -= size;
    }
    const way = wayOf(groups);
    if (canSupply(way)) return way;
  }
}

function canSupply(way: Way): boolean {
  const jokers = KINDS.reduce((sum, kind) => {
    const all = way.groups.filter((group) => group.kind === kind).reduce((total, { size }) => total + size, 0);
    return sum + Math.max(0, all - supplyOf(kind));
  }, 0);
  const plainFits = KINDS.every((kind) => {
    const plain = way.groups.filter((group) => group.kind === kind && group.size < 3);
    return plain.reduce((total, { size }) => total + size, 0) <= supplyOf(kind);
  });
  return plainFits && jokers <= 8;
}

/** So many tiles dealt from a shuffled set. */
export function randomRack(random: Random, size = 13): Tiles {
  return Tiles.of(shuffledSet(random).slice(0, size));
}

/**
 * A rack that is near a way: some of its tiles, a few jokers and others, so that small away and
 * large reach are met as well.
 */
export function rackNear(way: Way, random: Random, kept = 4 + random.below(9)): Tiles {
  const wanted = way.groups.flatMap(({ kind, size }) => Array<Kind>(size).fill(kind));
  const set = shuffledSet(random);
  const counts = new Uint8Array(36);
  const take = (kind: Kind): void => {
    const at = set.indexOf(kind);
    if (at < 0) return;
    set.splice(at, 1);
    counts[kind] = (counts[kind] as number) + 1;
  };
  for (const kind of wanted.slice(0, kept)) take(random.below(6) === 0 ? (0 as Kind) : kind);
  while (Tiles.fromCounts(counts).size < 13) take(set[0] as Kind);
  return Tiles.fromCounts(counts);
}

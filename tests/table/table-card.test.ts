import { describe, expect, it } from 'vitest';
import { groupCode, holdsGroups, makeTableCard, type TableCard } from '../../core/table/table-card.ts';
import { KINDS } from '../../core/tiles/kinds.ts';
import { demoCard } from './cards.ts';

describe('a card for the simulated table', () => {
  const demoTable = (): TableCard => makeTableCard(demoCard);
  it('says of each way what it needs of a kind in small groups and in large ones, and which large ones', () => {
    const table = demoTable();
    const { users, userStarts } = demoCard;
    for (const kind of KINDS) {
      const places = Array.from(
        { length: userStarts[kind + 1]! - userStarts[kind]! },
        (_, at) => userStarts[kind]! + at,
      );
      const usersOfKind = places.map((place) => users[place]!);
      for (const [way, { groups }] of demoCard.ways.entries()) {
        const own = groups.filter((group) => group.kind === kind);
        const [small, large] = [own.filter(({ size }) => size < 3), own.filter(({ size }) => size >= 3)];
        const tiles = (list: typeof own): number => list.reduce((sum, { size }) => sum + size, 0);
        const at = usersOfKind.indexOf(way);
        expect(at >= 0).toBe(own.length > 0);
        expect(table.groups[way * KINDS.length + kind]).toBe(
          large.reduce((code, { size }) => code + groupCode(size), 0),
        );
        if (at < 0) continue;
        expect(table.userPlain[places[at]!]).toBe(tiles(small));
        expect(table.userWild[places[at]!]).toBe(tiles(large));
      }
    }
  });

  it('says what is missing for an empty rack, fourteen tiles in all, and what each way scores', () => {
    const table = demoTable();
    for (const [way, { groups }] of demoCard.ways.entries()) {
      const small = groups.reduce((sum, { size }) => (size < 3 ? sum + size : sum), 0);
      expect(table.allAway[way]).toBe(14);
      expect(table.allWild[way]).toBe(14 - small);
      expect(table.points[way]).toBe(demoCard.lines[demoCard.lineOf[way]!]!.points);
    }
  });
});

describe('groups of one kind', () => {
  it('are held when there are as many of each size: all cases of up to three', () => {
    const sizes = [3, 4, 5, 6];
    /** Up to three groups of a size, as digits to base four. */
    const countsOf = (code: number): number[] => sizes.map((_, place) => (code >> (2 * place)) & 3);
    const codeOf = (counts: readonly number[]): number =>
      counts.reduce((sum, count, place) => sum + count * groupCode(sizes[place]!), 0);
    for (let has = 0; has < 256; has += 1) {
      for (let wanted = 0; wanted < 256; wanted += 1) {
        const [own, other] = [countsOf(has), countsOf(wanted)];
        const holds = own.every((count, place) => count >= other[place]!);
        if (holdsGroups(codeOf(own), codeOf(other)) !== holds)
          expect.fail(`${own.join()} holds ${other.join()}: ${holds}`);
      }
    }
  });
});

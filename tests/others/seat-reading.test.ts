import { describe, expect, test } from 'vitest';
import type { WayGroup } from '../../core/card/way.ts';
import { seatFit, type SeatFit } from '../../core/others/fit.ts';
import { MOST_AWAY, RackCounter } from '../../core/others/rack-counts.ts';
import { type SeatContext, SeatReading } from '../../core/others/seat-reading.ts';
import type { SeatSigns } from '../../core/others/seat-ways.ts';
import type { ShownGroup } from '../../core/table/policy.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { JOKER, type Kind, KIND_COUNT, KINDS } from '../../core/tiles/kinds.ts';
import { kindsOf } from '../../core/tiles/text.ts';
import { cardOf } from '../table/cards.ts';
import { awayOf, type Copies, racksFrom, withTile } from './brute-force.ts';

/** A card of five lines; the last one is concealed. */
const compiled = cardOf(
  { id: 'steps', pattern: 'FF 1111bam 2222bam 3333bam' },
  { id: 'dragon', pattern: '1111bam 2222bam GGG 333bam' },
  { id: 'winds', pattern: '1111bam 2222bam NNNN EE' },
  { id: 'apart', pattern: 'FFF 1111bam 333bam 5555bam' },
  { id: 'closed', pattern: '1111bam 2222bam NNN GGG', concealed: true },
);
const card = makeTableCard(compiled);
const kind = (text: string): Kind => kindsOf(text)[0] as Kind;
const shown: ShownGroup[] = [
  { kind: kind('1b'), size: 4, jokers: 1 },
  { kind: kind('2b'), size: 4, jokers: 0 },
];
/** Five tiles lie hidden, among these nineteen. */
const UNSEEN: Copies = new Map([
  [JOKER, 2],
  [kind('F'), 3],
  [kind('3b'), 3],
  [kind('G'), 2],
  [kind('N'), 3],
  [kind('E'), 2],
  [kind('9d'), 4],
]);
const HIDDEN = 5;
const AWAYS = [0, 0.2, 0.35, 0.25, 0.15, 0.05];
const counted: SeatFit = {
  aim: { slope: 1, thrown: -0.5, passed: -0.25 },
  win: (share) => share,
  group: (share) => share,
};

function context(fit: SeatFit = counted, aways: ArrayLike<number> = AWAYS, unseen: Copies = UNSEEN): SeatContext {
  const counts = new Uint8Array(KIND_COUNT);
  for (const [each, count] of unseen) counts[each] = count;
  return { card, counter: new RackCounter(counts), drawn: 49, aways, fit };
}

function signs(thrown: string, passed = '', groups: readonly ShownGroup[] = shown): SeatSigns {
  return { shown: groups, thrown: kindsOf(thrown), passed: kindsOf(passed) };
}

/** The lines left, with what each still wants, and what discards and passes leave of it; worked out by hand. */
const LEFT: readonly { readonly id: string; readonly groups: readonly WayGroup[] }[] = [
  {
    id: 'steps',
    groups: [
      { kind: kind('F'), size: 2 },
      { kind: kind('3b'), size: 4 },
    ],
  },
  {
    id: 'dragon',
    groups: [
      { kind: kind('G'), size: 3 },
      { kind: kind('3b'), size: 3 },
    ],
  },
  {
    id: 'winds',
    groups: [
      { kind: kind('N'), size: 4 },
      { kind: kind('E'), size: 2 },
    ],
  },
];
const SIGNS_LEFT: Readonly<Record<string, number>> = { steps: 1, dragon: Math.exp(-0.5), winds: Math.exp(-0.25) };

/** For each line left and away the racks, counted by laying every one. */
function racksByLine(): number[][] {
  const racks = LEFT.map(() => Array<number>(MOST_AWAY + 1).fill(0));
  for (const { rack, ways } of racksFrom(UNSEEN, HIDDEN)) {
    for (const [place, { groups }] of LEFT.entries()) {
      const row = racks[place] as number[];
      const away = awayOf(groups, rack);
      row[away] = (row[away] ?? 0) + ways;
    }
  }
  return racks;
}

const sum = (values: readonly number[]): number => values.reduce((all, each) => all + each, 0);

describe('the lines of a seat, on a card of five lines', () => {
  // It threw a green dragon and passed a north wind.
  const reading = new SeatReading(signs('G', 'N'), context());

  test('OT-1: only lines that hold all groups laid open, none that must stay concealed', () => {
    const ids = reading.lines().map(({ line }) => compiled.lines[line]?.id);
    expect(new Set(ids)).toEqual(new Set(['dragon', 'steps', 'winds']));
    expect(reading.isDead).toBe(false);
  });

  test('OT-3, OT-4, OT-5: their weights are those of counting every rack', () => {
    const racks = racksByLine();
    const near = LEFT.map((_, place) =>
      sum(
        AWAYS.map((share, away) =>
          away === 0 ? 0 : (share * (racks[place]?.[away] ?? 0)) / sum(racks.map((row) => row[away] ?? 0)),
        ),
      ),
    );
    const weights = LEFT.map(({ id }, place) => (near[place] as number) * (SIGNS_LEFT[id] as number));
    const said = new Map(reading.lines().map(({ line, weight }) => [compiled.lines[line]?.id, weight]));
    for (const [place, { id }] of LEFT.entries()) {
      expect(said.get(id), id).toBeCloseTo((weights[place] as number) / sum(weights), 12);
    }
    expect(sum([...said.values()])).toBeCloseTo(1, 12);
  });

  test('what it still wants is what its lines want, by their weights', () => {
    const weight = new Map(reading.lines().map((each) => [compiled.lines[each.line]?.id, each.weight]));
    const wants = reading.wants();
    const of = (...ids: readonly string[]): number => sum(ids.map((id) => weight.get(id) ?? 0));
    expect(wants[kind('3b')]).toBeCloseTo(of('steps', 'dragon'), 12);
    expect(wants[kind('F')]).toBeCloseTo(of('steps'), 12);
    expect(wants[kind('E')]).toBeCloseTo(of('winds'), 12);
    expect(wants[kind('1b')]).toBe(0);
    expect(wants[kind('9d')]).toBe(0);
  });

  test('OT-8: the chances that it takes a tile are those of counting every rack', () => {
    const racks = racksByLine();
    const left = LEFT.map(({ id }) => SIGNS_LEFT[id] as number);
    const all = (away: number): number => sum(racks.map((row, place) => (left[place] as number) * (row[away] ?? 0)));
    for (const each of KINDS.filter((tile) => tile !== JOKER)) {
      let wins = 0;
      const calls = Array<number>(MOST_AWAY + 1).fill(0);
      for (const { rack, ways } of racksFrom(UNSEEN, HIDDEN)) {
        for (const [place, { groups }] of LEFT.entries()) {
          const count = ways * (left[place] as number);
          const away = awayOf(groups, rack);
          const held = rack.get(each) ?? 0;
          const wanted = groups.find((group) => group.kind === each)?.size ?? 0;
          const isShort = held < wanted;
          if (away === 1 && isShort && awayOf(groups, withTile(rack, each)) === 0) wins += count;
          if (wanted > 2 && isShort && held + (rack.get(JOKER) ?? 0) >= wanted - 1)
            calls[away] = (calls[away] as number) + count;
        }
      }
      const take = reading.take(each);
      expect(take.win).toBeCloseTo((0.2 * wins) / all(1), 12);
      const group = sum(
        AWAYS.map((share, away) => (away < 2 || all(away) === 0 ? 0 : (share * (calls[away] as number)) / all(away))),
      );
      expect(take.group).toBeCloseTo(group, 12);
    }
  });

  test('a win by a tile is shared among the ways that it completes', () => {
    const parts = reading.completedBy(kind('3b'));
    expect(parts.length).toBe(2);
    expect(sum(parts.map(({ share }) => share))).toBeCloseTo(1, 12);
    expect(reading.completedBy(kind('9d'))).toEqual([]);
  });
});

describe('what must hold of every seat', () => {
  const club = (groups: number): SeatFit => seatFit('club', groups);

  test('OT-4: what a seat throws makes the lines that want it less likely, and no others', () => {
    const weightOf = (line: string, thrown: string): number =>
      new SeatReading(signs(thrown), context(club(2)))
        .lines()
        .filter(({ line: place }) => compiled.lines[place]?.id === line)
        .reduce((all, { weight }) => all + weight, 0);
    expect(weightOf('winds', 'N')).toBeLessThan(weightOf('winds', ''));
    expect(weightOf('steps', 'N')).toBeGreaterThan(weightOf('steps', ''));
    expect(weightOf('winds', '9d')).toBe(weightOf('winds', ''));
  });

  test('OT-9: a tile that no rack can take is safe to the last digit; one that some rack can take is not', () => {
    const reading = new SeatReading(signs(''), context(club(2)));
    for (const text of ['9d', '5b', '1b', '2b']) expect(reading.take(kind(text)), text).toEqual({ win: 0, group: 0 });
    for (const text of ['3b', 'N', 'E', 'F', 'G']) expect(reading.take(kind(text)).win, text).toBeGreaterThan(0);
    // With one dragon left besides the one discarded and no joker, no pung of them can be.
    const few = new Map([...UNSEEN, [JOKER, 0], [kind('G'), 1]] as const);
    expect(new SeatReading(signs(''), context(club(2), AWAYS, few)).take(kind('G'))).toEqual({ win: 0, group: 0 });
  });

  test('OT-7: a seat whose groups no line holds is dead, has no lines and takes nothing', () => {
    const wrong: ShownGroup[] = [
      { kind: kind('1b'), size: 4, jokers: 0 },
      { kind: kind('5b'), size: 3, jokers: 0 },
    ];
    const reading = new SeatReading(signs('', '', wrong), context(club(2)));
    expect(reading.isDead).toBe(true);
    expect(reading.lines()).toEqual([]);
    expect(reading.take(kind('3b'))).toEqual({ win: 0, group: 0 });
  });

  test('a seat that shows nothing may play concealed lines too', () => {
    const full: Copies = new Map(KINDS.map((each) => [each, each === JOKER || each === kind('F') ? 8 : 4]));
    const reading = new SeatReading(signs('', '', []), context(club(0), [0, 0, 0, 0.2, 0.3, 0.3, 0.2], full));
    expect(reading.lines().map(({ line }) => compiled.lines[line]?.id)).toContain('closed');
  });
});

test('OT-9: a tile that only a rack far from all hands could call is not said to be safe', () => {
  const few: Copies = new Map([[kind('3b'), 2], ...KINDS.slice(20).map((each): [Kind, number] => [each, 4])]);
  const farther = Array.from({ length: 15 }, (_, away) => (away > MOST_AWAY ? 1 : 0));
  const reading = new SeatReading(signs('', '', []), context(counted, farther, few));
  expect(reading.take(kind('3b')).group).toBeGreaterThan(0);
  expect(reading.take(kind('3b')).win).toBe(0);
  // With one copy left nobody can lay three open; nobody wants a nine of dots.
  const one: Copies = new Map([...few, [kind('3b'), 1]]);
  const less = new SeatReading(signs('', '', []), context(counted, farther, one));
  expect([less.take(kind('3b')), less.take(kind('9d'))]).toEqual(Array(2).fill({ win: 0, group: 0 }));
});

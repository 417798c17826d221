import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { finish } from '../../core/base/steps.ts';
import type { ExposedGroup, WayGroup } from '../../core/card/way.ts';
import { provisionalChance } from '../../core/chance/card-chance.ts';
import { SEATS } from '../../core/exchange/steps.ts';
import { deadSeats, wouldDie } from '../../core/game/dead-hands.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { DEFAULT_POINT_RULES } from '../../core/game/point-rules.ts';
import { paymentsOf } from '../../core/game/points.ts';
import { exposedCard } from '../../core/reading/exposed.ts';
import { GameChance } from '../../core/review/game-chance.ts';
import { playChoices } from '../../core/review/play-choices.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { type KindCode, kindOf } from '../../core/tiles/kinds.ts';
import { cardOf } from '../table/cards.ts';
import { play } from './helpers.ts';

const COMPILED = cardOf(
  { id: 'kongs', pattern: '1111bam 2222bam 3333bam 44bam' },
  { id: 'pungs', pattern: '111bam 111crak 111dot FF 222bam' },
  { id: 'twice', pattern: 'FF 2222bam 2222bam 3333dot' },
  { id: 'hidden', pattern: '555bam 555crak 5555dot 6666dot', concealed: true },
);
const { card: CARD } = COMPILED;

/** Whether each group finds a group of its own among those of a way, by trying every one. */
function findsPlaces([first, ...rest]: readonly WayGroup[], free: readonly WayGroup[]): boolean {
  if (first === undefined) return true;
  return free.some(
    (each, place) =>
      each.kind === first.kind && each.size === first.size && findsPlaces(rest, free.toSpliced(place, 1)),
  );
}

const allowed = (groups: readonly ExposedGroup[]): boolean =>
  groups.length === 0 ||
  CARD.sections.some(({ lines }) =>
    lines.some(({ concealed, ways }) => !concealed && ways.some((way) => findsPlaces(groups, way.groups))),
  );

const groups = fc.record({
  seat: fc.constantFrom(...SEATS),
  kind: fc.constantFrom(...(['1b', '2b', '3b', '1c', '1d', '3d', '5b'] as const).map(kindOf)),
  size: fc.integer({ min: 3, max: 5 }),
  jokers: fc.constantFrom(0, 1),
});

test('LG-4: dead is who has groups that find no places in any line, found by trying them all (2,000 tables)', () => {
  let [alive, dead] = [0, 0];
  const property = fc.property(fc.array(groups, { maxLength: 6 }), (exposures) => {
    const found = deadSeats(CARD, { exposures });
    for (const seat of SEATS) {
      const own = exposures.filter((each) => each.seat === seat);
      expect(found.includes(seat)).toBe(!allowed(own));
      if (own.length === 0) continue;
      expect(exposedCard(COMPILED, own).wayCount === 0).toBe(found.includes(seat));
      if (found.includes(seat)) dead += 1;
      else alive += 1;
    }
  });
  fc.assert(property, { seed: 4, numRuns: 2_000 });
  expect(Math.min(alive, dead)).toBeGreaterThan(300);
});

describe('LG-4: a call is asked about', () => {
  const seat = 'South';
  const pung = (tile: KindCode, size = 3): ExposedGroup & { seat: 'South' } => ({
    seat,
    kind: kindOf(tile),
    size,
    jokers: 0,
  });
  test.each([
    ['the first group of a line', [], pung('1b'), false],
    ['a group of no line', [], pung('9d'), true],
    ['a group of another size', [], pung('3b', 5), true],
    ['a group of a concealed line only', [], pung('5b'), true],
    ['a second group of the same line', [pung('1b')], pung('1c'), false],
    ['a second group of another line', [pung('1b')], pung('2b', 4), true],
    ['the same group twice where a line has it twice', [pung('2b', 4)], pung('2b', 4), false],
    ['the same group twice where no line has', [pung('1b')], pung('1b'), true],
    ['any group of a hand that is dead already', [pung('9d')], pung('9c'), false],
  ])('%s', (_, exposures, group, isDeadly) => {
    expect(wouldDie(CARD, { exposures }, group)).toBe(isDeadly);
  });
});

describe('LG-5: a dead hand', () => {
  const DEAD: readonly GameEvent[] = [
    { type: 'dealt', seat: 'South', tiles: '1111b 2222b 44b 99d F' },
    { type: 'discarded', seat: 'East', tile: '9d' },
    { type: 'called', seat: 'South', tile: '9d', group: '999d' },
  ];
  const state = play(...DEAD);
  const table = makeTableCard(COMPILED);
  const chance = provisionalChance('club');

  test('has the chance 0, exactly, with any choice, and no win among them', () => {
    expect(deadSeats(CARD, state)).toEqual(['South']);
    expect(new GameChance(table, chance).at(state, DEAD)).toBe(0);
    const { choices } = finish(playChoices({ table, chance }, state, DEAD));
    expect(choices.length).toBeGreaterThan(0);
    for (const choice of choices) expect(choice).toMatchObject({ chance: 0, hand: null });
    expect(choices.map(({ action }) => action)).not.toContain('win');
  });

  test('pays the winner as it would alive', () => {
    const won = { type: 'ended', result: 'won', winner: 'East', by: 'draw', lineId: 'kongs' } as const;
    const payments = paymentsOf(play(...DEAD, won).result, CARD, DEFAULT_POINT_RULES);
    expect(payments.ok && payments.value.South).toBe(payments.ok && payments.value.West);
    expect(payments.ok && payments.value.South < 0).toBe(true);
  });
});

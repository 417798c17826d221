import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { passTable } from '../../core/plan/pass-table.ts';
import { BASE_MODELS, baseStageAt } from '../../core/reading/base-model.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { HAND_CURVES } from '../../core/reading/hand-curves.ts';
import { handModel, handModelOf, levelOf } from '../../core/reading/hand-model.ts';
import { type Known, knownTiles } from '../../core/reading/known.ts';
import { calibrated } from '../../core/reading/reach.ts';
import type { ReachModel } from '../../core/reading/reach-model.ts';
import { readKnown } from '../../core/reading/reading.ts';
import type { Kind } from '../../core/tiles/kinds.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { cardOf, rackNear, randomWay, wayOf } from '../reference/cards.ts';

const BASE = BASE_MODELS[0] as ReachModel;
const SAME = { intercept: 0, slope: 1 };
const knownOf = (text: string): Known => expectValue(knownTiles(expectValue(parseTiles(text))));
const cardWith = (text: string) =>
  compileCard(
    cardOf([
      wayOf(
        text.split(' ').map((group) => {
          const tiles = expectValue(parseTiles(group));
          return { kind: tiles.toKinds()[0] as Kind, size: tiles.size };
        }),
      ),
    ]),
  );
const reachOf = (card: ReturnType<typeof cardWith>, known: Known, model: ReachModel): number =>
  readKnown(card, known, 0, model).reaches[0] as number;

describe('MD-C11. the level of a card', () => {
  test('is the log of the ratio of odds; nothing is said of a card that is never or always won', () => {
    expect(levelOf(0.25, 0.2)).toBeCloseTo(Math.log(0.25 / 0.75 / (0.2 / 0.8)), 12);
    expect(levelOf(0.2, 0.2)).toBe(0);
    expect([levelOf(0, 0.2), levelOf(1, 0.2), levelOf(0.2, 0), levelOf(0.2, 1)]).toEqual([0, 0, 0, 0]);
  });

  test('is applied once: odds of the base model times its exponential, where the lines change nothing', () => {
    const model = handModelOf(BASE, Math.log(2), { plain: SAME, wild: SAME });
    for (const knots of [model.calibration, model.wildCalibration ?? []]) {
      expect(knots.length).toBeGreaterThan(10);
      for (const { raw, reach } of knots.slice(1, -1)) {
        const base = calibrated(BASE.calibration, raw);
        expect(reach / (1 - reach)).toBeCloseTo((2 * base) / (1 - base), 9);
      }
    }
  });

  test('raises every reach that it can', () => {
    const [low, high] = [handModel(0, 0), handModel(0, 0.5)];
    for (const [place, { reach }] of low.calibration.entries()) {
      const more = high.calibration[place]?.reach ?? 0;
      if (reach > 0 && reach < 1) expect(more).toBeGreaterThan(reach);
      else expect(more).toBe(reach);
    }
  });
});

describe('MD-C12. two lines', () => {
  const card = cardWith('FF 2222b 4444c 6666d');
  const groupTile = knownOf('FF 2222b 4444c 66d J');
  const pairTile = knownOf('F 2222b 4444c 6666d');

  test('apart for hands that are missing a tile of a single or pair and hands that are not', () => {
    const apart = { ...BASE, wildCalibration: BASE.calibration.map(({ raw }) => ({ raw, reach: raw ** 0.5 })) };
    expect(reachOf(card, groupTile, apart)).toBeGreaterThan(reachOf(card, groupTile, BASE));
    expect(reachOf(card, pairTile, apart)).toBe(reachOf(card, pairTile, BASE));
  });

  test('a pair of a kind that a larger group wants, too, counts as a pair', () => {
    const both = cardWith('22b 222b 4444c 5555d F');
    const apart = { ...BASE, wildCalibration: [{ raw: 0, reach: 1 }] };
    expect(reachOf(both, knownOf('2b J 4444c 555d 17c FF'), apart)).toBeLessThan(1);
    expect(reachOf(both, knownOf('222b 4444c 5555d 7c F'), apart)).toBe(1);
  });

  test('the second is nowhere under the first', () => {
    const steep = handModelOf(BASE, 0, { plain: { intercept: 0.5, slope: 1 }, wild: { intercept: 0, slope: 0.9 } });
    for (const model of [steep, ...[0, 35, 95].map((drawn) => handModel(drawn, 0.3))]) {
      for (const [place, { raw, reach }] of model.calibration.entries()) {
        expect(model.wildCalibration?.[place]?.raw).toBe(raw);
        expect(model.wildCalibration?.[place]?.reach).toBeGreaterThanOrEqual(reach);
      }
    }
  });

  test('hands that calls and jokers complete gain on the others', () => {
    const { plain, wild } = HAND_CURVES;
    for (const reach of [0.05, 0.17, 0.4]) {
      const x = Math.log(reach / (1 - reach));
      expect(wild.intercept + wild.slope * x).toBeGreaterThan(plain.intercept + plain.slope * x);
    }
  });

  test('a pass is counted by the same lines as the hands after it', () => {
    const random = randomFromSeed(8);
    const model = handModel(0, 0.4);
    for (let round = 0; round < 6; round += 1) {
      const target = randomWay(random);
      const compiled = compileCard(cardOf([target, randomWay(random)]));
      const known = expectValue(knownTiles(rackNear(target, random)));
      const { passes, reach } = passTable(compiled, known, 1, model);
      const [give] = passes[0] as [Kind];
      const unseen = known.unseen.toKinds().filter((kind) => kind > 0);
      let sum = 0;
      for (const kind of unseen) {
        const rack = known.rack.minus(Tiles.of([give])).plus(Tiles.of([kind]));
        const after = expectValue(knownTiles(rack, known.gone.plus(Tiles.of([give]))));
        sum += Math.max(...readKnown(compiled, after, 0, model).reaches);
      }
      expect(reach[0]).toBeCloseTo(sum / unseen.length, 9);
    }
  });
});

describe('MD-C13. what stays', () => {
  test.each([0, 12, 47, 98])('0 and 1 stay, and knots rise, with %i tiles drawn', (drawn) => {
    for (const level of [-1, 0, 1.5]) {
      const { calibration, wildCalibration = [] } = handModel(drawn, level);
      for (const knots of [calibration, wildCalibration]) {
        expect(calibrated(knots, 0)).toBe(0);
        expect(calibrated(knots, 1)).toBe(1);
        for (const [place, { raw, reach }] of knots.slice(1).entries()) {
          expect(raw).toBeGreaterThan(knots[place]?.raw ?? 1);
          expect(reach).toBeGreaterThan(knots[place]?.reach ?? 1);
        }
      }
    }
  });

  test('a complete hand is certain and a dead one never won, at any level', () => {
    const card = cardWith('NN 2222b 4444c 6666d');
    const dead = expectValue(
      knownTiles(expectValue(parseTiles('2222b 4444c 6666d F')), expectValue(parseTiles('NNNN'))),
    );
    for (const level of [-1, 0, 1.5]) {
      expect(reachOf(card, knownOf('NN 2222b 4444c 6666d'), handModel(0, level))).toBe(1);
      expect(reachOf(card, dead, handModel(0, level))).toBe(0);
    }
  });
});

describe('MD-C10. one base model', () => {
  test('of the stage of play: the same object for the same stage and level, so that a reading finds its tree', () => {
    expect(handModel(3, 0.2)).toBe(handModel(9, 0.2));
    expect(handModel(10, 0.2)).not.toBe(handModel(9, 0.2));
    expect(handModel(9, 0.2)).not.toBe(handModel(9, 0.3));
    expect(handModel(40, 0.2).moments).toBe(BASE_MODELS[4]?.moments);
    expect([0, 9, 10, 98, 99].map(baseStageAt)).toEqual([0, 0, 1, 9, 9]);
  });

  test('later in play fewer tiles are still to come, and the same hand is reached less often', () => {
    const card = cardWith('FF 2222b 4444c 6666d');
    const known = knownOf('FF 2222b 44c 66d 17c F');
    const reaches = [0, 20, 40, 60, 80].map((drawn) => reachOf(card, known, handModel(drawn, 0.2)));
    expect(reaches).toEqual([...reaches].sort((one, other) => other - one));
  });
});

import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { CALIBRATION } from '../../core/reading/calibration.ts';
import { handModel, handModelOf } from '../../core/reading/hand-model.ts';
import { areFirstTerms, FIRST_REACH_MODEL, FIRST_TERMS, type ReachShape } from '../../core/reading/reach-model.ts';
import { REACH_SHAPE } from '../../core/reading/reach-shape.ts';
import { CARD_FILES, CARD_NAMES, calibrationCard } from './cards.ts';
import { collect } from './collect.ts';
import { awayCurve, brierGain } from './figures.ts';
import { type Character, inventCard, NARROW, WIDE } from './invent-card.ts';
import type { Case } from './isotonic.ts';
import { BASE, fitCurves } from './hands.ts';
import { keptRacks } from './kept.ts';
import { modelMaker } from './measure.ts';
import { signText } from './report.ts';
import { casesUnder, fitShape } from './shape.ts';

const ROOT = resolve(import.meta.dirname, '../..');
/** Not a seed of the fit or of the report. */
const SEED = 35;

test.each([
  ['wide', WIDE],
  ['narrow', NARROW],
] satisfies [keyof typeof CARD_FILES, Character][])(
  'the %s card is the one that its character invents',
  (name, character) => {
    expect(readFileSync(resolve(ROOT, CARD_FILES[name]), 'utf8')).toBe(inventCard(character));
  },
);

test('the three cards are of different kinds: how many ways, how many concealed, how soon others win', () => {
  const cards = CARD_NAMES.map((name) => calibrationCard(name, ROOT));
  expect(cards.map(({ wayCount }) => wayCount)).toEqual([1053, 1287, 348]);
  const concealed = cards.map((card) => card.lines.filter((line) => line.concealed).length / card.lines.length);
  expect(concealed[1]).toBe(0);
  expect(concealed[2]).toBeGreaterThan(0.5);
});

// That as many win as reach says is tested on more racks and on all cards: kept.test.ts.
describe('reach against fresh racks, none of them fitted to', () => {
  const kept = keptRacks(ROOT).cards.filter(({ kind }) => kind === 'quick');
  const cards = CARD_NAMES.map((name) => {
    const compiled = calibrationCard(name, ROOT);
    const { level = 0, racks: aimed = [] } = kept.find(({ title }) => title === compiled.card.title) ?? {};
    return { maker: modelMaker(compiled), model: handModel(0, level), aimed };
  });

  // The numbers were written under Node 20. Other versions round logarithms and powers otherwise in the
  // last place, which turns a few of the simulated decisions; the looser tests below hold there, too.
  const isWriter = process.versions.node.startsWith('20.');
  test.runIf(isWriter)(
    'MD-C7. until games with a card have been simulated, others are taken to win as soon as with the demo card',
    () => {
      // Swaps after a call, which the games of the first model did not have, bring an end forward by a tenth of a tile.
      for (const [place, end] of (cards[0]?.maker.terms.ends ?? []).entries()) {
        expect(Math.abs(end - (FIRST_TERMS.ends[place] as number))).toBeLessThan(0.11);
      }
      expect(cards[0]?.maker.modelOf(REACH_SHAPE).calibration).toEqual(FIRST_REACH_MODEL.calibration);
      expect(cards.map(({ maker }) => areFirstTerms(maker.terms))).toEqual([true, false, false]);
    },
  );

  test('MD-C4. on the narrow card others win later than on the demo card', () => {
    for (const [place, end] of (cards[2]?.maker.terms.ends ?? []).entries()) {
      expect(end).toBeGreaterThan(cards[0]?.maker.terms.ends[place] as number);
    }
  });

  test('it foretells better than the best curve on away alone, even one fitted to these very racks', () => {
    const cases = cards.flatMap(({ model, aimed }) => casesUnder(model, aimed));
    const rival = cards.flatMap(({ aimed }): Case[] => {
      const byAway = awayCurve(aimed);
      return aimed.map((rack) => ({ predicted: byAway(rack), won: rack.won }));
    });
    const { gain, error } = brierGain(cases, rival);
    expect(gain).toBeGreaterThan(2 * error);
  });

  test('MD-C2. a win with another way does not count', () => {
    const all = cards.flatMap(({ aimed }) => aimed);
    expect(all.every(({ won, wonAny }) => wonAny || !won)).toBe(true);
    expect(all.some(({ won, wonAny }) => wonAny && !won)).toBe(true);
  });
});

// 1,600 racks whose outcome is drawn by a known shape, of which one in 20 wins. A knot stands for some six winners, so
// that its standard error is nearly half of its share, 2 points on average; 3 are a false alarm once in some 1,000 runs.
test('MD-C6. the fit recovers a known shape from what came of the racks', () => {
  const compiled = calibrationCard('demo', ROOT);
  const { modelOf } = modelMaker(compiled);
  const known = { own: 0.5, called: 0.6, last: 0.3, joker: 0.8, calibration: FIRST_REACH_MODEL.calibration };
  const { aimed } = collect({ compiled, seed: SEED, deals: 400, model: modelOf(known), otherOneIn: 4, free: false });
  const truth = casesUnder(modelOf(known), aimed).map(({ predicted }) => predicted);
  const random = randomFromSeed(34);
  const racks = aimed.map((rack, place) => ({ ...rack, won: random.fraction() < (truth[place] as number) }));
  const meanError = (shape: ReachShape): number => {
    const found = casesUnder(modelOf(shape), racks);
    const errors = found.map(({ predicted }, place) => Math.abs(predicted - (truth[place] as number)));
    return errors.reduce((sum, error) => sum + error, 0) / errors.length;
  };
  expect(meanError(REACH_SHAPE)).toBeGreaterThan(0.08);
  expect(meanError(fitShape([{ racks, modelOf }], REACH_SHAPE))).toBeLessThan(0.03);
}, 180_000);

test('MD-C12. the fit of the curves recovers known lines', () => {
  const compiled = calibrationCard('demo', ROOT);
  const { aimed } = collect({ compiled, seed: SEED, deals: 500, model: BASE, otherOneIn: 2, free: false });
  const level = 0.4;
  const known = { plain: { intercept: -0.5, slope: 0.8 }, wild: { intercept: 0.6, slope: 1.1 } };
  const truth = casesUnder(handModelOf(BASE, level, known), aimed);
  const random = randomFromSeed(36);
  const racks = aimed.map((rack, place) => ({ ...rack, won: random.fraction() < (truth[place]?.predicted ?? 0) }));
  const found = casesUnder(handModelOf(BASE, level, fitCurves([{ level, racks }])), aimed);
  const errors = found.map(({ predicted }, place) => Math.abs(predicted - (truth[place]?.predicted ?? 0)));
  expect(errors.reduce((sum, error) => sum + error, 0) / errors.length).toBeLessThan(0.02);
});

describe('the figures that the app shows', () => {
  test('cover three cards with at least 20,000 racks each', () => {
    expect(CALIBRATION.map(({ title }) => title)).toEqual(
      CARD_NAMES.map((name) => calibrationCard(name, ROOT).card.title),
    );
    for (const { racks } of CALIBRATION) expect(racks).toBeGreaterThanOrEqual(20_000);
  });

  test('the mean absolute gap is at most two points on each card, and is that of the tenths shown', () => {
    for (const { gap, tenths } of CALIBRATION) {
      expect(gap).toBeLessThanOrEqual(0.02);
      const mean = tenths.reduce((sum, { predicted, won }) => sum + Math.abs(predicted - won), 0) / tenths.length;
      expect(Math.abs(mean - gap)).toBeLessThan(0.0002);
    }
  });

  test('have the sign that the page tells, of the tenths and of the cards left out', () => {
    const page = readFileSync(resolve(ROOT, 'core/reading/CALIBRATION.md'), 'utf8');
    for (const { title, tenths } of CALIBRATION) {
      const chapter = page.split('\n### ').find((part) => part.startsWith(title)) ?? '';
      expect(chapter).toContain(
        signText(
          tenths.map(({ predicted, won }) => predicted - won),
          'groups',
        ),
      );
    }
    const leftOut = page.split('\n## ').filter((part) => part.startsWith('Cards left out'));
    expect(leftOut).toHaveLength(2);
    for (const part of leftOut) {
      const rows = [...part.matchAll(/\| ([−+][\d.]+) ± [\d.]+ \| ([−+][\d.]+) ± /g)];
      const biases = rows.map(([, , now = '']) => Number(now.replace('−', '-')));
      expect(biases).toHaveLength(13);
      expect(part).toContain(signText(biases, 'cards'));
    }
  });
});

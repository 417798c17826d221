import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { markedCard } from '../../core/card/mark.ts';
import { provisionalChance } from '../../core/chance/card-chance.ts';
import { fitChance } from '../../core/engine/chance-questions.ts';
import { fit } from '../../core/engine/exchange-questions.ts';
import type { Said } from '../../core/engine/moment.ts';
import { read } from '../../core/engine/reading-questions.ts';
import { FIRST_REACH_MODEL, FIRST_TERMS, reachModelOf } from '../../core/reading/reach-model.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const document: unknown = JSON.parse(readFileSync(resolve(ROOT, 'tests/calibration/cards/narrow.card.json'), 'utf8'));
const card = markedCard(document);

function ended<Step, Value>(steps: Generator<Step, Value, void>): { readonly told: Step[]; readonly value: Value } {
  const told: Step[] = [];
  for (;;) {
    const step = steps.next();
    if (step.done === true) return { told, value: step.value };
    told.push(step.value);
  }
}

describe('the worker learns how soon others win with a card, and how often it is won', () => {
  const rack = expectValue(parseTiles('FF N 0 13b 4578c 22d 1d')).toCounts();
  const moment = { card, at: { rack, gone: Tiles.none.toCounts() } };
  const fitted = ended(fit({ card }));
  const stages = expectValue(fitted.value);
  const reachOf = (said: Said, drawn = 0): number => {
    const { told } = ended(read({ ...moment, at: { ...moment.at, drawn }, said }));
    return told.find((hands) => hands !== undefined)?.hands[0]?.reach ?? 0;
  };

  it('tells how far it is, in parts that may be cancelled between', () => {
    expect(fitted.told.length).toBeGreaterThan(20);
    expect(fitted.told.every((part) => part > 0 && part <= 1)).toBe(true);
  });

  it('on a card where others win late, the reading with its fit shows a larger reach', () => {
    const learned = expectValue(ended(fitChance({ card, table: 'quick' })).value);
    const unlearned = provisionalChance('quick');
    expect(reachOf({ fit: learned })).toBeGreaterThan(reachOf({ fit: unlearned }));
  });

  it('with less left in the wall the reach is smaller', () => {
    const reaches = [0, 40, 80].map((drawn) => reachOf({}, drawn));
    expect(reaches).toEqual(reaches.toSorted((one, other) => other - one));
    expect(reaches[2]).toBeLessThan((reaches[0] ?? 0) / 2);
  });

  it('without terms the first model answers; the same terms twice are one model', () => {
    expect(reachModelOf(FIRST_TERMS)).toBe(FIRST_REACH_MODEL);
    const [, one, other] = stages.map(reachModelOf);
    expect(one).toBe(reachModelOf(structuredClone(stages[1]!)));
    expect(one).not.toBe(other);
  });

  it('a file that is no card is refused in words', () => {
    expect(ended(fit({ card: markedCard('{') })).value.ok).toBe(false);
  });
});

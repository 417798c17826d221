import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import type { StageTerms } from '../../core/reading/stage-terms.ts';
import { handlers } from '../../renderer/worker/handlers.ts';
import { modelFor } from '../../renderer/worker/terms-model.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const narrow = readFileSync(resolve(ROOT, 'tests/calibration/cards/narrow.card.json'), 'utf8');

function ended<Step, Value>(steps: Generator<Step, Value, void>): { readonly told: Step[]; readonly value: Value } {
  const told: Step[] = [];
  for (;;) {
    const step = steps.next();
    if (step.done === true) return { told, value: step.value };
    told.push(step.value);
  }
}

function fitted(): StageTerms {
  const { value } = ended(handlers.fit({ card: narrow }));
  if (!value.ok) throw new Error(value.message);
  return value.value;
}

describe('the worker learns how soon others win with a card', () => {
  const request = { card: narrow, rack: 'FF N 0 13b 4578c 22d 1d', gone: '' };
  const reachOf = (stage: StageTerms[number] | undefined): number => {
    const { told } = ended(handlers.read(stage === undefined ? request : { ...request, terms: stage }));
    return told.find((hands) => hands !== undefined)?.byReach[0]?.reach ?? 0;
  };
  const stages = fitted();

  it('tells how far it is, in parts that may be cancelled between', () => {
    const { told } = ended(handlers.fit({ card: narrow }));
    expect(told.length).toBeGreaterThan(20);
    expect(told.every((part) => part !== undefined && part > 0 && part <= 1)).toBe(true);
  });

  it('on a card where others win late, the reading with its terms shows a larger reach', () => {
    expect(reachOf(stages[0])).toBeGreaterThan(reachOf(undefined));
  });

  it('with less left in the wall the reach is smaller', () => {
    const reaches = [stages[0], stages[4], stages[8]].map(reachOf);
    expect(reaches).toEqual(reaches.toSorted((one, other) => other - one));
    expect(reaches[2]).toBeLessThan((reaches[0] ?? 0) / 2);
  });

  it('without terms the first model answers; the same terms twice are one model', () => {
    expect(modelFor(undefined)).toBe(FIRST_REACH_MODEL);
    expect(modelFor(stages[1])).toBe(modelFor(structuredClone(stages[1])));
    expect(modelFor(stages[1])).not.toBe(modelFor(stages[2]));
  });

  it('a file that is no card is refused in words', () => {
    expect(ended(handlers.fit({ card: '{' })).value.ok).toBe(false);
  });
});

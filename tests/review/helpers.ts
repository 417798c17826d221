import { readFileSync } from 'node:fs';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import type { GameEvent, TimedEvent } from '../../core/game/events.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import type { StageTerms } from '../../core/reading/stage-terms.ts';
import type { DealMean } from '../../core/review/deal-mean.ts';
import { FIRST_STAGES, type Gauge, gaugeOf } from '../../core/review/gauge.ts';
import { type Review, reviewSteps } from '../../core/review/review.ts';
import type { Engine } from '../../core/review/worth.ts';

const CARD = JSON.parse(readFileSync(new URL('../../assets/demo.card.json', import.meta.url), 'utf8')) as object;

/** A card of four lines, small enough for plain enumeration. */
export const SMALL_CARD = {
  format: 'windrow.card',
  version: 1,
  title: 'Four lines',
  season: '2026',
  sections: [
    {
      name: 'Stairs',
      lines: [
        { id: 's1', pattern: 'FF 1111a 2222a 3333a', slide: 1, points: 30 },
        { id: 's2', pattern: '11a 22a 33a 44a 55a 66a 77a', points: 50, concealed: true },
      ],
    },
    {
      name: 'Compass',
      lines: [
        { id: 'c1', pattern: 'NNNN EE WW SSSS FF', points: 30 },
        { id: 'c2', pattern: 'FFFF 888a 888b DDDa 0', slide: 1, points: 25 },
      ],
    },
  ],
};

export function engineOf(card: object): Engine {
  return { compiled: compileCard(expectValue(readCardFile(JSON.stringify(card))).card), model: FIRST_REACH_MODEL };
}

export const SMALL = engineOf(SMALL_CARD);
export const DEMO = engineOf(CARD);
export const SMALL_GAUGE: Gauge = gaugeOf(SMALL.compiled, FIRST_STAGES);
export const DEAL: DealMean = { mean: 0.1, error: 0.001, deals: 400, seed: 1 };

export function recordOf(events: readonly GameEvent[], card: object = SMALL_CARD): GameRecord {
  return {
    kind: 'windrow.game',
    schemaVersion: 1,
    appVersion: '0.1.0',
    id: 'game-1',
    startedAt: '2026-11-19T19:00:00Z',
    zone: 'America/Chicago',
    place: 'lakeside library',
    tags: [],
    demo: false,
    card,
    events: events.map((event): TimedEvent => ({ ...event, at: '2026-11-19T19:00:00Z' })),
  };
}

export function review(
  events: readonly GameEvent[],
  engine: Engine = SMALL,
  deal: DealMean = DEAL,
  stages: StageTerms = FIRST_STAGES,
): Review {
  const steps = reviewSteps(recordOf(events), gaugeOf(engine.compiled, stages), deal);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return expectValue(step.value);
  }
}

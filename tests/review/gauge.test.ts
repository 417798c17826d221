import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { likelyDrawn } from '../../core/game/drawn.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { handView } from '../../core/game/hand-view.ts';
import { stateOf } from '../../core/game/state.ts';
import { FIRST_REACH_MODEL, reachModelFor } from '../../core/reading/reach-model.ts';
import { type StageTerms, termsAt } from '../../core/reading/stage-terms.ts';
import { adviceSteps } from '../../core/review/advice.ts';
import { FIRST_STAGES, gaugeOf } from '../../core/review/gauge.ts';
import type { Review } from '../../core/review/review.ts';
import { reviewWhole } from '../../core/review/whole.ts';
import { worthOf } from '../../core/review/worth.ts';
import { journalHandlers } from '../../renderer/worker/journal-handlers.ts';
import { DEAL, recordOf, review, SMALL } from './helpers.ts';

/** The other three win ever sooner: three stages, far apart. */
const STAGES: StageTerms = [99, 89, 79].map((wallLeft, stage) => ({
  wallLeft,
  ends: [20, 30, 40, 50, 60].map((end) => end - 9 * stage),
  source: 'three stages far apart',
}));

const turn = (drawn: string, discarded: string): GameEvent[] => [
  { type: 'drew', tile: drawn },
  { type: 'discarded', seat: 'South', tile: discarded },
];
/** A rack that stays within reach, and five own turns: by then sixteen tiles are drawn. */
const PLAY: GameEvent[] = [
  { type: 'dealt', seat: 'South', tiles: 'JJ FF 11122233b 5c' },
  ...turn('G', '5c'),
  ...turn('9d', 'G'),
  ...turn('N', '9d'),
  ...turn('8c', 'N'),
  ...turn('E', '8c'),
];

describe('the look-back measures each moment with the model that held then, as the Table does', () => {
  const whole = review(PLAY, SMALL, DEAL, STAGES);
  const placesOfDiscards = PLAY.flatMap(({ type }, place) => (type === 'discarded' ? [place] : []));

  test('the game passes through two stages of play', () => {
    const drawn = placesOfDiscards.map((place) => likelyDrawn(expectValue(stateOf(PLAY.slice(0, place + 1)))));
    expect(drawn.map((count) => Math.floor(count / 10))).toEqual([0, 0, 0, 1, 1]);
  });

  test.each(placesOfDiscards)('the discard at event %i is worth what the Table said of it', (place) => {
    const before = expectValue(stateOf(PLAY.slice(0, place)));
    const model = reachModelFor(termsAt(STAGES, likelyDrawn(before)));
    const steps = adviceSteps({ compiled: SMALL.compiled, model }, before);
    let step = steps.next();
    while (step.done !== true) step = steps.next();
    const decision = whole.decisions.find((each) => each.place === place);
    expect(step.value.discards[0]).toMatchObject({ worth: decision?.best.worth });
  });

  test('G5: the parts still add up to the end within 1e-9, and the last one stands at the last model', () => {
    const { start, parts, end } = whole.ledger;
    expect(Math.abs(parts.reduce((sum, { amount }) => sum + amount, start) - end)).toBeLessThan(1e-9);
    const last = expectValue(stateOf(PLAY));
    const model = reachModelFor(termsAt(STAGES, likelyDrawn(last)));
    expect(end).toBe(worthOf({ compiled: SMALL.compiled, model }, handView(last)).value);
    expect(whole.ledger.totals.table).not.toBe(0);
  });

  test('the first model is the same at every stage', () => {
    const { at } = gaugeOf(SMALL.compiled, FIRST_STAGES);
    expect(at(expectValue(stateOf(PLAY))).model).toEqual(FIRST_REACH_MODEL);
  });
});

/** What a worker answers in the end. */
function answerOf(steps: ReturnType<typeof journalHandlers.review>): Review {
  for (;;) {
    const step = steps.next();
    if (step.done !== true) continue;
    if (!step.value.ok) throw new Error(step.value.message);
    return step.value.value;
  }
}

describe("the card's own model is kept with the look-back", { timeout: 180_000 }, () => {
  const record = recordOf([
    PLAY[0] as GameEvent,
    { type: 'gave', step: 'right', tiles: '5c 3b 1b' },
    { type: 'received', step: 'right', tiles: '9d G N' },
  ]);
  const inCommand = expectValue(reviewWhole(record));

  test('which one it was is told, with the terms that make the numbers again', () => {
    expect(inCommand.model).toBe('how soon others win: 800 simulated games with this card');
    expect(inCommand.stages).toHaveLength(10);
    expect(reviewWhole(record, inCommand.stages)).toEqual({ ok: true, value: inCommand });
  });

  test('window and command give the same document for the same file', () => {
    const exact = answerOf(journalHandlers.review(record));
    expect(exact).toMatchObject({ lookedAhead: false, ledger: inCommand.ledger });
    expect(answerOf(journalHandlers.lookAhead({ record, review: exact }))).toEqual(inCommand);
  });

  test('another card has another mark', () => {
    const other = recordOf([PLAY[0] as GameEvent], { ...(record.card as object), title: 'Another year' });
    expect(expectValue(reviewWhole(other, FIRST_STAGES)).card).not.toBe(inCommand.card);
  });
});

import { expectValue } from '../base/result.ts';
import type { GameEvent, GaveEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import type { GameRecord } from '../game/record.ts';
import { stateOf } from '../game/state.ts';
import { type RaceRule, USUAL_RULE } from '../plan/race.ts';
import { parseTiles } from '../tiles/text.ts';
import { Tiles } from '../tiles/tiles.ts';
import { type Ahead, type AheadRow, aheadSteps, type Giving } from './ahead.ts';
import { aheadLoss, positionOf, tilesOf } from './ahead-document.ts';
import { type AheadDocument, type Decision, isRight } from './decision.ts';
import type { Gauge } from './gauge.ts';
import { passesDue, targetAfter } from './review-pass.ts';
import { notesAbout, type Review } from './review.ts';
import { secondRoundSteps } from './second-round.ts';
import { whyInTheEnd } from './why.ts';
import type { Engine } from './worth.ts';

/**
 * The second stage of a look-back: what every choice of the exchange costs by the end of the
 * exchange, and whether going on with the second round was right, where that was the user's to
 * say. Sampled by a rule fixed beforehand with its seed, so that the same game gives the same
 * figures anywhere, from what was known at each choice; about a second of counting for each.
 * Yields the part done, 0 to 1; the last answer is the whole review.
 */
export function* lookAheadSteps(
  { events }: GameRecord,
  gauge: Gauge,
  review: Review,
  rule: RaceRule = USUAL_RULE,
): Generator<number, Review> {
  const exact = review.decisions.filter(({ kind }) => kind !== 'second-round');
  const places = [...events.keys()].filter((place) => isOfExchange(events[place] as GameEvent));
  const rounds: Decision[] = [];
  const passes = new Map<number, JudgedAhead | null>();
  for (const [done, place] of places.entries()) {
    const event = events[place] as GameEvent;
    const before = expectValue(stateOf(events.slice(0, place)));
    const engine = gauge.at(before);
    const told = (part: number): number => (done + part) / places.length;
    if (isSecondRound(event, before)) {
      rounds.push(yield* retold(secondRoundSteps(engine, before, place, event.type === 'stopped', rule), told));
    }
    if (event.type === 'gave') passes.set(place, yield* retold(passSteps(engine, before, event, rule), told));
  }
  const last = expectValue(stateOf(events));
  const noted = rounds.map((round) => ({ ...round, notes: notesAbout(last, round.place) }));
  const judged = exact.map((each) => (each.step === null ? each : withAhead(each, passes.get(each.place) ?? null)));
  // The order of those of one place stays: whether to go on comes before the first pass of the round.
  const decisions = [...noted, ...judged].sort((one, other) => one.place - other.place);
  return { ...review, decisions, lookedAhead: true };
}

function isOfExchange({ type }: GameEvent): boolean {
  return type === 'gave' || type === 'stopped';
}

/** True if the user went on with the second round here, or stopped before it. Somebody else's stop is no choice of theirs. */
function isSecondRound(event: GameEvent, { seat }: GameState): boolean {
  if (event.type === 'stopped') return event.before === 'left2' && event.seat !== undefined && event.seat === seat;
  return event.type === 'gave' && event.step === 'left2';
}

/** What a pass costs by the end, and why. It is no longer forced where the look ahead tells choices apart. */
type JudgedAhead = Pick<Decision, 'ahead' | 'why'> & { readonly differs: boolean };

/** What a pass costs by the end; null where no other pass could be made. */
function* passSteps(
  engine: Engine,
  before: GameState,
  event: GaveEvent,
  rule: RaceRule,
): Generator<number, JudgedAhead | null> {
  const given = expectValue(parseTiles(event.tiles));
  const passes = passesDue(engine, before, event.step, given.size).map(({ tiles }) => tiles.toKinds());
  if (passes.length < 2) return null;
  const ahead = yield* aheadSteps(engine, {
    ...positionOf(before),
    step: event.step,
    passes,
    chosen: { type: 'give', tiles: given.toKinds() },
    goesOn: true,
    ...(event.step === 'courtesy' ? { offered: given.size } : {}),
    rule,
  });
  const best = Tiles.of((ahead.best.choice as Giving).tiles);
  const came = { chosen: given, best, verdict: ahead.chosen.verdict };
  const why = whyInTheEnd(engine.compiled, came, targetAfter(engine, before, { tiles: best }));
  return { ahead: documentOf(ahead), why, differs: ahead.rows.some(({ verdict }) => !isRight(verdict)) };
}

function withAhead(decision: Decision, judged: JudgedAhead | null): Decision {
  if (judged === null) return decision;
  return { ...decision, ahead: judged.ahead, why: judged.why, forced: decision.forced && !judged.differs };
}

/** Of a look ahead that compared two choices or more. */
function documentOf({ chosen, best, next, futures, seed }: Ahead): AheadDocument {
  return {
    ...aheadLoss(chosen),
    verdict: chosen.verdict,
    best: tilesOf(best.choice),
    next: aheadLoss(next as AheadRow),
    futures,
    seed,
  };
}

function* retold<Value>(steps: Generator<number, Value>, told: (part: number) => number): Generator<number, Value> {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    yield told(step.value);
  }
}

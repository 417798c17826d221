import type { GameState } from '../game/game-state.ts';
import { handView } from '../game/hand-view.ts';
import type { RaceRule } from '../plan/race.ts';
import { formatTiles } from '../tiles/text.ts';
import { aheadSteps, type Ahead, type AheadRow } from './ahead.ts';
import { aheadLoss, positionOf, tilesOf } from './ahead-document.ts';
import type { ChoiceDocument, Decision } from './decision.ts';
import { passesDue } from './review-pass.ts';
import { whySecondRound } from './why.ts';
import { type Engine, worthOf } from './worth.ts';

/** The two choices before the second round: to stop, or to go on with the best pass. */
interface Sides {
  readonly stop: AheadRow;
  readonly going: AheadRow;
}

/**
 * Judges whether to go on with a second round: stopping against the best pass, by the reach when
 * play begins, given that nobody else stops. What was passed then is another choice, judged on its
 * own. Not booked in the ledger: its worth is the reach one step on, in which a stop never shows
 * what three passes bring.
 */
export function* secondRoundSteps(
  engine: Engine,
  before: GameState,
  place: number,
  stopped: boolean,
  rule: RaceRule,
): Generator<number, Decision> {
  const passes = passesDue(engine, before, 'left2', 3).map(({ tiles }) => tiles.toKinds());
  const wish = { ...positionOf(before), step: 'left2', passes, chosen: { type: 'stop' }, rule } as const;
  const ahead = yield* aheadSteps(engine, wish);
  return decisionOf(engine, before, place, stopped, ahead);
}

function decisionOf(engine: Engine, before: GameState, place: number, stopped: boolean, ahead: Ahead): Decision {
  const sides = sidesOf(ahead);
  const { best, futures, seed } = ahead;
  const chosen = stopped ? sides.stop : sides.going;
  const worse = best === sides.stop ? sides.going : sides.stop;
  const verdict = chosen === best ? 'best' : worse.verdict;
  const cost = chosen === best ? 0 : Math.max(0, worse.loss);
  const reasons = { stopIsBest: best === sides.stop, tied: worse.verdict === 'equal', chosenIsBest: chosen === best };
  const target = worthOf(engine, handView(before)).way;
  const top = { tiles: tilesOf(best.choice), worth: best.worth };
  return {
    place,
    kind: 'second-round',
    step: 'left2',
    rack: formatTiles(before.rack),
    chosen: chosen === best ? top : behind(chosen, top, cost),
    best: top,
    cost,
    verdict,
    forced: false,
    choices: 2,
    top: [top],
    why: whySecondRound(engine.compiled, before.rack, reasons, target),
    notes: [],
    ahead: { ...aheadLoss(chosen), loss: cost, verdict, best: top.tiles, next: aheadLoss(worse), futures, seed },
  };
}

/** At most eight tiles are jokers, so there is always a pass to go on with. */
function sidesOf({ chosen: stop, best, next }: Ahead): Sides {
  return { stop, going: best === stop ? (next as AheadRow) : best };
}

/** A choice `cost` behind the best: the difference is better known than the two worths. */
function behind({ choice }: AheadRow, best: ChoiceDocument, cost: number): ChoiceDocument {
  return { tiles: tilesOf(choice), worth: best.worth - cost };
}

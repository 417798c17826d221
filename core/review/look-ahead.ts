import { expectValue } from '../base/result.ts';
import { mapped, type Steps } from '../base/steps.ts';
import type { CardChance } from '../chance/card-chance.ts';
import { type Seat, SEATS } from '../exchange/steps.ts';
import type { ExchangeState } from '../exchange/state.ts';
import { exchangeContest } from '../future/exchange-futures.ts';
import type { Position } from '../future/known-deal.ts';
import { rivalSteps } from '../future/rival-steps.ts';
import type { GiveChoice, PassChoice } from '../future/rivals.ts';
import { USUAL_EXCHANGE } from '../future/terms.ts';
import type { GameEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import { handView } from '../game/hand-view.ts';
import { type Contest, type RaceRule, USUAL_RULE } from '../plan/race.ts';
import { type RaceResult, raceSteps } from '../plan/race-run.ts';
import type { IncomingWeights } from '../table/incoming-rates.ts';
import type { TableCard } from '../table/table-card.ts';
import { formatTiles, parseTiles } from '../tiles/text.ts';
import { Tiles } from '../tiles/tiles.ts';
import { type Ahead, aheadLoss, aheadOf, type AheadRow, choiceText } from './ahead.ts';
import { type AheadDocument, type ChoiceDocument, type Decision, isRight } from './decision.ts';
import { asJudged } from './ledger.ts';
import { aimAfter } from './passes.ts';
import type { PlayedGame } from './played-game.ts';
import { notesAbout, type Review } from './review.ts';
import { whyParted, whySecondRound } from './why.ts';
import { worthOf } from './yardstick.ts';

/** How far a look ahead has come: the part done, 0 to 1, and the review when it has grown. */
export interface AheadProgress {
  readonly done: number;
  readonly review: Review | null;
}

/** A decision of the exchange whose choices are to be compared, as plain data: anybody may count its race. */
export interface DueRace {
  /** The place of the event in the game's list. */
  readonly place: number;
  readonly kind: 'pass' | 'second-round';
  readonly choices: readonly PassChoice[];
  /** The one that was made; for a second round the stop, against which all passes are compared. */
  readonly chosen: PassChoice;
  /** How many tiles the player across gives in the courtesy; null where that is not known. */
  readonly offered: number | null;
}

/** A race that has been counted. */
export interface CountedRace {
  readonly race: DueRace;
  readonly result: RaceResult;
}

/**
 * The second stage of a look-back: what every choice of the exchange costs by the end of the
 * exchange, and whether going on with the second round was right, where that was the user's to
 * say. Sampled by a rule fixed beforehand with its seed, so that the same game gives the same
 * figures anywhere, from what was known at each choice; about a second of counting for each.
 * The review grows place by place; the last answer is the whole review. `rates`: what comes in;
 * all tiles alike if null.
 */
export function* lookAheadSteps(
  card: TableCard,
  game: PlayedGame,
  review: Review,
  rule: RaceRule = USUAL_RULE,
  rates: IncomingWeights | null = null,
): Steps<AheadProgress, Review> {
  const due = yield* mapped(racesDue(game, rates), () => ({ done: 0, review: null }));
  const futures = (rule.looks.at(-1) as number) * rule.blockSize;
  let grown = review;
  let counted: CountedRace[] = [];
  for (const [count, race] of due.entries()) {
    let part = 0;
    const steps = mapped(raceSteps(contestOf(card, game, race, { rates, fit: review.chance }), rule), () => {
      part = Math.min(1, part + 1 / futures);
      return { done: (count + part) / due.length, review: null };
    });
    counted = [...counted, { race, result: yield* steps }];
    if (due[count + 1]?.place === race.place) continue;
    grown = judgedBy(game, review, counted);
    yield { done: (count + 1) / due.length, review: grown };
  }
  return { ...judgedBy(game, review, counted), lookedAhead: true };
}

/** The futures of some choices of a game, for a race. */
export function contestOf(
  card: TableCard,
  game: PlayedGame,
  { choices, offered, place }: Pick<DueRace, 'choices' | 'offered' | 'place'>,
  { rates, fit }: { readonly rates: IncomingWeights | null; readonly fit: CardChance },
): Contest {
  const known = { ...(offered === null ? {} : { offered }), ...(rates === null ? {} : { rates }) };
  return exchangeContest(card, positionOf(game.before(place)), choices, { ...USUAL_EXCHANGE, fit, ...known });
}

/** The races of a game, in the order of its decisions; a pass that had no rival needs none. */
export function* racesDue(game: PlayedGame, rates: IncomingWeights | null): Steps<undefined, readonly DueRace[]> {
  const due: DueRace[] = [];
  for (const [place, event] of game.events.entries()) {
    if (event.type !== 'gave' && event.type !== 'stopped') continue;
    const round = isSecondRound(event, game.before(place));
    if (!round && event.type === 'stopped') continue;
    const passes = (yield* game.passesDue(place, rates)).map(({ tiles }) => tiles.toKinds());
    const before = game.before(place);
    const terms = { ...game.yardstick.at(before), known: handView(before), rates: rates ?? undefined };
    if (round) {
      const chosen = { type: 'stop' } as const;
      const choices = yield* rivalSteps(terms, { step: 'left2', passes, chosen });
      due.push({ place, kind: 'second-round', chosen, offered: null, choices });
    }
    if (event.type !== 'gave' || passes.length < 2) continue;
    const given = expectValue(parseTiles(event.tiles));
    const chosen = { type: 'give', tiles: given.toKinds() } as const;
    const choices = yield* rivalSteps(terms, { step: event.step, passes, chosen, mayStop: false });
    due.push({ place, kind: 'pass', chosen, offered: event.step === 'courtesy' ? given.size : null, choices });
  }
  return due;
}

/** The review with what has been counted of its races. */
export function judgedBy(game: PlayedGame, review: Review, races: readonly CountedRace[]): Review {
  let decisions = withoutRounds(review);
  for (const { race, result } of races) {
    const { place, choices, chosen } = race;
    const ahead = aheadOf(result, choices, chosen);
    if (race.kind === 'pass') {
      const judged = judgedPass(game, race, ahead);
      decisions = decisions.map((each) => (each.place === place && isPass(each) ? withAhead(each, judged) : each));
    } else decisions = [...decisions, judgedRound(game, place, ahead)];
  }
  decisions.sort((one, other) => one.place - other.place || roundFirst(one) - roundFirst(other));
  return { ...review, decisions, ledger: asJudged(review.ledger, decisions) };
}

/** Choices of a second round come from the look ahead alone, so one done before is done anew. */
function withoutRounds({ decisions }: Review): Decision[] {
  return decisions.filter(({ kind }) => kind !== 'second-round');
}

/** Whether to go on comes before the first pass of the round. */
function roundFirst({ kind }: Decision): number {
  return kind === 'second-round' ? 0 : 1;
}

function isPass({ kind }: Decision): boolean {
  return kind === 'pass' || kind === 'courtesy';
}

/** True if the user went on with the second round here, or stopped before it. Somebody else's stop is no choice of theirs. */
function isSecondRound(event: GameEvent, { seat }: GameState): boolean {
  if (event.type === 'stopped') return event.before === 'left2' && event.seat !== undefined && event.seat === seat;
  return event.type === 'gave' && event.step === 'left2';
}

/** What a pass costs by the end, and why. It is no longer forced where the look ahead tells choices apart. */
type JudgedAhead = Pick<Decision, 'ahead' | 'why'> & { readonly differs: boolean };

function judgedPass(game: PlayedGame, { place }: DueRace, ahead: Ahead): JudgedAhead {
  const before = game.before(place);
  const yardstick = game.yardstick.at(before);
  const [given, best] = [ahead.chosen, ahead.best].map(({ choice }) => Tiles.of((choice as GiveChoice).tiles)) as [
    Tiles,
    Tiles,
  ];
  const aim = aimAfter(yardstick, before, { tiles: best });
  const parting = { act: 'giving', rack: before.rack, aim } as const;
  const why = whyParted({ tiles: given }, { tiles: best }, ahead.chosen.verdict, parting);
  return { ahead: documentOf(ahead), why, differs: ahead.rows.some(({ verdict }) => !isRight(verdict)) };
}

/** Where futures begin before a choice of the exchange, which comes after the deal. */
function positionOf({ seat, exchange }: GameState): Position {
  return { seat: SEATS.indexOf(seat as Seat), exchange: exchange as ExchangeState };
}

function withAhead(decision: Decision, judged: JudgedAhead): Decision {
  return { ...decision, ahead: judged.ahead, why: judged.why, forced: decision.forced && !judged.differs };
}

/** Of a look ahead that compared two choices or more. */
function documentOf({ chosen, best, next, futures, seed }: Ahead): AheadDocument {
  return {
    ...aheadLoss(chosen),
    verdict: chosen.verdict,
    best: choiceText(best.choice),
    next: aheadLoss(next as AheadRow),
    futures,
    seed,
  };
}

/** The two choices before the second round: to stop, or to go on with the best pass. */
interface Sides {
  readonly stop: AheadRow;
  readonly going: AheadRow;
}

/**
 * Judges whether to go on with a second round: stopping against the best pass, by the chance when
 * play begins, given that nobody else stops. What was passed then is another choice, judged on its
 * own.
 */
function judgedRound(game: PlayedGame, place: number, ahead: Ahead): Decision {
  const before = game.before(place);
  const yardstick = game.yardstick.at(before);
  const stopped = game.events[place]?.type === 'stopped';
  const sides = sidesOf(ahead);
  const { best, futures, seed } = ahead;
  const chosen = stopped ? sides.stop : sides.going;
  const worse = best === sides.stop ? sides.going : sides.stop;
  const verdict = chosen === best ? 'best' : worse.verdict;
  const cost = chosen === best ? 0 : Math.max(0, worse.loss);
  const reasons = { stopIsBest: best === sides.stop, tied: worse.verdict === 'equal', chosenIsBest: chosen === best };
  const { aim } = worthOf(yardstick, handView(before));
  const top = { tiles: choiceText(best.choice), worth: best.worth };
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
    why: whySecondRound(before.rack, reasons, aim),
    notes: notesAbout(game.last, place),
    ahead: { ...aheadLoss(chosen), loss: cost, verdict, best: top.tiles, next: aheadLoss(worse), futures, seed },
  };
}

/** At most eight tiles are jokers, so there is always a pass to go on with. */
function sidesOf({ chosen: stop, best, next }: Ahead): Sides {
  return { stop, going: best === stop ? (next as AheadRow) : best };
}

/** A choice `cost` behind the best: the difference is better known than the two worths. */
function behind({ choice }: AheadRow, best: ChoiceDocument, cost: number): ChoiceDocument {
  return { tiles: choiceText(choice), worth: best.worth - cost };
}

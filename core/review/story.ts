import { nameOfLine } from '../card/document.ts';
import { cardDocument } from '../card/read-document.ts';
import type { Seat } from '../exchange/steps.ts';
import type { GameEvent } from '../game/events.ts';
import type { GameRecord } from '../game/record.ts';
import { howWon, stageOf } from '../game/stage.ts';
import { replay } from '../game/state.ts';
import { type Decision, isRight, judgementOf } from './decision.ts';
import { type Ledger, wholeLedger } from './ledger.ts';

/*
 * The look-back as a short story: how the game came out, what decided it, and the few moments that mattered. The same
 * sentences stand in the window and in the text of the command.
 */

/** How the game came out, in a sentence without its full stop: "You won as East, Weather, 2nd line". */
export function resultSentence({ events, card }: Pick<GameRecord, 'events' | 'card'>): string {
  const { state } = replay(events);
  const { result, seat } = state;
  const as = seat === null ? '' : ` as ${seat}`;
  if (result === null) return `You played${as}, not finished: ${small(stageOf(state))}`;
  if (result.result === 'wall') return `Nobody won, a wall game${youWere(seat)}`;
  if (result.result === 'abandoned') return `The game was broken off${youWere(seat)}`;
  const document = cardDocument(card);
  const name = document.ok && result.lineId !== undefined ? nameOfLine(document.value, result.lineId) : undefined;
  const hand = name === undefined ? '' : `, ${name}`;
  if (result.winner === seat) return `You won${as}${hand}`;
  return `${result.winner ?? 'Somebody'} won${howWon(result, seat)}${hand}${youWere(seat)}`;
}

function youWere(seat: Seat | null): string {
  return seat === null ? '' : `; you were ${seat}`;
}

/** What luck moved and what choices moved, in games of a hundred: with the start they make the end. */
export function luckAndChoices(ledger: Ledger): { readonly luck: number; readonly choices: number } {
  const { start, parts, end } = wholeLedger(ledger);
  const choices = parts.find(({ kind }) => kind === 'choice')?.amount ?? 0;
  return { luck: end - start - choices, choices };
}

/** Moves of so many games in a hundred are hardly any. */
const HARDLY = 3;
/** One side decided it alone when the other moved no more than this part of it. */
const ALONE = 0.25;
/** The two moved about as much when the smaller is at least this part of the larger. */
const ALIKE = 0.8;

/** What decided the game, luck or choices, no stronger than the sums of its ledger are. */
export function decidedSentence(ledger: Ledger, events: readonly GameEvent[]): string {
  const { luck, choices } = luckAndChoices(ledger);
  const [lucky, chosen] = [Math.abs(luck), Math.abs(choices)];
  const moved = isDecided(events) ? 'It was decided' : 'So far it was moved';
  if (Math.max(lucky, chosen) < HARDLY) return 'Neither luck nor your choices moved it much.';
  const part = Math.min(lucky, chosen) / Math.max(lucky, chosen);
  if (part >= ALIKE) return `${moved} by what came to you and by what you chose, about as much.`;
  const [came, chose] = ['what came to you', 'what you chose'];
  const [most, less] = lucky > chosen ? [came, chose] : [chose, came];
  return `${moved} by ${most}, ${part > ALONE ? 'less' : 'hardly'} by ${less}.`;
}

/** What such a game starts at, and where it stood at the last thing logged if nobody won or lost it. */
export function startSentence(ledger: Ledger, events: readonly GameEvent[]): string {
  const { start, end } = wholeLedger(ledger);
  return `A game like this starts at ${start} in 100${isDecided(events) ? '' : `, and yours stood at ${end}`}.`;
}

function isDecided(events: readonly GameEvent[]): boolean {
  return events.some((event) => event.type === 'ended' && event.result !== 'abandoned');
}

/** What the numbers of the parts and those of the choices are set against. */
export const AGAINST =
  'A choice is set against the best one there was, “Your choices” in the sum against those of a steady player.';

/** Said where no choice is among the moments that mattered. */
export const NOTHING_COST = 'No choice of yours cost anything that can be told.';

/** The most moments that are told. */
const MOST_MOMENTS = 3;

/** The few choices that cost most, of those that are known to have cost something, in the order of the game. */
export function momentsOf(decisions: readonly Decision[]): Decision[] {
  const costly = decisions.filter((each) => !each.forced && costOf(each) > 0);
  return costly
    .toSorted((one, other) => costOf(other) - costOf(one))
    .slice(0, MOST_MOMENTS)
    .toSorted((one, other) => decisions.indexOf(one) - decisions.indexOf(other));
}

/** What a choice is known to have cost, 0 or more. */
function costOf(decision: Decision): number {
  const { cost, verdict } = judgementOf(decision);
  return isRight(verdict) ? 0 : cost;
}

/** What a choice cost, in words: "about 2 games in 100", "as good as the best", "nothing was better". */
export function sizeWords(decision: Pick<Decision, 'cost' | 'verdict' | 'ahead' | 'forced'>): string {
  if (decision.forced) return 'nothing else to do';
  const { cost, verdict } = judgementOf(decision);
  if (verdict === 'best') return 'nothing was better';
  if (verdict === 'equal') return 'as good as the best';
  // What a joker is worth later shows in few games: such a choice is not as good, and no cost is known.
  return cost === 0 ? 'spent a joker' : `about ${gamesInHundred(cost)}`;
}

/** "2 games in 100", "under 1 game in 100". */
export function gamesInHundred(cost: number): string {
  const count = wholeGames(cost);
  return `${count} ${Math.round(100 * cost) > 1 ? 'games' : 'game'} in 100`;
}

/** Whole games of a hundred, which is as fine as an estimate is worth: "2", "under 1". */
export function wholeGames(cost: number): string {
  const rounded = Math.round(100 * cost);
  return rounded < 1 ? 'under 1' : String(rounded);
}

/** The number of the user's turn of play: the one that a discard is thrown in, or that follows one called or let go. */
export function turnOf({ place }: Pick<Decision, 'place'>, events: readonly GameEvent[]): number {
  const before = events.slice(0, place);
  const seat = before.find((event) => event.type === 'dealt')?.seat;
  return 1 + before.filter((event) => event.type === 'discarded' && event.seat === seat).length;
}

function small(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}

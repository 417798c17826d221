import type { Result } from '../../../../core/base/result.ts';
import type { AdviceDocument, AdvisedDocument } from '../../../../core/engine/documents.ts';
import type { DiscardedEvent, GameEvent } from '../../../../core/game/events.ts';
import { exposedGroups } from '../../../../core/game/hand-view.ts';
import type { Take } from '../../../../core/others/seat-reading.ts';
import { isRight } from '../../../../core/review/decision.ts';
import { codeOf, JOKER } from '../../../../core/tiles/kinds.ts';
import { nameOf, tileNames } from '../../../../core/tiles/names.ts';
import { formatTileList } from '../../../../core/tiles/text.ts';
import { announce } from '../../../parts/announcer.ts';
import { emit } from '../../../parts/emit.ts';
import type { GameSession } from '../../../session/game-session.ts';
import { discardIn } from '../../../session/play-advice.ts';
import { gamesOfHundred } from '../../../words/numbers.ts';
import { othersWords } from '../../../words/others.ts';
import { playWords } from '../../../words/play.ts';
import type { ResultDraft } from './result-draft.ts';
import { seatName } from './seat-names.ts';

const words = playWords.advice;

/** What `result-wanted` carries: what of the result is known already. */
export type ResultWanted = Partial<ResultDraft>;

/**
 * Does what the advice names; returns why it was refused, or ''. From the element given go `advice-taken` once it is
 * done, and `result-wanted` for a win.
 */
export function takeAdvice(
  session: GameSession,
  host: HTMLElement,
  choice: AdvisedDocument,
  offered: AdviceDocument['offered'],
): string {
  if (choice.action === 'win') {
    emit<ResultWanted>(host, 'result-wanted', winOf(session, choice, offered));
    return '';
  }
  const event = eventOf(session, choice, offered);
  if (event === null) return '';
  const done: Result<null> = session.apply(event);
  if (!done.ok) return done.problem.message;
  announce(saidOf(choice));
  emit(host, 'advice-taken', null);
  return '';
}

/** A choice as an event; null for letting a discard go, which is done by logging what comes next. */
function eventOf(
  { state: { seat } }: GameSession,
  { action, tiles, owner }: AdvisedDocument,
  offered: AdviceDocument['offered'],
): GameEvent | null {
  const [kind] = tiles;
  if (seat === null || kind === undefined) return null;
  if (action === 'discard') return { type: 'discarded', seat, tile: codeOf(kind) };
  if (action === 'swap' && owner !== null) return { type: 'swapped', seat, owner, tile: codeOf(kind) };
  if (action !== 'call') return null;
  return { type: 'called', seat, tile: codeOf(offered?.kind ?? kind), group: formatTileList(tiles) };
}

function saidOf({ action, tiles }: AdvisedDocument): string {
  const { you } = playWords.chair;
  if (action === 'swap') return playWords.swapped(you);
  return action === 'call' ? playWords.opened(you, tileNames(tiles)) : playWords.discarded(you, tileNames(tiles));
}

function winOf({ state }: GameSession, { hand }: AdvisedDocument, offered: AdviceDocument['offered']): ResultWanted {
  const exposed = exposedGroups(state, state.seat);
  return {
    result: 'won',
    winner: state.seat,
    by: offered === null ? 'draw' : 'discard',
    from: offered?.seat ?? null,
    lineId: hand?.line ?? null,
    jokerless: state.rack.count(JOKER) === 0 && exposed.every(({ jokers }) => jokers === 0),
  };
}

/** The button of a choice: what is on it, and what it is called where that needs more. */
export function buttonOf(session: GameSession, { action, tiles, owner }: AdvisedDocument): readonly [string, string] {
  const [kind] = tiles;
  if (action === 'win') return [words.win, ''];
  if (kind === undefined) return ['', ''];
  if (action === 'call') return [words.open, words.openLabel(tileNames(tiles))];
  if (action === 'swap') return [words.take, words.swapLabel(nameOf(kind), ownerName(session, owner))];
  return [playWords.discard, words.discardLabel(nameOf(kind))];
}

/** What a choice is, where its tile alone does not say it. */
export function actionWords(session: GameSession, { action, owner }: AdvisedDocument): string {
  if (action === 'swap') return words.swap(ownerName(session, owner));
  return action === 'call' ? words.calling : action === 'let-go' ? words.letGo : '';
}

function ownerName(session: GameSession, owner: AdvisedDocument['owner']): string | null {
  return owner === null || owner === session.state.seat ? null : seatName(session, owner);
}

/** What a choice gives up against the first one, in words; "…" until that is known. */
export function costWords({ verdict, cost, slip }: AdvisedDocument): string {
  if (verdict === null) return words.unknown;
  if (isRight(verdict)) return words.equal;
  return verdict === 'slip' && slip !== null ? words.slips[slip] : words.costs(gamesOfHundred(cost));
}

/** What is said of a discard once it is made: what it gave up, and what was better; '' where it was not weighed. */
export function afterwardsOf(session: GameSession, { choices }: AdviceDocument, discard: DiscardedEvent): string {
  const [best] = choices;
  const own = discardIn(choices, discard);
  if (best === undefined || own === undefined || own.verdict === null) return '';
  if (own === best || isRight(own.verdict)) return words.afterwards.right;
  const [name, label] = buttonOf(session, best);
  const better = label === '' ? name : label;
  return own.verdict === 'slip' && own.slip !== null
    ? words.afterwards.slips[own.slip](better)
    : words.afterwards.costs(gamesOfHundred(own.cost), better);
}

/** A discard is called hot from so many games in a hundred on, and said to be called for a group from so many. */
const HOT = 0.005;
const CALLED = 0.1;

/** Whether what others may do with a tile is told of it by itself. */
export function isHot({ win, group }: Take): boolean {
  return win >= HOT || group >= CALLED;
}

/** Below such a chance a discard is chosen to give nothing away. */
const PLAY_SAFE = 0.02;

/** Whether a discard of a hand that has hardly a chance is advised. */
export function isPlayedSafe({ action, chance }: AdvisedDocument): boolean {
  return action === 'discard' && chance < PLAY_SAFE;
}

/** What the others may do with a discard, in sentences, what weighs most first; none where that is not much. */
function riskSentences({ take }: AdvisedDocument): string[] {
  if (take === null) return [];
  if (take.win === 0 && take.group === 0) return [othersWords.safeNow];
  const win = take.win >= HOT ? [othersWords.riskOf(take.win)] : [];
  return take.group >= CALLED ? [...win, othersWords.calledFor(take.group)] : win;
}

/** All of it. */
export function riskWhole(choice: AdvisedDocument): string {
  return riskSentences(choice).join(' ');
}

/** The first of it, where there is room for one sentence. */
export function riskSentence(choice: AdvisedDocument): string {
  return riskSentences(choice)[0] ?? '';
}

/** The same in a word or two, for a row: "safe", "about 6 in 100 hot". */
export function riskWords({ take }: AdvisedDocument): string {
  if (take === null) return '';
  return take.win === 0 && take.group === 0 ? othersWords.safe : heatWords(take);
}

/** How hot a tile is, in a word or two; '' where that is not told. */
export function heatWords({ win, group }: Take): string {
  if (win >= HOT) return othersWords.risk(win);
  return group >= CALLED ? othersWords.groupRisk(group) : '';
}

/** The best hand after a choice, in a sentence. */
export function handSentence({ hand }: AdvisedDocument): string {
  if (hand === null) return words.noHand;
  return words.leaves(hand.name, hand.away === 0 ? words.complete : words.away(hand.away));
}

/** Whether a choice is mah jongg, or a swap that makes it. */
export function isWin({ action, hand }: AdvisedDocument): boolean {
  return action === 'win' || (action === 'swap' && hand?.away === 0);
}

/** Mah jongg, in a sentence. */
export function winSentence({ action, hand }: AdvisedDocument, offered: AdviceDocument['offered']): string {
  if (hand === null) return '';
  const { name } = hand;
  if (action === 'swap') return words.winBySwap(name, hand.points);
  return offered === null
    ? words.complete14(name, hand.points)
    : words.completeWith(nameOf(offered.kind), name, hand.points);
}

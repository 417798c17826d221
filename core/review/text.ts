import { capital } from '../base/words.ts';
import { STEP_NAMES } from '../exchange/words.ts';
import type { GameRecord } from '../game/record.ts';
import type { PlayAction } from '../table/play-option.ts';
import {
  type AheadDocument,
  type AheadLoss,
  type ChoiceDocument,
  type Decision,
  type DecisionKind,
  isRight,
  judgementOf,
} from './decision.ts';
import { type Ledger, PART_WORDS, wholeLedger } from './ledger.ts';
import type { Review } from './review.ts';
import {
  AGAINST,
  decidedSentence,
  gamesInHundred,
  momentsOf,
  NOTHING_COST,
  resultSentence,
  sizeWords,
  startSentence,
  wholeGames,
} from './story.ts';

const KIND_WORDS: Readonly<Record<DecisionKind, string>> = {
  pass: 'Pass',
  'second-round': 'Second round',
  courtesy: 'Courtesy pass',
  discard: 'Discard',
  call: 'Call',
  'let-go': 'Discard let go',
  swap: 'Joker swap',
};

/** A review as text for people: the story of the game, every decision, then the ledger. */
export function reviewText(review: Review, record: Pick<GameRecord, 'events' | 'card'>): string {
  const { ledger, decisions } = review;
  const head = [
    `${resultSentence(record)}.`,
    `${startSentence(ledger, record.events)} ${decidedSentence(ledger, record.events)}`,
    momentsText(decisions),
    '',
  ];
  const list = decisions.flatMap((decision, place) => [...decisionLines(decision, place + 1), '']);
  const none = decisions.length === 0 ? ['No decision of yours is logged.', ''] : [];
  const ending = ['', `Look-back of game ${review.id}. Reach: ${review.model}.`];
  return [...head, ...list, ...none, ...ledgerLines(ledger), ...ending].join('\n');
}

/** The moments that mattered, each by its number in the list. */
function momentsText(decisions: readonly Decision[]): string {
  const moments = momentsOf(decisions);
  if (moments.length === 0) return NOTHING_COST;
  const named = moments.map((each) => `${decisions.indexOf(each) + 1}. ${titleOf(each)}, ${sizeWords(each)}`);
  return `What mattered: ${named.join('; ')}.`;
}

function decisionLines(decision: Decision, number: number): string[] {
  const { cost, halfWidth, verdict } = judgementOf(decision);
  const range = isRight(verdict) || cost === 0 ? '' : within(halfWidth);
  return [
    `${number}. ${titleOf(decision)}: ${sizeWords(decision)}${range}`,
    `   rack    ${decision.rack}`,
    ...choiceLines(decision),
    ...decision.why.map((sentence) => `   ${sentence}`),
    ...decision.notes.map((note) => `   You noted: ${note}`),
  ];
}

function titleOf({ kind, step }: Decision): string {
  return step === null || kind === 'courtesy' || kind === 'second-round' ? KIND_WORDS[kind] : capital(STEP_NAMES[step]);
}

/** What was chosen, what was best in the end, and what was best for now, where those are known and differ. */
function choiceLines(decision: Decision): string[] {
  const { kind, chosen, best, cost, step, ahead } = decision;
  const worded = (choice: ChoiceDocument): string =>
    kind === 'second-round' ? roundText(choice) : choiceText(choice, step);
  const exact = cost > 0 ? `   best    ${worded(best)}` : '';
  if (ahead === null) return [`   chosen  ${worded(chosen)}`, exact].filter((line) => line !== '');
  const now = kind === 'second-round' ? exact : `   for now ${nowText(decision)}`;
  return [`   chosen  ${worded(chosen)}`, `   ${aheadText(ahead)}`, now].filter((line) => line !== '');
}

/** What the pass cost counted alone, in full. */
function nowText({ cost, best, step }: Decision): string {
  return cost > 0 ? `${gamesInHundred(cost)} given up, best ${choiceText(best, step)}` : 'nothing was better';
}

/** A choice of the second round: to go on with its best pass, or to stop. */
function roundText({ tiles, worth }: ChoiceDocument): string {
  return `${tiles === '' ? 'stop' : `go on, best with ${tiles}`} (chance ${percent(worth)} when play begins)`;
}

/** What a choice costs by the end of the exchange, with its interval. */
function aheadText({ verdict, next, best, ...chosen }: AheadDocument): string {
  const by = 'By the end of the exchange:';
  const amount = ({ loss, halfWidth }: AheadLoss): string => `${gamesInHundred(loss)}${within(halfWidth)}`;
  if (verdict === 'best') return `${by} the best; the next is behind by ${amount(next)}.`;
  const than = best === '' ? 'the best' : best;
  if (verdict === 'equal') return `${by} as good as ${than}; behind it by ${amount(chosen)}.`;
  return `${by} behind ${than} by ${amount(chosen)}.`;
}

function within(halfWidth: number | null): string {
  return halfWidth === null ? '' : `, give or take ${wholeGames(halfWidth)}`;
}

function choiceText({ tiles, worth, action }: ChoiceDocument, step: Decision['step']): string {
  return `${ACTS[action ?? 'give'](tiles)} (${step === null ? 'chance' : 'reach'} ${percent(worth)})`;
}

/** What is done with the tiles of a choice. */
const ACTS: Readonly<Record<PlayAction | 'give', (tiles: string) => string>> = {
  give: (tiles) => (tiles === '' ? 'nothing' : tiles),
  discard: (tiles) => tiles,
  call: (tiles) => tiles,
  swap: (tiles) => `joker for ${tiles}`,
  'let-go': () => 'let go',
  win: () => 'mah jongg',
};

function ledgerLines(ledger: Ledger): string[] {
  const { start, parts, end } = wholeLedger(ledger);
  const row = (name: string, amount: string): string => `${name.padEnd(40)}${amount.padStart(5)}`;
  return [
    'Your chance to win, about, in games of a hundred',
    row('At the start', String(start)),
    ...parts.map(({ kind, amount }) => row(PART_WORDS[kind], signed(amount))),
    row('At the end', String(end)),
    AGAINST,
  ];
}

function percent(share: number): string {
  return `${Math.round(100 * share)} %`;
}

function signed(games: number): string {
  return games === 0 ? '0' : `${games < 0 ? '-' : '+'}${Math.abs(games)}`;
}

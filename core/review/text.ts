import { STEP_NAMES } from '../exchange/words.ts';
import type { AheadDocument, AheadLoss, ChoiceDocument, Decision, DecisionKind, Verdict } from './decision.ts';
import { judgementOf } from './judgement.ts';
import type { Ledger, PartKind } from './ledger.ts';
import type { Review } from './review.ts';

const KIND_WORDS: Readonly<Record<DecisionKind, string>> = {
  pass: 'Pass',
  'second-round': 'Second round',
  courtesy: 'Courtesy pass',
  discard: 'Discard',
  call: 'Call',
  'let-go': 'Discard let go',
  swap: 'Joker swap',
};

const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  best: 'nothing was better',
  equal: 'as good as the best',
  slip: 'cost a little',
  costly: 'cost much',
};

/** What each part of a ledger is, in words for a player. */
export const PART_WORDS: Readonly<Record<PartKind, string>> = {
  deal: 'Luck of the deal',
  promise: 'What passes add on average',
  choice: 'Your choices',
  luck: 'Luck of the tiles that came',
  table: 'The turns of play',
  rest: 'From the last entry to the result',
};

/** A review as text for people: every decision, then the ledger. */
export function reviewText(review: Review): string {
  const head = [`Look-back of game ${review.id}`, `Reach: ${review.model}.`, ''];
  const decisions = review.decisions.flatMap((decision) => [...decisionLines(decision), '']);
  const none = review.decisions.length === 0 ? ['No decision of yours is logged.', ''] : [];
  return [...head, ...decisions, ...none, ...ledgerLines(review.ledger, review.deal.error)].join('\n');
}

function decisionLines(decision: Decision): string[] {
  const { cost, halfWidth, verdict } = judgementOf(decision);
  const given = cost > 0 ? `, ${points(cost)} given up${within(halfWidth)}` : '';
  return [
    `${decision.place + 1}. ${titleOf(decision)}: ${decision.forced ? 'nothing else to do' : VERDICT_WORDS[verdict]}${given}`,
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
function choiceLines({ kind, chosen, best, cost, ahead }: Decision): string[] {
  const told = kind === 'second-round' ? roundText : choiceText;
  const exact = cost > 0 ? `   best    ${told(best)}` : '';
  if (ahead === null) return [`   chosen  ${told(chosen)}`, exact].filter((line) => line !== '');
  const now = kind === 'second-round' ? exact : `   for now ${nowText(cost, best)}`;
  return [`   chosen  ${told(chosen)}`, `   ${aheadText(ahead)}`, now].filter((line) => line !== '');
}

/** What the pass cost counted alone, in full. */
function nowText(cost: number, best: ChoiceDocument): string {
  return cost > 0 ? `${points(cost)} given up; best ${choiceText(best)}` : 'nothing was better';
}

/** A choice of the second round: to go on with its best pass, or to stop. */
function roundText({ tiles, worth }: ChoiceDocument): string {
  return `${tiles === '' ? 'stop' : `go on, best with ${tiles}`} (${percent(worth)} when play begins)`;
}

/** What a choice costs by the end of the exchange, with its interval. */
function aheadText({ verdict, next, best, ...chosen }: AheadDocument): string {
  const by = 'By the end of the exchange:';
  const amount = ({ loss, halfWidth }: AheadLoss): string => `${points(loss)}${within(halfWidth)}`;
  if (verdict === 'best') return `${by} the best; the next is behind by ${amount(next)}.`;
  const than = best === '' ? 'the best' : best;
  if (verdict === 'equal') return `${by} as good as ${than}; behind it by ${amount(chosen)}.`;
  return `${by} behind ${than} by ${amount(chosen)}.`;
}

function within(halfWidth: number | null): string {
  return halfWidth === null ? '' : `, give or take ${(100 * halfWidth).toFixed(1)}`;
}

function choiceText({ tiles, worth }: ChoiceDocument): string {
  return `${tiles === '' ? 'nothing' : tiles} (${percent(worth)})`;
}

function ledgerLines({ start, totals, end }: Ledger, error: number): string[] {
  const row = (name: string, amount: string): string => `${name.padEnd(40)}${amount.padStart(9)}`;
  const parts = Object.entries(totals).filter(([, amount]) => amount !== 0);
  return [
    'Where the chance came from, in games of a hundred',
    row(`A deal on average (give or take ${(200 * error).toFixed(1)})`, (100 * start).toFixed(1)),
    ...parts.map(([kind, amount]) => row(PART_WORDS[kind as PartKind], signed(100 * amount))),
    row('At the end', (100 * end).toFixed(1)),
  ];
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}

function points(cost: number): string {
  return `${(100 * cost).toFixed(1)} games in a hundred`;
}

function signed(amount: number): string {
  return `${amount < 0 ? '-' : '+'}${Math.abs(amount).toFixed(1)}`;
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

import { html, type TemplateResult } from 'lit';
import '../../../parts/wr-explain.ts';
import { percent, points, pointsAlone } from '../../../words/numbers.ts';
import { playWords } from '../../../words/play.ts';
import type { AdvisedView } from '../../../worker/calls.ts';
import { handName } from '../hand-name.ts';

const words = playWords.advice;

/** What a choice costs, as a number that explains itself. */
export function advisedCost(choice: AdvisedView): TemplateResult {
  return html`<wr-explain class="cost" value=${costWords(choice)} heading=${words.why}>
    <p>${costSentence(choice)}</p>
    <p>${handSentence(choice)}</p>
  </wr-explain>`;
}

function costWords({ verdict, cost }: AdvisedView): string {
  if (verdict === 'best') return words.best;
  return verdict === 'equal' ? words.equal : words.costs(pointsAlone(cost));
}

function costSentence({ verdict, cost }: AdvisedView): string {
  if (verdict === 'best') return words.bestWords;
  return verdict === 'equal' ? words.equalWords : words.costWords(points(cost));
}

function handSentence({ hand, worth }: AdvisedView): string {
  if (hand === null) return words.noHand;
  const away = hand.away === 0 ? words.complete : words.away(hand.away);
  return words.leaves(handName(hand), away, percent(worth));
}

/** Whether a call helps, in a sentence: the best group against letting the tile go. */
export function callSentence(choices: readonly AdvisedView[]): string {
  const letGo = choices.find(({ tiles }) => tiles.length === 0);
  const call = choices.find(({ tiles }) => tiles.length > 0);
  if (letGo === undefined || call === undefined) return words.useless;
  const gain = call.worth - letGo.worth;
  const small = call.verdict !== 'slip' && call.verdict !== 'costly' && letGo.verdict !== 'slip';
  if (small && letGo.verdict !== 'costly') return words.same;
  return gain > 0 ? words.helps(points(gain)) : `${words.hurts(points(-gain))} ${words.narrow}`;
}

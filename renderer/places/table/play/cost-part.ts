import { html, nothing } from 'lit';
import type { AdvisedDocument } from '../../../../core/engine/documents.ts';
import '../../../parts/wr-explain.ts';
import { gamesOfHundred } from '../../../words/numbers.ts';
import { playWords } from '../../../words/play.ts';
import { costWords, handSentence, riskWhole } from './advised.ts';

const words = playWords.advice;

/** What a choice costs, as words that explain themselves. */
export function costPart(choice: AdvisedDocument): unknown {
  return html`<wr-explain class="cost" value=${costWords(choice)} heading=${words.why}>
    <p>${costSentence(choice)}</p>
    <p>${handSentence(choice)} ${riskWhole(choice)}</p>
    ${choice.action === 'call' ? html`<p>${words.narrow}</p>` : nothing}
  </wr-explain>`;
}

function costSentence({ verdict, cost, slip }: AdvisedDocument): string {
  if (verdict === null) return words.unknownWords;
  if (verdict === 'best') return words.alikeWords;
  if (verdict === 'equal') return words.equalWords;
  return verdict === 'slip' && slip !== null ? words.slipWords[slip] : words.costWords(gamesOfHundred(cost));
}

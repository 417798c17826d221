import { html, type TemplateResult } from 'lit';
import type { HandDocument } from '../../../core/engine/documents.ts';
import '../../parts/wr-reach-check.ts';
import { inWords, percent } from '../../words/numbers.ts';
import { tableWords } from '../../words/table.ts';

const words = tableWords.reading;

/** One hand of the reading: its name, how far away it is, which tells the rest when it is asked, and its 14 places. */
export function handRow(hand: HandDocument, draws: number): TemplateResult {
  const { name } = hand;
  return html`<div class="facts">
      <span class="name">${name}</span>
      <span class="soft">${words.points(hand.points)}${hand.concealed ? ` · ${words.concealed}` : ''}</span>
      <wr-explain .value=${words.away(hand.away)} .heading=${words.awayHeading}>
        <p>${words.awayWords(hand.away, hand.missingNames.join(', '))}</p>
        <p><b>${words.reachHeading}</b>, ${words.alone} ${reachExplained(hand.reach)}</p>
        <p><b>${words.drawHeading}</b>: ${words.drawWords(percent(hand.drawReach), inWords(hand.drawReach), draws)}</p>
      </wr-explain>
    </div>
    <wr-hand .label=${name} .groups=${hand.places}></wr-hand>`;
}

/** What a reach says, and how well reach holds. */
export function reachExplained(reach: number): TemplateResult {
  return html`${words.reachWords(percent(reach), inWords(reach))} <wr-reach-check></wr-reach-check>`;
}

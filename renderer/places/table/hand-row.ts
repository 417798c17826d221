import { html, type TemplateResult } from 'lit';
import '../../parts/wr-reach-check.ts';
import { inWords, percent } from '../../words/numbers.ts';
import { tableWords } from '../../words/table.ts';
import type { HandView } from '../../worker/calls.ts';
import { handName } from './hand-name.ts';

const words = tableWords.reading;

/** One hand of the reading: its 14 places, and its numbers, each of which explains itself. */
export function handRow(hand: HandView, draws: number): TemplateResult {
  const name = handName(hand);
  return html`<p class="facts">
      <span class="name">${name}</span>
      <span class="soft">${words.points(hand.points)}${hand.concealed ? ` · ${words.concealed}` : ''}</span>
    </p>
    <wr-hand .label=${name} .groups=${hand.groups}></wr-hand>
    <div class="numbers">
      ${number(
        words.awayCaption,
        words.away(hand.away),
        words.awayHeading,
        words.awayWords(hand.away, hand.missing.join(', ')),
      )}
      ${number(words.reachCaption, percent(hand.reach), words.reachHeading, reachExplained(hand.reach))}
      ${number(
        words.drawCaption,
        percent(hand.drawReach),
        words.drawHeading,
        words.drawWords(percent(hand.drawReach), inWords(hand.drawReach), draws),
      )}
    </div>`;
}

/** What a reach says, and how well reach holds. */
export function reachExplained(reach: number): TemplateResult {
  return html`${words.reachWords(percent(reach), inWords(reach))} <wr-reach-check></wr-reach-check>`;
}

function number(caption: string, value: string, heading: string, explanation: string | TemplateResult): TemplateResult {
  return html`<div class="number">
    <span class="caption">${caption}</span>
    <wr-explain .value=${value} .heading=${heading}>${explanation}</wr-explain>
  </div>`;
}

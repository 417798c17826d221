import { html, type TemplateResult } from 'lit';
import { inWords, percent } from '../../words/numbers.ts';
import { tableWords } from '../../words/table.ts';
import type { HandView } from '../../worker/calls.ts';

const words = tableWords.reading;

/** One hand of the reading: its numbers, each of which explains itself, and its 14 places. */
export function handRow(hand: HandView, draws: number): TemplateResult {
  const name = nameOfHand(hand);
  return html`<div class="facts">
      <span class="name">${name}</span>
      <span class="soft">${words.points(hand.points)}${hand.concealed ? ` · ${words.concealed}` : ''}</span>
      <span class="numbers">${numbers(hand, draws)}</span>
    </div>
    <wr-hand label=${name} .groups=${hand.groups}></wr-hand>`;
}

/** "Stairs 4": the section, and the line's id without the section's name if it begins with it. */
function nameOfHand({ section, line }: HandView): string {
  const slug = section.toLowerCase().replaceAll(' ', '-');
  const rest = line.toLowerCase().startsWith(slug) ? line.slice(slug.length).replace(/^[-_ ]+/, '') : line;
  return words.lineName(section, rest === '' ? line : rest);
}

function numbers(hand: HandView, draws: number): TemplateResult {
  return html`<wr-explain class="away" value=${words.away(hand.away)} heading=${words.awayHeading}
      >${words.awayWords(hand.away, hand.missing.join(', '))}</wr-explain
    >
    <wr-explain value=${words.reach(percent(hand.reach))} heading=${words.reachHeading}
      >${words.reachWords(percent(hand.reach), inWords(hand.reach))}</wr-explain
    >
    <wr-explain value=${words.drawReach(percent(hand.drawReach))} heading=${words.drawHeading}
      >${words.drawWords(percent(hand.drawReach), inWords(hand.drawReach), draws)}</wr-explain
    >`;
}

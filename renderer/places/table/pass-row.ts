import { html, nothing, type TemplateResult } from 'lit';
import type { IncomingRates } from '../../../core/table/incoming-rates.ts';
import type { PassDocument } from '../../../core/engine/documents.ts';
import { lookWords } from '../../words/look.ts';
import { counted, differenceAlone, differenceInGames, inWords, percent, tenths } from '../../words/numbers.ts';
import { tableWords } from '../../words/table.ts';

const words = tableWords.plan;

/** A difference that a person would not see: less than half a tenth of a point. */
const EQUAL = 0.0005;

/** A pass's cost, reach and expected away; each explains itself. */
export function passNumbers(option: PassDocument, rates: IncomingRates | null): TemplateResult {
  const { cost, reach, expectedAway, even } = option;
  return html`<span class="numbers">
    <wr-explain class="cost" .value=${costWords(cost)} .heading=${words.costHeading}>
      <p>${cost === 0 ? words.bestWords : words.costWords(differenceInGames(cost))}</p>
      <p>${words.nowWords}</p>
      <p>${words.reachWords(percent(reach), inWords(reach))}</p>
      <p>${incomingWords(rates)} ${words.noJokers}</p>
      ${rates === null ? nothing : html`<p>${words.evenCost(differenceInGames(even.cost), percent(even.reach))}</p>`}
      ${option.reasons.map((reason) => html`<p>${reason}</p>`)}
      <p>${words.giftWords(tenths(option.gift), tenths(2 * option.giftError))}</p>
    </wr-explain>
    <wr-explain .value=${words.expectedAway(tenths(expectedAway))} .heading=${words.awayHeading}>
      <p>${words.awayWords(tenths(expectedAway))}</p>
      <p>${incomingWords(rates)} ${words.noJokers}</p>
      ${rates === null ? nothing : html`<p>${words.evenAway(tenths(even.expectedAway))}</p>`}</wr-explain
    >
  </span>`;
}

/** What is taken to come in, in one sentence. */
function incomingWords(rates: IncomingRates | null): string {
  return rates === null ? lookWords.evenWords : rateSource(rates);
}

/** Where the rates come from, and on how many passes they were counted. */
export function rateSource({ source, passes }: IncomingRates): string {
  return source === 'journal' ? lookWords.journalWords(counted(passes)) : lookWords.tableWords(counted(passes));
}

function costWords(cost: number): string {
  if (cost === 0) return words.best;
  return cost < EQUAL ? words.asGood : words.costs(differenceAlone(cost));
}

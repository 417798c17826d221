import { html, nothing, type TemplateResult } from 'lit';
import type { IncomingRates } from '../../../core/table/incoming-rates.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import { lookWords } from '../../words/look.ts';
import { counted, inWords, percent, points, pointsAlone, tenths } from '../../words/numbers.ts';
import { tableWords } from '../../words/table.ts';
import type { PassView } from '../../worker/calls.ts';

const words = tableWords.plan;

/** A difference that a person would not see: less than half a tenth of a point. */
const EQUAL = 0.0005;

/** "north wind, one bam, five crak". */
export function passName({ give }: PassView): string {
  return give.length === 0 ? words.nothing : give.map(nameOf).join(', ');
}

/** A pass's cost, reach and expected away; each explains itself. */
export function passNumbers(option: PassView, rates: IncomingRates | null): TemplateResult {
  const { cost, reach, expectedAway, even } = option;
  return html`<span class="numbers">
    <wr-explain class="cost" .value=${costWords(cost)} .heading=${words.costHeading}>
      <p>${cost === 0 ? words.bestWords : words.costWords(points(cost))}</p>
      <p>${words.nowWords}</p>
      <p>${words.reachWords(percent(reach), inWords(reach))}</p>
      <p>${incomingWords(rates)} ${words.noJokers}</p>
      ${rates === null ? nothing : html`<p>${words.evenCost(points(even.cost), percent(even.reach))}</p>`}
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
export function incomingWords(rates: IncomingRates | null): string {
  return rates === null ? lookWords.evenWords : rateSource(rates);
}

/** Where the rates come from, and on how many passes they were counted. */
export function rateSource({ source, passes }: IncomingRates): string {
  return source === 'journal' ? lookWords.journalWords(counted(passes)) : lookWords.tableWords(counted(passes));
}

function costWords(cost: number): string {
  if (cost === 0) return words.best;
  return cost < EQUAL ? words.asGood : words.costs(pointsAlone(cost));
}

import { html, type TemplateResult } from 'lit';
import { nameOf } from '../../../core/tiles/names.ts';
import { inWords, percent, points, pointsAlone, tenths } from '../../words/numbers.ts';
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
export function passNumbers(option: PassView): TemplateResult {
  const { cost, reach, expectedAway } = option;
  return html`<span class="numbers">
    <wr-explain class="cost" value=${costWords(cost)} heading=${words.costHeading}>
      <p>${cost === 0 ? words.bestWords : words.costWords(points(cost))}</p>
      <p>${words.nowWords}</p>
      <p>${words.reachWords(percent(reach), inWords(reach))}</p>
      ${option.reasons.map((reason) => html`<p>${reason}</p>`)}
      <p>${words.giftWords(tenths(option.gift), tenths(2 * option.giftError))}</p>
    </wr-explain>
    <wr-explain value=${words.expectedAway(tenths(expectedAway))} heading=${words.awayHeading}
      >${words.awayWords(tenths(expectedAway))}</wr-explain
    >
  </span>`;
}

function costWords(cost: number): string {
  if (cost === 0) return words.best;
  return cost < EQUAL ? words.asGood : words.costs(pointsAlone(cost));
}

import { html, nothing } from 'lit';
import type { Ahead } from '../../../core/review/ahead.ts';
import { points } from '../../words/numbers.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { AnswerView, JudgedView } from '../../worker/warm-up-calls.ts';
import { aheadLines } from './ahead-words.ts';
import { passTiles } from './tile-row.ts';

const words = warmUpWords.answer;

/** The verdict on a pass: what it costs for now, exactly, and by the end of the exchange, with its interval. */
export function passVerdict(
  { options }: AnswerView,
  own: JudgedView,
  ahead: Ahead | null,
  working: number | null,
): unknown {
  const [best] = options;
  const other = own.cost === 0 ? undefined : best;
  return html`<section class="verdict ${own.verdict}">
    <h2 tabindex="-1" class="headline">${warmUpWords.verdicts[own.verdict]}</h2>
    <p class="row">${words.yours} ${passTiles(own)}</p>
    ${other === undefined ? nothing : html`<p class="row">${words.best} ${passTiles(other)}</p>`}
    <p>${own.cost === 0 ? words.noCost : words.cost(points(own.cost))}</p>
    ${aheadLines(ahead, own.verdict, working)}
    <p class="soft">${words.exact} ${words.equalWithin}</p>
    ${reasons(words.whyYours, own)} ${other === undefined ? nothing : reasons(words.whyBest, other)}
  </section>`;
}

/** The verdict on a stop before the second round: nothing but the look ahead can judge it. */
export function stopVerdict({ options }: AnswerView, ahead: Ahead): unknown {
  const { chosen, best } = ahead;
  const pass = options.find(({ give }) => best.choice.type === 'give' && give.join() === best.choice.tiles.join());
  return html`<section class="verdict ${chosen.verdict}">
    <h2 tabindex="-1" class="headline">${warmUpWords.verdicts[chosen.verdict]}</h2>
    <p>${warmUpWords.ahead.youStopped}</p>
    ${pass === undefined ? nothing : html`<p class="row">${warmUpWords.ahead.bestGoesOn} ${passTiles(pass)}</p>`}
    ${aheadLines(ahead, null, null)} ${pass === undefined ? nothing : reasons(words.whyBest, pass)}
  </section>`;
}

function reasons(title: string, { reasons: list }: JudgedView): unknown {
  return html`<h3>${title}</h3>
    <ul class="reasons">
      ${list.map((reason) => html`<li>${reason}</li>`)}
    </ul>`;
}

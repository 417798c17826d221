import { html, nothing } from 'lit';
import { isRight } from '../../../core/review/decision.ts';
import type { Ahead } from '../../../core/review/ahead.ts';
import { points } from '../../words/numbers.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { AnswerView, JudgedView } from '../../worker/warm-up-calls.ts';
import { aheadFigures, aheadWords, doubtWords } from './ahead-words.ts';
import { isSamePass } from './same-pass.ts';
import { passTiles } from './tile-row.ts';

const words = warmUpWords.answer;

/** What is known of a decision at the moment. */
export interface Known {
  readonly answer: AnswerView;
  /** Null until it was looked ahead. */
  readonly ahead: Ahead | null;
  /** The part of the look ahead that is done; null when none runs. */
  readonly working: number | null;
}

/**
 * The verdict on a pass. What it costs by the end of the exchange, with its interval, is the
 * headline; what it costs for now, exactly, stands below. Should nothing be looked ahead, the
 * headline is the one for now, and says so.
 */
export function passVerdict(known: Known, own: JudgedView): unknown {
  const { answer, ahead, working } = known;
  const verdict = ahead === null ? own.verdict : ahead.chosen.verdict;
  const waits = ahead === null && working !== null;
  return html`<section class="verdict ${waits ? '' : verdict}">
    ${headline(known, ahead === null ? words.nowVerdict(warmUpWords.verdicts[verdict]) : warmUpWords.verdicts[verdict])}
    ${ahead === null ? nothing : endPart(ahead, own.verdict)}
    <p class="row">${words.yours} ${passTiles(own)}</p>
    ${ahead === null || isBest(ahead, own) ? nothing : bestRow(words.best, bestInTheEnd(answer, ahead))}
    ${nowPart(answer, own, ahead)} ${reasonsPart(answer, own, ahead)}
  </section>`;
}

/** The verdict on a stop before the second round: nothing but the look ahead can judge it. */
export function stopVerdict(answer: AnswerView, ahead: Ahead): unknown {
  const { verdict } = ahead.chosen;
  const pass = bestInTheEnd(answer, ahead);
  return html`<section class="verdict ${verdict}">
    ${headline({ answer, ahead, working: null }, warmUpWords.verdicts[verdict])} ${endPart(ahead, null)}
    <p>${warmUpWords.ahead.youStopped}</p>
    ${bestRow(warmUpWords.ahead.bestGoesOn, pass)} ${pass === undefined ? nothing : reasons(words.whyBest, pass)}
  </section>`;
}

/** The verdict in large letters; while it is looked ahead, that is said in its place. */
function headline({ ahead, working }: Known, verdict: string): unknown {
  const waits = ahead === null && working !== null;
  return html`<h2 tabindex="-1" class="headline" aria-live="polite">${waits ? warmUpWords.ahead.pending : verdict}</h2>
    ${waits ? html`<progress aria-label=${warmUpWords.ahead.pending} max="1" .value=${working}></progress>` : nothing}`;
}

function endPart(ahead: Ahead, now: JudgedView['verdict'] | null): unknown {
  const doubt = now === null ? '' : doubtWords(now, ahead);
  return html`<p data-ahead>${[...aheadWords(ahead), doubt].filter((each) => each !== '').join(' ')}</p>
    ${aheadFigures(ahead)}`;
}

/** The exact cost of the pass alone, and the best one by it where that is another. */
function nowPart({ options }: AnswerView, own: JudgedView, ahead: Ahead | null): unknown {
  const [best] = options;
  const told = own.cost === 0 || (ahead !== null && best !== undefined && isBest(ahead, best));
  return html`<p data-now>${own.cost === 0 ? words.noCost : words.cost(points(own.cost))} ${words.exact}</p>
    ${told ? nothing : bestRow(words.bestNow, best)}
    <p class="soft">${words.equalWithin}</p>`;
}

function reasonsPart(answer: AnswerView, own: JudgedView, ahead: Ahead | null): unknown {
  const best = ahead === null ? answer.options[0] : bestInTheEnd(answer, ahead);
  const other = best === undefined || isSamePass(best.give, own.give) ? undefined : best;
  const alike = ahead === null ? isRight(own.verdict) : ahead.chosen.verdict === 'best';
  return html`${reasons(words.whyYours, own)} ${other === undefined || alike ? nothing : reasons(words.whyBest, other)}`;
}

/** The pass that came out best, if it was no stop. */
function bestInTheEnd({ options }: AnswerView, { best: { choice } }: Ahead): JudgedView | undefined {
  return choice.type === 'stop' ? undefined : options.find(({ give }) => isSamePass(give, choice.tiles));
}

function isBest({ best: { choice } }: Ahead, { give }: JudgedView): boolean {
  return choice.type === 'give' && isSamePass(choice.tiles, give);
}

function bestRow(name: string, pass: JudgedView | undefined): unknown {
  return pass === undefined ? nothing : html`<p class="row">${name} ${passTiles(pass)}</p>`;
}

function reasons(title: string, { reasons: list }: JudgedView): unknown {
  return html`<h3>${title}</h3>
    <ul class="reasons">
      ${list.map((reason) => html`<li>${reason}</li>`)}
    </ul>`;
}

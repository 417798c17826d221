import { html, type TemplateResult } from 'lit';
import type { ExchangeState } from '../../../core/exchange/state.ts';
import { PASS_STEPS, type PassStep, STEPS } from '../../../core/exchange/steps.ts';
import { tableWords } from '../../words/table.ts';

const words = tableWords.exchange;

type StepStanding = 'done' | 'now' | 'later' | 'skipped';

/** Where a step's tiles go, for where there is no room for words. */
const ARROWS: Readonly<Record<PassStep, string>> = {
  right: '→',
  across: '↑',
  left: '←',
  left2: '←',
  across2: '↑',
  right2: '→',
  courtesy: '↕',
};

/** The seven steps in their rounds; each says whether it is done, due or left out. Goes with `bandStyles`. */
export function stations(exchange: ExchangeState): TemplateResult {
  return html`<ol class="stations" aria-label=${words.stations}>
    ${PASS_STEPS.map((step) => station(step, standingOf(exchange, step)))}
  </ol>`;
}

function station(step: PassStep, standing: StepStanding): TemplateResult {
  return html`<li
    class="station ${standing} ${isFirstOfRound(step) ? 'first' : ''}"
    aria-current=${standing === 'now' ? 'step' : 'false'}
  >
    <span aria-hidden="true"
      >${standing === 'done' ? '✓ ' : standing === 'now' ? '' : html`<span class="arrow">${ARROWS[step]}</span>`}</span
    ><span class="word">${words.shortStep[step]}</span>
    <span class="unseen">${words[standing]}</span>
  </li>`;
}

function isFirstOfRound(step: PassStep): boolean {
  const before = PASS_STEPS[PASS_STEPS.indexOf(step) - 1];
  return before !== undefined && STEPS[before].round !== STEPS[step].round;
}

function standingOf({ step: due, phase, passes }: ExchangeState, step: PassStep): StepStanding {
  if (phase !== 'over' && step === due) return 'now';
  if (passes.some((pass) => pass.step === step)) return 'done';
  const behind = due === null || PASS_STEPS.indexOf(step) < PASS_STEPS.indexOf(due);
  return behind ? 'skipped' : 'later';
}

import { html, type TemplateResult } from 'lit';
import type { ExchangeState } from '../../../core/exchange/state.ts';
import { PASS_STEPS, type PassStep } from '../../../core/exchange/steps.ts';
import { tableWords } from '../../words/table.ts';

const words = tableWords.exchange;

type Standing = 'done' | 'now' | 'later' | 'skipped';

const ROUNDS: readonly { readonly title: string; readonly steps: readonly PassStep[] }[] = [
  { title: words.firstRound, steps: PASS_STEPS.slice(0, 3) },
  { title: words.secondRound, steps: PASS_STEPS.slice(3, 6) },
  { title: words.ending, steps: PASS_STEPS.slice(6) },
];

const ARROWS: Readonly<Record<PassStep, string>> = {
  right: '→',
  across: '↑',
  left: '←',
  left2: '←',
  across2: '↑',
  right2: '→',
  courtesy: '↕',
};

/** The seven steps in their two rounds; each says whether it is done, due or left out. */
export function stations(exchange: ExchangeState): TemplateResult {
  return html`<ol class="rounds" aria-label=${words.stations}>
    ${ROUNDS.map(
      ({ title, steps }) =>
        html`<li>
          <span class="round">${title}</span>
          <ol>
            ${steps.map((step) => station(step, standingOf(exchange, step)))}
          </ol>
        </li>`,
    )}
  </ol>`;
}

function station(step: PassStep, standing: Standing): TemplateResult {
  return html`<li class="station ${standing}" aria-current=${standing === 'now' ? 'step' : 'false'}>
    <span class="arrow" aria-hidden="true"
      >${standing === 'done' ? '✓' : standing === 'skipped' ? '–' : ARROWS[step]}</span
    >
    <span class="word">${words.shortStep[step]}</span>
    <span class="unseen">${words[standing]}</span>
  </li>`;
}

function standingOf({ step: due, phase, passes }: ExchangeState, step: PassStep): Standing {
  if (phase !== 'over' && step === due) return 'now';
  const made = passes.find((pass) => pass.step === step);
  if (made !== undefined) return 'done';
  const behind = due === null || PASS_STEPS.indexOf(step) < PASS_STEPS.indexOf(due);
  return behind ? 'skipped' : 'later';
}

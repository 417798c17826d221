import { css, html, nothing } from 'lit';
import type { IncomingRates } from '../../../core/table/incoming-rates.ts';
import type { RaceResult } from '../../../core/plan/race-run.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-explain.ts';
import type { Answer } from '../../session/ask.ts';
import type { Compared } from '../../session/compare-passes.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { answerWords } from '../../words/answer.ts';
import { lookWords as words } from '../../words/look.ts';
import { counted, tenths } from '../../words/numbers.ts';
import { failed, workPart } from './work-part.ts';
import { choicePart, endWords, standingPart } from './look-row.ts';
import { exactOf, goesBlind } from './pass-answer.ts';
import { passNumbers, rateSource } from './pass-row.ts';
import { panelStyles } from './panel-styles.ts';
import { figureStyles } from './figure-styles.ts';
import './wr-played.ts';

const INCOMING = [
  { value: 'even', label: words.even },
  { value: 'rates', label: words.byRates },
];

const Base = element({
  app: data<AppContext>(),
  /** Whether it is open; kept here, because the parts around it come and go. */
  opened: state(false),
});

/** How the list of passes was counted: the look ahead to the end of the exchange, its figures, its assumptions. */
export class WrLookPanel extends Base {
  static override styles = [
    sharedStyles,
    panelStyles,
    figureStyles,
    css`
      .progress {
        --explain-wrap: normal;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(
      this,
      () => [this.app.lookAhead, this.app.incoming, this.app.analysis],
      () => [
        this.app.lookAhead.look,
        this.app.lookAhead.waits,
        this.app.incoming.byRates,
        this.app.analysis.plan.value,
      ],
    );
  }

  protected override render(): unknown {
    const { look } = this.app.lookAhead;
    const { status, message, value } = look;
    return html`${status === 'failed' ? failed(words.failed, message, () => this.app.lookAhead.again()) : nothing}
      <details class="counted" ?open=${this.opened} @toggle=${this.#toggled}>
        <summary>${answerWords.counted}</summary>
        ${this.opened ? html`${this.#progress(look)} ${this.#figures()} ${this.#assumptions(value?.rates ?? null)}` : nothing}
        <wr-played .app=${this.app}></wr-played>
      </details>`;
  }

  /** Every choice of the list with its figures, and those of the one pass alone, which are exact. */
  #figures(): unknown {
    const { lookAhead, analysis, session } = this.app;
    const plan = analysis.plan.value;
    return html`<ul class="figures">
      ${(lookAhead.ranked ?? []).map((judged) => {
        const exact = exactOf(plan, judged.choice);
        return html`<li>
          ${choicePart(judged.choice, goesBlind(session))} ${standingPart(judged.standing)}
          ${exact === null || plan === null ? nothing : passNumbers(exact, plan.rates)}
        </li>`;
      })}
    </ul>`;
  }

  #toggled({ currentTarget }: Event): void {
    if (currentTarget instanceof HTMLDetailsElement) this.opened = currentTarget.open;
  }

  #progress({ status, value }: Answer<Compared>): unknown {
    const result = value?.result ?? null;
    if (status === 'failed' || this.app.lookAhead.waits) return nothing;
    if (status === 'pending' || result === null)
      return html`<div class="progress">${workPart(words.pending, doneOf(result))}</div>`;
    return html`<div class="progress" role="status">
      <wr-explain value=${words.done(counted(result.samples))} heading=${words.doneHeading}>
        ${endWords(result).map((sentence) => html`<p>${sentence}</p>`)}
      </wr-explain>
    </div>`;
  }

  #assumptions(rates: IncomingRates | null): unknown {
    const { incoming } = this.app;
    return html`<h3>${words.assumed}</h3>
      <wr-choice
        label=${words.incoming}
        .options=${INCOMING}
        .value=${incoming.byRates ? 'rates' : 'even'}
        @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => incoming.choose(detail.value === 'rates')}
      ></wr-choice>
      ${rates === null ? html`<p>${words.evenWords}</p>` : ratesWords(rates).map((each) => html`<p>${each}</p>`)}
      <p>${words.own} ${rates === null ? words.goneStays : words.goneReturns}</p>
      <p>${words.goOn}</p>`;
  }
}

/** The part of the most futures that a look may take; it ends sooner once it has decided. */
function doneOf(result: RaceResult | null): number {
  if (result === null) return 0;
  const { rule, standings } = result;
  return Math.max(...standings.map(({ samples }) => samples)) / ((rule.looks.at(-1) ?? 1) * rule.blockSize);
}

function ratesWords(rates: IncomingRates): string[] {
  return [rateSource(rates), ...rates.classes.map((each) => words.rate(words.classes[each.class], tenths(each.rate)))];
}

customElements.define('wr-look-panel', WrLookPanel);

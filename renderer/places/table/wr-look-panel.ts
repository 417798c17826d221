import { html, LitElement, nothing } from 'lit';
import { legalEvents } from '../../../core/game/legal.ts';
import type { Choice } from '../../../core/table/future-seats.ts';
import { USUAL_EXCHANGE } from '../../../core/table/future-usual.ts';
import type { IncomingRates } from '../../../core/table/incoming-rates.ts';
import type { RaceResult } from '../../../core/plan/race-run.ts';
import type { Kind } from '../../../core/tiles/kinds.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-explain.ts';
import { setAsideKinds } from '../../session/layout.ts';
import type { Look } from '../../session/look-ahead.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { lookWords as words } from '../../words/look.ts';
import { counted, tenths } from '../../words/numbers.ts';
import { tableWords } from '../../words/table.ts';
import { failed } from './failed.ts';
import { choiceAhead, choiceName, choicePart, endWords, unseenWith } from './look-row.ts';
import { rateSource } from './pass-row.ts';
import { panelStyles } from './panel-styles.ts';
import { planStyles } from './plan-styles.ts';
import { workPart } from './work-part.ts';
import './wr-played.ts';

const { use, useLabel } = tableWords.plan;

const INCOMING = [
  { value: 'even', label: words.even },
  { value: 'rates', label: words.byRates },
];

/** The look ahead to the end of the exchange: how far it is, the choices that are no pass of the plan, its assumptions. */
export class WrLookPanel extends LitElement {
  static override properties = {
    app: { attribute: false },
    shown: { attribute: false },
    assumed: { state: true },
  };

  declare app: AppContext;
  /** The passes that the plan shows above, as the kinds' numbers with commas between. */
  declare shown: readonly string[];
  /** Whether the assumptions are open; kept here, because the parts around them come and go. */
  declare assumed: boolean;

  static override styles = [sharedStyles, panelStyles, planStyles];

  constructor() {
    super();
    this.shown = [];
    this.assumed = false;
    new StoreController(
      this,
      () => [this.app.lookAhead, this.app.incoming],
      () => [this.app.lookAhead.look, this.app.incoming.byRates],
    );
  }

  protected override render(): unknown {
    const { look } = this.app.lookAhead;
    if (look.status === 'none') return nothing;
    return html`<section class="plan" aria-label=${words.title} aria-busy=${look.status === 'pending'}>
      <h3>${words.title}</h3>
      ${look.status === 'failed' ? failed(words.failed, look.message, () => this.app.lookAhead.again()) : nothing}
      ${this.#progress(look)} ${this.#assumptions(look)} ${this.#others(look)} <wr-played .app=${this.app}></wr-played>
    </section>`;
  }

  #progress({ status, result }: Look): unknown {
    if (status === 'failed') return nothing;
    if (status === 'pending' || result === null)
      return html`<div class="progress">${workPart(words.pending, doneOf(result))}</div>`;
    return html`<div class="progress" role="status">
      <wr-explain value=${words.done(counted(result.samples))} heading=${words.doneHeading}>
        ${endWords(result).map((sentence) => html`<p>${sentence}</p>`)}
      </wr-explain>
    </div>`;
  }

  /** Choices that have no row in the plan above: a stop, other numbers of tiles. */
  #others(look: Look): unknown {
    const mayBeBlind = (legalEvents(this.app.session.state).give?.blindUpTo ?? 0) > 0;
    const others = look.choices
      .map((choice, place) => ({ choice, place }))
      .filter(({ choice }) => choice.type === 'stop' || !this.shown.includes(choice.tiles.join()));
    if (others.length === 0) return nothing;
    return html`<ul>
      ${others.map(({ choice, place }) => html`<li>${choicePart(choice, mayBeBlind)} ${choiceAhead(look, place)} ${this.#useButton(choice, mayBeBlind)}</li>`)}
    </ul>`;
  }

  #useButton(choice: Choice, mayBeBlind: boolean): unknown {
    if (choice.type === 'stop' || (choice.tiles.length === 0 && !mayBeBlind)) return nothing;
    return html`<wr-button
      label=${useLabel(choiceName(choice, mayBeBlind))}
      @click=${() => this.#use(choice.tiles, mayBeBlind)}
      >${use}</wr-button
    >`;
  }

  #use(tiles: readonly Kind[], mayBeBlind: boolean): void {
    const { session, analysis } = this.app;
    session.lay(setAsideKinds(session.layout, tiles));
    analysis.passBlind(unseenWith(tiles, mayBeBlind));
  }

  #assumptions({ rates }: Look): unknown {
    const { incoming } = this.app;
    return html`<details
      class="more"
      ?open=${this.assumed}
      @toggle=${({ currentTarget }: Event) => {
        if (currentTarget instanceof HTMLDetailsElement) this.assumed = currentTarget.open;
      }}
    >
      <summary>${words.assumed}</summary>
      <wr-choice
        label=${words.incoming}
        .options=${INCOMING}
        .value=${incoming.byRates ? 'rates' : 'even'}
        @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => incoming.choose(detail.value === 'rates')}
      ></wr-choice>
      ${rates === null ? html`<p>${words.evenWords}</p>` : ratesWords(rates).map((each) => html`<p>${each}</p>`)}
      <p>${words.own} ${words.goneStays}</p>
      <p>${words.goOn(tenths(10 * USUAL_EXCHANGE.othersGoOn))}</p>
    </details>`;
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

declare global {
  interface HTMLElementTagNameMap {
    'wr-look-panel': WrLookPanel;
  }
}

import { html, LitElement, nothing } from 'lit';
import { Tiles } from '../../../core/tiles/tiles.ts';
import { namedTiles } from '../../parts/tile/named-tiles.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-explain.ts';
import { setAsideKinds } from '../../session/layout.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { tableWords } from '../../words/table.ts';
import type { PassView, PlanView } from '../../worker/calls.ts';
import { failed } from './failed.ts';
import { passAhead } from './look-row.ts';
import { panelStyles } from './panel-styles.ts';
import { incomingWords, passName, passNumbers } from './pass-row.ts';
import { planStyles } from './plan-styles.ts';
import { workPart } from './work-part.ts';
import './wr-look-panel.ts';

const words = tableWords.plan;

/** Passes that are shown before more are asked for, and then. */
const FIRST_PASSES = 4;
const MORE_PASSES = 20;

/** The plan of the pass that is due: the best ways to give, what each costs, and what the own choice costs. */
export class WrPlanPanel extends LitElement {
  static override properties = {
    app: { attribute: false },
    more: { state: true },
  };

  declare app: AppContext;
  declare more: boolean;

  static override styles = [sharedStyles, panelStyles, planStyles];

  constructor() {
    super();
    this.more = false;
    new StoreController(
      this,
      () => [this.app.analysis, this.app.lookAhead, this.app.session],
      () => {
        const { analysis, lookAhead, session } = this.app;
        return [analysis.plan, analysis.planShare, lookAhead.look, session.layout];
      },
    );
  }

  protected override render(): unknown {
    const { status, value, message } = this.app.analysis.plan;
    return html`<section class="plan" aria-label=${words.title} aria-busy=${status === 'pending'}>
      <h3>${words.title}</h3>
      ${status === 'failed' ? failed(words.failed, message, () => this.app.analysis.again()) : nothing}
      ${status === 'pending' ? workPart(words.pending, this.app.analysis.planShare ?? 0) : nothing}
      ${value === null ? nothing : this.#options(value)}
      <wr-look-panel .app=${this.app} .shown=${this.#shown(value).map(({ give }) => give.join())}></wr-look-panel>
    </section>`;
  }

  #options({ options, rates }: PlanView): unknown {
    return html`<p class="soft">${incomingWords(rates)}</p>
      ${this.#own(options, rates)}
      <ol class="passes">
        ${this.#shown({ options }).map((option) => html`<li>${this.#row(option, rates)}</li>`)}
      </ol>
      ${
        options.length > FIRST_PASSES
          ? html`<wr-button look="quiet" @click=${() => (this.more = !this.more)}
              >${this.more ? words.fewer : words.more}</wr-button
            >`
          : nothing
      }`;
  }

  #shown(plan: Pick<PlanView, 'options'> | null): readonly PassView[] {
    return plan === null ? [] : plan.options.slice(0, this.more ? MORE_PASSES : FIRST_PASSES);
  }

  /** What the tiles in the tray would cost; its line is there before they are, so that nothing moves. */
  #own(options: readonly PassView[], rates: PlanView['rates']): unknown {
    const chosen = Tiles.of(this.app.session.layout.aside.map((tile) => tile.kind));
    const found = options.find(({ give }) => give.length > 0 && Tiles.of(give).equals(chosen));
    return html`<div class="own" aria-live="polite">
      <strong>${words.own}</strong>
      ${found === undefined ? html`<span class="soft">${words.ownNone}</span>` : this.#numbers(found, rates)}
    </div>`;
  }

  #row(option: PassView, rates: PlanView['rates']): unknown {
    return html`${namedTiles(option.give, passName(option))} ${this.#numbers(option, rates)}
      <wr-button label=${words.useLabel(passName(option))} @click=${() => this.#use(option)}>${words.use}</wr-button>`;
  }

  #numbers(option: PassView, rates: PlanView['rates']): unknown {
    return html`${passAhead(this.app.lookAhead.look, option.give)} ${passNumbers(option, rates)}`;
  }

  #use({ give }: PassView): void {
    const { session } = this.app;
    session.lay(setAsideKinds(session.layout, give));
  }
}

customElements.define('wr-plan-panel', WrPlanPanel);

declare global {
  interface HTMLElementTagNameMap {
    'wr-plan-panel': WrPlanPanel;
  }
}

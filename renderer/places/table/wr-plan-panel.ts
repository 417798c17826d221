import { html, nothing } from 'lit';
import { PASS_SIZES } from '../../../core/exchange/steps.ts';
import type { PlanDocument } from '../../../core/engine/documents.ts';
import { legalEvents } from '../../../core/game/legal.ts';
import { data, element } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import '../../parts/wr-explain.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import { itemOfMoment } from '../../../core/warmup/moment-item.ts';
import { fillTray } from '../../session/layout.ts';
import type { Judged } from '../../session/compare-passes.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { answerWords } from '../../words/answer.ts';
import { playWords } from '../../words/play.ts';
import { tableWords } from '../../words/table.ts';
import { adviceSwitch } from './advice-switch.ts';
import { isAdviceWelcome, isReadingWelcome } from './aids.ts';
import '../warmup/wr-make-problem.ts';
import { failed, workPart } from './work-part.ts';
import { choicePart, unseenWith } from './look-row.ts';
import { panelStyles } from './panel-styles.ts';
import { giftWords, goesBlind, hasChosen, listedPasses, passWords, sizeWords } from './pass-answer.ts';
import { planStyles } from './plan-styles.ts';
import './wr-look-panel.ts';
import './wr-passes-so-far.ts';

const words = answerWords.list;

/** Rows that are kept free while the passes are weighed. */
const ROWS = 5;

const Base = element({
  app: data<AppContext>(),
});

/**
 * All that can be done with the pass that is due, in one list, best first, with what each choice costs; under it what is
 * rarer. Sends `play-wanted`.
 */
export class WrPlanPanel extends Base {
  static override styles = [sharedStyles, panelStyles, planStyles];

  constructor() {
    super();
    new StoreController(
      this,
      () => [this.app.analysis, this.app.lookAhead, this.app.session, this.app.draft],
      () => {
        const { analysis, lookAhead, session, draft } = this.app;
        const { plan } = analysis;
        const { blind, wanted } = draft;
        const said = [blind, wanted, session.advice];
        return [plan, lookAhead.ranked, lookAhead.waits, session.state, session.layout, ...said];
      },
    );
  }

  protected override render(): unknown {
    const list = listedPasses(this.app);
    const { status } = this.app.analysis.plan;
    const isAwaited = isAdviceWelcome(this.app) && list === null && status !== 'failed' && !this.app.lookAhead.waits;
    return html`<section class="side" aria-label=${words.all} aria-busy=${isAwaited}>
      ${isAdviceWelcome(this.app) ? this.#list(list) : nothing}
      <div class="foot">${this.#foot()}</div>
    </section>`;
  }

  #list(list: readonly Judged[] | null): unknown {
    const { status, value, message } = this.app.analysis.plan;
    return html`<div class="list">
      <div class="row spread heading">
        <h2>${hasChosen(this.app) ? words.all : words.title}</h2>
        <wr-explain .value=${words.unit} .heading=${words.unitHeading}>
          ${words.unitWords.map((sentence) => html`<p>${sentence}</p>`)}
        </wr-explain>
      </div>
      ${status === 'failed' ? failed(tableWords.plan.failed, message, () => this.app.analysis.again()) : nothing}
      <ol>
        ${list === null ? this.#awaited() : this.#rows(list, value)}
      </ol>
    </div>`;
  }

  /** The room of the rows, so that nothing moves when they come. */
  #awaited(): unknown {
    const { status, progress } = this.app.analysis.plan;
    return html`<li class="awaited">
        ${status === 'pending' ? workPart(answerWords.pending, progress ?? 0) : answerWords.unknown}
      </li>
      ${Array.from({ length: ROWS - 1 }, () => html`<li class="awaited" aria-hidden="true">${answerWords.unknown}</li>`)}`;
  }

  /** The offer lies in the tray, so that the list begins after it; all of them once the player has chosen. */
  #rows(list: readonly Judged[], plan: PlanDocument | null): unknown {
    const shown = hasChosen(this.app) ? list : list.slice(1);
    if (shown.length === 0) return html`<li class="soft">${words.none}</li>`;
    const rest = Math.max(0, ROWS - shown.length);
    return html`${shown.map((each) => html`<li class=${each.standing.verdict === 'costs' ? '' : 'equal'}>${this.#row(each, list, plan)}</li>`)}
    ${Array.from({ length: rest }, () => html`<li class="filler" aria-hidden="true"></li>`)}`;
  }

  #row(judged: Judged, list: readonly Judged[], plan: PlanDocument | null): unknown {
    const { choice } = judged;
    const { session } = this.app;
    const size = sizeWords(judged, list);
    const gift = giftWords(plan, judged);
    const inside = html`${choicePart(choice, goesBlind(session))}
      <span class="size"
        ><strong>${size}</strong>${gift === '' ? nothing : html`<span class="soft">${gift}</span>`}</span
      >`;
    if (choice.type === 'stop') {
      return html`<div class="row">
        ${inside}<wr-button @click=${() => this.#stop(true)}>${answerWords.stopHere}</wr-button>
      </div>`;
    }
    const label = words.row(passWords(session, choice), [size, gift].filter(Boolean).join(', '));
    return html`<button class="row" type="button" aria-label=${label} @click=${() => this.#lay(judged)}>
      ${inside}
    </button>`;
  }

  #foot(): unknown {
    return html`${this.#blindChoice()} ${this.#stopChoice()}
      <div class="row onward">
        <wr-button look="quiet" @click=${() => emit(this, 'play-wanted', null)}>${playWords.begin}</wr-button>
        <p class="soft">${playWords.beginHelp}</p>
      </div>
      ${this.#problem()} <wr-passes-so-far .app=${this.app}></wr-passes-so-far> ${adviceSwitch(this.app)}
      ${isAdviceWelcome(this.app) ? html`<wr-look-panel .app=${this.app}></wr-look-panel>` : nothing}`;
  }

  /** The pass that is due, to talk about; not where no aid is welcome at the table. */
  #problem(): unknown {
    const { session } = this.app;
    const item = isReadingWelcome(this.app) ? itemOfMoment(session.state) : null;
    return item === null ? nothing : html`<wr-make-problem .item=${item} .source=${session.id}></wr-make-problem>`;
  }

  #blindChoice(): unknown {
    const { draft, session } = this.app;
    const most = legalEvents(session.state).give?.blindUpTo ?? 0;
    if (most === 0) return nothing;
    const options = PASS_SIZES.filter((size) => size <= most).map((size) => ({
      value: String(size),
      label: size === 0 ? tableWords.exchange.blindNone : String(size),
    }));
    return html`<div>
      <wr-choice
        label=${tableWords.exchange.blind}
        .options=${options}
        .value=${String(draft.blind)}
        @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => draft.say({ blind: Number(detail.value) })}
      ></wr-choice>
      <p class="soft">${tableWords.exchange.blindHelp}</p>
    </div>`;
  }

  #stopChoice(): unknown {
    const { stop } = legalEvents(this.app.session.state);
    if (stop === null) return nothing;
    const help = stop === 'left2' ? tableWords.exchange.stopHelp : tableWords.exchange.noCourtesyHelp;
    return html`<div class="row">
      <wr-button @click=${() => this.#stop(false)}
        >${stop === 'left2' ? tableWords.exchange.stop : tableWords.exchange.noCourtesy}</wr-button
      >
      <p class="soft">${help}</p>
    </div>`;
  }

  #stop(mine: boolean): void {
    const { session } = this.app;
    const { stop } = legalEvents(session.state);
    const { seat } = session.state;
    if (stop !== null) session.apply({ type: 'stopped', before: stop, ...(mine && seat !== null ? { seat } : {}) });
  }

  #lay({ choice }: Judged): void {
    const { session, draft } = this.app;
    if (choice.type === 'stop') return;
    session.lay(fillTray(session.layout, choice.tiles));
    draft.say({ blind: goesBlind(session) ? unseenWith(choice.tiles, true) : 0 });
  }
}

customElements.define('wr-plan-panel', WrPlanPanel);

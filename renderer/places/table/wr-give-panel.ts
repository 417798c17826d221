import { css, html, nothing } from 'lit';
import { type PassSize, PASS_SIZES } from '../../../core/exchange/steps.ts';
import type { PassChoice } from '../../../core/future/rivals.ts';
import { type GiveDue, legalEvents } from '../../../core/game/legal.ts';
import { formatTileList } from '../../../core/tiles/text.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-slots.ts';
import type { SlotsReturned } from '../../parts/wr-slots.ts';
import { takeBack } from '../../session/layout.ts';
import type { Judged } from '../../session/compare-passes.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { answerWords as words } from '../../words/answer.ts';
import { tableWords } from '../../words/table.ts';
import { isAdviceAfterwards, isAdviceWelcome, isReadingWelcome } from './aids.ts';
import { bandStyles } from './band-styles.ts';
import { chancePart } from './chance-part.ts';
import { panelStyles } from './panel-styles.ts';
import {
  equals,
  goesBlind,
  hasChosen,
  isCourtesy,
  judgementOf,
  listedPasses,
  offeredPass,
  shortReasons,
} from './pass-answer.ts';
import { stations } from './stations.ts';

const COUNTS = PASS_SIZES;

const Base = element({
  app: data<AppContext>(),
  /** Where tiles of the tray may be dropped to be taken back. */
  returnTo: data<Element | null>(null),
  refusal: state(''),
});

/** The pass that is due: the tray with what is offered or chosen, the button that gives it, and why. */
export class WrGivePanel extends Base {
  static override styles = [
    sharedStyles,
    panelStyles,
    bandStyles,
    css`
      .numbers {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-4);
        padding-bottom: var(--space-1);
      }

      .said wr-button {
        --room: 0.3em;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(
      this,
      () => [this.app.session, this.app.analysis, this.app.lookAhead, this.app.draft],
      () => {
        const { session, analysis, lookAhead, draft } = this.app;
        const { blind, asked, offered } = draft;
        const said = [blind, asked, offered, session.advice];
        return [
          session.state,
          session.layout,
          analysis.plan,
          analysis.chance,
          lookAhead.look,
          lookAhead.waits,
          ...said,
        ];
      },
    );
  }

  /** Where tiles may be dropped to be given. */
  get tray(): Element | null {
    return this.renderRoot.querySelector('.band');
  }

  /** Puts the focus on the button that gives. */
  async focusFirst(): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('wr-button[look=main]')?.focus();
  }

  protected override render(): unknown {
    const { exchange } = this.app.session.state;
    const due = legalEvents(this.app.session.state).give;
    if (due === null || exchange === null) return nothing;
    return html`<section class="band" aria-label=${tableWords.exchange.giveTitle[due.step]}>
      <div class="head">
        <h2>${tableWords.exchange.giveTitle[due.step]}</h2>
        ${stations(exchange)} ${isReadingWelcome(this.app) ? chancePart(this.app, null) : nothing}
      </div>
      ${isCourtesy(this.app.session) ? this.#numbers() : nothing}
      <div class="answer">
        ${this.#slots(due)} ${this.#button(due)}
        <div class="said" aria-live="polite">${this.#said(due)}</div>
      </div>
      <p class="refusal" role="alert">${this.refusal}</p>
    </section>`;
  }

  #slots(due: GiveDue): unknown {
    const { session, draft } = this.app;
    const places = due.step === 'courtesy' ? (draft.wanted ?? due.most) : due.most;
    const choice = hasChosen(this.app) ? null : (offeredPass(this.app)?.choice ?? null);
    const offered = choice?.type === 'give' ? choice.tiles : [];
    const blind = choice?.type === 'give' && goesBlind(session) ? places - offered.length : draft.blind;
    return html`<wr-slots
      label=${tableWords.exchange.slots}
      .tiles=${session.layout.tray}
      .offered=${offered.slice(0, places)}
      .places=${places}
      .returnTo=${this.returnTo}
      .blind=${blind}
      @slots-returned=${this.#returned}
    ></wr-slots>`;
  }

  /** One button whatever it says, so that the focus stays on it when the answer comes. */
  #button(due: GiveDue): unknown {
    const { say, reason = '', act } = this.#next(due);
    return html`<wr-button look="main" reason=${reason} @click=${act}>${say}</wr-button>`;
  }

  /** What the main button says and does now, and why it is off; a blank keeps it off without words. */
  #next(due: GiveDue): { readonly say: string; readonly reason?: string; readonly act: () => void } {
    const { draft, session, lookAhead } = this.app;
    const wanted = draft.wanted ?? due.most;
    const own = { say: words.give(wanted, draft.blind), reason: this.#missing(wanted) };
    if (hasChosen(this.app) || draft.wanted === 0) return { ...own, act: () => this.#giveChosen() };
    const choice = offeredPass(this.app)?.choice ?? null;
    if (choice?.type === 'stop') return { say: words.stopHere, act: () => this.#stop() };
    if (!isAdviceWelcome(this.app)) return { ...own, act: () => undefined };
    if (lookAhead.waits) return { say: words.weighPasses, act: () => lookAhead.weigh() };
    const tiles = choice?.tiles.length ?? wanted;
    const blind = choice !== null && goesBlind(session) ? due.most - tiles : 0;
    const reason = draft.wanted === null ? tableWords.exchange.sayNumbers : choice === null ? ' ' : '';
    return { say: words.give(tiles, blind), reason, act: () => this.#give(choice) };
  }

  #missing(wanted: number): string {
    const short = wanted - this.app.session.layout.tray.length;
    const { chooseMore, chooseFewer, sayNumbers } = tableWords.exchange;
    if (this.app.draft.wanted === null) return sayNumbers;
    return short > 0 ? chooseMore(short) : short < 0 ? chooseFewer(-short) : '';
  }

  #said(due: GiveDue): unknown {
    if (hasChosen(this.app)) {
      const [headline, sentence] = this.#own(due);
      return html`<div class="row spread"><strong>${headline}</strong> ${this.#back()}</div>
        ${this.#isOwnUnweighed(due) ? this.#weighOwn() : html`<p>${sentence}</p>`}`;
    }
    const { analysis, lookAhead, draft } = this.app;
    if (!isAdviceWelcome(this.app)) {
      return html`<p class="soft">${isReadingWelcome(this.app) ? words.chooseFirst : words.later}</p>`;
    }
    const list = listedPasses(this.app);
    const [first] = list ?? [];
    if (list === null || first === undefined) {
      const isFailed = lookAhead.look.status === 'failed' || analysis.plan.status === 'failed';
      return html`<p class="soft">${isFailed ? words.failed : lookAhead.waits ? words.waits : words.pending}</p>`;
    }
    if (due.step === 'courtesy' && draft.wanted === null) {
      const count = first.choice.type === 'give' ? first.choice.tiles.length : 0;
      return html`<strong>${words.ask(count, equalCounts(list, count))}</strong>
        <p>${words.askWords}</p>`;
    }
    const others = equals(list);
    const headline = first.choice.type === 'stop' ? words.stop : others > 0 ? words.alike(others) : words.best;
    return html`<strong>${headline}</strong>
      <p>${shortReasons(analysis.plan.value, first)}</p>`;
  }

  /** What the player's own choice costs, as soon as it is whole: a headline and a sentence. */
  #own(due: GiveDue): readonly [string, string] {
    const { draft, session, lookAhead, analysis } = this.app;
    const { own } = words;
    if (!isReadingWelcome(this.app)) return [own.chosen, ''];
    const missing = (draft.wanted ?? due.most) - session.layout.tray.length;
    if (missing !== 0) return missing > 0 ? [own.open(missing), own.openWords] : ['', ''];
    const judged = lookAhead.chosen === null ? null : lookAhead.judged(lookAhead.chosen);
    if (judged === null) return [lookAhead.waits ? own.chosen : own.pending, ''];
    const { verdict, deciding } = judged.standing;
    const isAlone = verdict === 'best' && equals(lookAhead.ranked ?? []) === 0;
    const size = isAlone ? own.best : verdict === 'costs' ? own.costs(deciding.loss.mean) : own.equal;
    return [size, shortReasons(analysis.plan.value, judged)];
  }

  /** Whether a whole pass of the player's own lies there, which is weighed only when she asks. */
  #isOwnUnweighed(due: GiveDue): boolean {
    const { draft, session, lookAhead } = this.app;
    const missing = (draft.wanted ?? due.most) - session.layout.tray.length;
    return isReadingWelcome(this.app) && missing === 0 && lookAhead.waits;
  }

  #weighOwn(): unknown {
    return html`<wr-button look="quiet" @click=${() => this.app.lookAhead.weigh()}>${words.weighOwn}</wr-button>`;
  }

  #back(): unknown {
    return html`<wr-button look="quiet" @click=${this.#emptyTray}
      >${isAdviceWelcome(this.app) ? words.back : words.backAlone}</wr-button
    >`;
  }

  /** Courtesy: what each of the two asks for. */
  #numbers(): unknown {
    const { asked, offered } = this.app.draft;
    const options = COUNTS.map((count) => ({ value: String(count), label: String(count) }));
    const number = (label: string, value: PassSize | null, say: (count: PassSize) => void): unknown =>
      html`<wr-choice
        label=${label}
        .options=${options}
        .value=${value === null ? '' : String(value)}
        @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => {
          const count = COUNTS.find((each) => String(each) === detail.value);
          if (count !== undefined) say(count);
        }}
      ></wr-choice>`;
    return html`<div class="numbers">
      ${number(tableWords.exchange.asked, asked, (count) => this.app.draft.say({ asked: count }))}
      ${number(tableWords.exchange.offered, offered, (count) => this.app.draft.say({ offered: count }))}
    </div>`;
  }

  #returned({ detail }: CustomEvent<SlotsReturned>): void {
    const { session } = this.app;
    session.lay(takeBack(session.layout, detail.ids));
  }

  #emptyTray(): void {
    const { session, draft } = this.app;
    draft.say({ blind: 0 });
    session.lay(
      takeBack(
        session.layout,
        session.layout.tray.map(({ id }) => id),
      ),
    );
    void this.focusFirst();
  }

  #giveChosen(): void {
    this.#give({ type: 'give', tiles: this.app.session.layout.tray.map(({ kind }) => kind) });
  }

  #give(choice: PassChoice | null): void {
    const { session, draft } = this.app;
    const due = legalEvents(session.state).give;
    if (due === null || choice === null || choice.type === 'stop') return;
    const blind = due.blindUpTo > 0 ? due.most - choice.tiles.length : 0;
    const { asked, offered } = draft;
    const judgement = isAdviceAfterwards(this.app) ? judgementOf(this.app, choice) : '';
    const given = session.apply({
      type: 'gave',
      step: due.step,
      tiles: formatTileList(choice.tiles),
      ...(blind > 0 ? { blind } : {}),
      ...(due.step === 'courtesy' ? { asked: asked ?? 0, offered: offered ?? 0 } : {}),
    });
    this.refusal = given.ok ? '' : given.problem.message;
    if (given.ok) draft.sayAfterwards(judgement);
  }

  #stop(): void {
    const { session } = this.app;
    const { stop } = legalEvents(session.state);
    const { seat } = session.state;
    if (stop !== null) session.apply({ type: 'stopped', before: stop, ...(seat === null ? {} : { seat }) });
  }
}

/** The other numbers of a courtesy that are as good as the one recommended. */
function equalCounts(list: readonly Judged[], best: number): number[] {
  const counts = list.flatMap(({ choice, standing }) =>
    standing.verdict !== 'costs' && choice.type === 'give' ? [choice.tiles.length] : [],
  );
  return [...new Set(counts)].filter((count) => count !== best).toSorted((one, other) => one - other);
}

customElements.define('wr-give-panel', WrGivePanel);

declare global {
  interface HTMLElementTagNameMap {
    'wr-give-panel': WrGivePanel;
  }
}

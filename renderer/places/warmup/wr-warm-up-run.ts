import { html, nothing, type PropertyValues } from 'lit';
import { PASS_SIZE } from '../../../core/exchange/steps.ts';
import { NEVER_PASSED } from '../../../core/exchange/words.ts';
import { formatTiles } from '../../../core/tiles/text.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/rack/wr-rack.ts';
import type { RackIds, RackReordered } from '../../parts/rack/wr-rack.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { arranged, relaid, takeBack, toTray } from '../../session/layout.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { practiceWords } from '../../words/practice.ts';
import type { PracticeRoom } from './practice-room.ts';
import { aimNames } from './aim-names.ts';
import { cameRow, goneRow, runHead, runHeadStyles } from './run-head.ts';
import { judgedRack, markedRack, mayBeGiven, type Tap, TAPS } from './run-rack.ts';
import { runStyles } from './run-styles.ts';
import type { WarmUpRun } from './warm-up-run.ts';
import { warmUpStyles } from './warm-up-styles.ts';
import './wr-card-at-hand.ts';
import type { AimsChanged } from './wr-card-at-hand.ts';
import './wr-practice-band.ts';
import type { WrPracticeBand } from './wr-practice-band.ts';
import './wr-warm-up-answer.ts';
import './wr-warm-up-ledger.ts';

const words = practiceWords.page;

const Base = element({
  room: data<PracticeRoom>(),
  run: data<WarmUpRun>(),
  app: data<AppContext>(),
  /** What a tap on a tile does. */
  tap: state<Tap>('give'),
  /** The tiles chosen in the rack to be moved, by id. */
  moving: state<readonly string[]>(() => []),
  /** Whether the card is shown beside the answer. */
  card: state(false),
  /** Why a tap did nothing, in words. */
  refusal: state(''),
});

/** One problem on one page: what is asked, the card at hand, the tray, the rack; then the answer in the same place. */
export class WrWarmUpRun extends Base {
  static override styles = [sharedStyles, warmUpStyles, runHeadStyles, runStyles];

  #shown = '';
  #clock: ReturnType<typeof setInterval> | undefined;

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  /** The clock, for players who want one, is drawn anew each second. */
  override connectedCallback(): void {
    super.connectedCallback();
    this.#clock = setInterval(() => {
      if (this.room.options.clock) this.requestUpdate();
    }, 1000);
  }

  override disconnectedCallback(): void {
    clearInterval(this.#clock);
    super.disconnectedCallback();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('run')) return;
    this.moving = [];
    this.card = false;
    this.refusal = '';
  }

  /** What was pressed is gone: the focus goes to what is asked, or said, now. */
  protected override updated(): void {
    const { run, room } = this;
    const stage = run.over ? 'over' : run.isAnswered ? (run.shown === null ? 'working' : 'answer') : 'asked';
    const now = `${room.number} ${run.warmUp.past.length} ${stage}`;
    if (now === this.#shown) return;
    this.#shown = now;
    void this.#band?.updateComplete.then(() => this.#band?.focusHeading());
  }

  get #band(): WrPracticeBand | null {
    return this.renderRoot.querySelector('wr-practice-band');
  }

  protected override render(): unknown {
    const { run, room } = this;
    if (run.over) {
      return html`<div class="ended">
        ${runHead(run, room, nothing)}
        <wr-run-foot .room=${room} .run=${run}></wr-run-foot>
        <wr-warm-up-ledger .room=${room} .run=${run}></wr-warm-up-ledger>
      </div>`;
    }
    return html`<div class="run ${run.shown === null ? 'asking' : 'answered'}">
      <div class="top">${runHead(run, room, this.#cardButton())}</div>
      ${run.shown === null ? this.#asking() : this.#answered()}
      <div class="band">
        <wr-practice-band
          .room=${room}
          .run=${run}
          .returnTo=${this.renderRoot.querySelector('.shelf')}
        ></wr-practice-band>
      </div>
      ${this.#rack()}
      ${
        run.shown === null
          ? nothing
          : html`<div class="onward"><wr-run-foot .room=${room} .run=${run}></wr-run-foot></div>`
      }
    </div>`;
  }

  /** The card stands beside the question; beside the answer on request. */
  #cardButton(): unknown {
    const { card } = practiceWords;
    if (this.run.shown === null) return nothing;
    return html`<wr-button look="quiet" .pressed=${this.card} @click=${() => (this.card = !this.card)}
      >${this.card ? card.hide : card.show}</wr-button
    >`;
  }

  #asking(): unknown {
    const { run } = this;
    const { draft, layout } = run;
    const kept = layout.rack.filter(({ id }) => draft.keeps.includes(id)).length;
    return html`<section class="left">
        <p>${run.step === 'courtesy' ? words.helpCourtesy : words.help}</p>
        <p class="soft">${words.helpMore}</p>
        ${cameRow(run)} ${goneRow(run)}
        <p role="status">
          ${words.kept(kept)} ${draft.aims.length === 0 ? '' : words.aimed(aimNames(draft.aims, this.room.sections))}
        </p>
        <wr-field
          label=${words.why}
          lines="2"
          .value=${draft.why}
          @field-typed=${({ detail }: CustomEvent<FieldText>) => run.mark({ why: detail.value })}
        ></wr-field>
      </section>
      <section class="card" aria-label=${practiceWords.card.title}>${this.#card()}</section>`;
  }

  #answered(): unknown {
    const { run, room } = this;
    return html`<wr-warm-up-answer class=${this.card ? 'left' : 'whole'} .room=${room} .run=${run}></wr-warm-up-answer>
      ${
        this.card
          ? html`<section class="card" aria-label=${practiceWords.card.title}>${this.#card()}</section>`
          : nothing
      }`;
  }

  #card(): unknown {
    const { run } = this;
    return html`<wr-card-at-hand
      .room=${this.room}
      .rack=${formatTiles(run.rack)}
      .aims=${run.draft.aims}
      @aims-changed=${({ detail }: CustomEvent<AimsChanged>) => (run.isAnswered ? undefined : run.mark({ aims: detail }))}
    ></wr-card-at-hand>`;
  }

  #rack(): unknown {
    const { run } = this;
    const { layout, draft, shown } = run;
    const isAsked = !run.isAnswered;
    const tiles = shown === null ? markedRack(layout.rack, draft.keeps, run.cameIn) : judgedRack(layout.rack, shown);
    return html`<div class="shelf">
      <div class="tools">
        ${isAsked ? this.#tapChoice() : html`<p class="soft legend">${legend()}</p>`}
        <p class="bad" role="alert">${isAsked ? this.refusal : ''}</p>
        ${isAsked ? html`<wr-button look="quiet" @click=${() => run.lay(arranged(layout))}>${words.arrange}</wr-button>` : nothing}
      </div>
      <wr-rack
        label=${words.rack}
        .tiles=${tiles}
        .tiers=${this.app.preferences.values.rackTiers}
        .selected=${[...this.moving]}
        .limit=${this.tap === 'arrange' ? layout.rack.length : 1}
        .sendTo=${this.#band}
        @rack-reordered=${({ detail }: CustomEvent<RackReordered>) => run.lay(relaid(layout, detail.placed))}
        @rack-selected=${({ detail }: CustomEvent<RackIds>) => this.#tapped(detail.ids)}
        @rack-sent=${({ detail }: CustomEvent<RackIds>) => this.#give(detail.ids)}
        @rack-recalled=${() => this.#recall()}
      ></wr-rack>
    </div>`;
  }

  #tapChoice(): unknown {
    return html`<div class="row">
      <span aria-hidden="true">${words.tap}</span>
      <wr-choice
        label=${words.tap}
        .labelHidden=${true}
        .options=${TAPS.map((value) => ({ value, label: words.taps[value] }))}
        .value=${this.tap}
        @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => {
          this.tap = TAPS.find((each) => each === detail.value) ?? 'give';
          this.moving = [];
        }}
      ></wr-choice>
    </div>`;
  }

  #tapped(ids: readonly string[]): void {
    this.refusal = '';
    if (this.tap === 'arrange') {
      this.moving = ids;
      return;
    }
    const id = ids.at(-1);
    this.moving = [];
    this.requestUpdate();
    if (id === undefined || this.run.isAnswered) return;
    if (this.tap === 'give') this.#give([id]);
    else this.#keep(id);
  }

  #keep(id: string): void {
    const { keeps } = this.run.draft;
    this.run.mark({ keeps: keeps.includes(id) ? keeps.filter((each) => each !== id) : [...keeps, id] });
  }

  #give(ids: readonly string[]): void {
    const { run } = this;
    if (run.isAnswered) return;
    const { layout, draft } = run;
    const given = ids.filter((id) => mayBeGiven(layout.rack, id));
    if (given.length < ids.length) return void (this.refusal = NEVER_PASSED);
    if (layout.tray.length + given.length > PASS_SIZE - draft.blind) return void (this.refusal = words.full);
    this.refusal = '';
    if (draft.keeps.some((id) => given.includes(id))) {
      run.mark({ keeps: draft.keeps.filter((id) => !given.includes(id)) });
    }
    run.lay(toTray(layout, given));
  }

  #recall(): void {
    const { run } = this;
    const last = run.layout.tray.at(-1);
    if (last !== undefined && !run.isAnswered) run.lay(takeBack(run.layout, [last.id]));
  }
}

function legend(): unknown {
  const { legend: lead, marks } = practiceWords.answer;
  return html`${lead} <span class="mark kept">${marks.kept}</span>, <span class="mark spare">${marks.spare}</span>`;
}

customElements.define('wr-warm-up-run', WrWarmUpRun);

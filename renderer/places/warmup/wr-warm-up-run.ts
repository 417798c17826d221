import { css, html, nothing, type PropertyValues } from 'lit';
import type { Tiles } from '../../../core/tiles/tiles.ts';
import type { Stage } from '../../../core/warmup/warm-up.ts';
import { announce } from '../../parts/announcer.ts';
import { data, element, state } from '../../parts/element.ts';
import type { RackIds } from '../../parts/rack/wr-rack.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { arranged } from '../../session/layout.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { PracticeRoom } from './practice-room.ts';
import { runHead, runHeadStyles, stageList } from './run-head.ts';
import { markedAt, runRack, runRackStyles, tilesOfIds, withoutJokers } from './run-rack.ts';
import type { WarmUpRun } from './warm-up-run.ts';
import { warmUpStyles } from './warm-up-styles.ts';
import './wr-ask-aim.ts';
import type { AimsChanged } from './wr-ask-aim.ts';
import './wr-ask-pass.ts';
import './wr-run-foot.ts';
import './wr-warm-up-answer.ts';
import './wr-warm-up-ledger.ts';

const words = warmUpWords.run;

const Base = element({
  room: data<PracticeRoom>(),
  run: data<WarmUpRun>(),
  app: data<AppContext>(),
  aims: state<readonly string[]>(() => []),
  /** The tiles chosen in the rack, by id. */
  marked: state<readonly string[]>(() => []),
  blind: state(0),
  why: state(''),
  /** Why a click did nothing, in words. */
  refusal: state(''),
});

/** One problem: the rack, and the question of the current stage. */
export class WrWarmUpRun extends Base {
  static override styles = [
    sharedStyles,
    warmUpStyles,
    runHeadStyles,
    runRackStyles,
    css`
      .run {
        display: flex;
        flex-direction: column;
        gap: var(--space-3);
      }

      .ask {
        gap: var(--space-3);
      }

      .ask .bad:empty {
        display: none;
      }

      .asked:focus {
        outline: none;
      }
    `,
  ];

  #stage: Stage | 'over' = 'arrange';
  #shown: Stage | 'over' | null = null;
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

  /** A new problem or stage begins with what was answered there before. */
  protected override willUpdate(changed: PropertyValues<this>): void {
    const { over, warmUp, layout } = this.run;
    const stage = over ? 'over' : warmUp.stage;
    if (!changed.has('run') && stage === this.#stage) return;
    if (changed.has('run')) this.aims = warmUp.attempt.aims;
    if (changed.has('run') || stage === 'choose') this.why = warmUp.attempt.why;
    this.#stage = stage;
    this.marked = stage === 'over' ? [] : markedAt(stage, warmUp.attempt, layout.rack);
    this.blind = stage === 'over' ? 0 : warmUp.attempt.blind;
    this.refusal = '';
  }

  protected override updated(): void {
    if (this.#stage === this.#shown) return;
    this.#shown = this.#stage;
    this.renderRoot.querySelector<HTMLElement>('.asked')?.focus({ preventScroll: false });
  }

  protected override render(): unknown {
    const { run, room } = this;
    // Not before the answer above: it would push the buttons down under the pointer.
    const isAnswered = run.working === null && (run.over || run.warmUp.stage === 'answer');
    return html`<div class="run">
      ${runHead(run, room)} ${run.over ? nothing : stageList(run)} ${this.#rack()}
      <section class="panel ask" aria-busy=${run.working !== null}>
        ${run.over ? html`<wr-warm-up-ledger .room=${room} .run=${run}></wr-warm-up-ledger>` : this.#asked()}
      </section>
      ${isAnswered ? html`<wr-run-foot .room=${room} .run=${run}></wr-run-foot>` : nothing}
    </div>`;
  }

  #rack(): unknown {
    const { stage } = this.run.warmUp;
    const limits = { keep: this.run.layout.rack.length, choose: 3 - this.blind };
    return runRack(this.run, {
      tiers: this.app.preferences.values.rackTiers,
      marked: this.run.over ? [] : this.marked,
      limit: stage === 'keep' || stage === 'choose' ? limits[stage] : 1,
      onSelect: (event) => this.#selected(event),
    });
  }

  #asked(): unknown {
    const { stage } = this.run.warmUp;
    switch (stage) {
      case 'answer':
        return html`<wr-warm-up-answer .room=${this.room} .run=${this.run}></wr-warm-up-answer>`;
      case 'arrange':
        return this.#askToArrange();
      case 'aim':
        return this.#askForAims();
      case 'keep':
        return this.#askForKeepers();
      case 'choose':
        return this.#askForPass();
      case 'say':
        return this.#askWhy();
    }
  }

  #askToArrange(): unknown {
    const { run } = this;
    const arrange = html`<wr-button @click=${() => run.lay(arranged(run.layout))}>${words.arrangeAll}</wr-button>`;
    return this.#ask(words.arrange, words.arrangeHelp, arrange, () => run.arranged());
  }

  #askForAims(): unknown {
    const choice = html`<wr-ask-aim
      .sections=${this.room.sections}
      .aims=${this.aims}
      @aims-changed=${({ detail }: CustomEvent<AimsChanged>) => (this.aims = detail)}
    ></wr-ask-aim>`;
    return this.#ask(words.aim, words.aimHelp, choice, () => this.run.aimed(this.aims));
  }

  #askForKeepers(): unknown {
    const count = html`<p role="status">${words.kept(this.marked.length)}</p>`;
    return this.#ask(words.keep, words.keepHelp, count, () => this.run.kept(this.#tilesMarked));
  }

  #askForPass(): unknown {
    const { run } = this;
    const courtesy = run.step === 'courtesy';
    return html`<h2 class="asked" tabindex="-1">${courtesy ? words.chooseCourtesy : words.choose}</h2>
      <p class="soft">${courtesy ? words.chooseCourtesyHelp : words.chooseHelp}</p>
      ${this.refusal === '' ? nothing : html`<p class="bad">${this.refusal}</p>`}
      <wr-ask-pass
        .room=${this.room}
        .run=${run}
        .refusal=${run.refusal}
        .count=${this.marked.length}
        .blind=${this.blind}
        @blind-chosen=${({ detail }: CustomEvent<number>) => this.#blindChosen(detail)}
        @pass-chosen=${() => run.chosen(this.#tilesMarked, this.blind)}
        >${this.#back()}</wr-ask-pass
      >`;
  }

  #askWhy(): unknown {
    const field = html`<wr-field
      label=${words.sayLabel}
      lines="3"
      .value=${this.why}
      @field-typed=${({ detail }: CustomEvent<FieldText>) => (this.why = detail.value)}
    ></wr-field>`;
    const title = this.run.warmUp.attempt.stops ? words.sayStop : words.say;
    return this.#ask(title, words.sayHelp, field, () => this.run.said(this.why), words.show);
  }

  /** A question with the button that settles it. */
  #ask(title: string, help: string, body: unknown, settle: () => unknown, label: string = words.next): unknown {
    const { run } = this;
    return html`<h2 class="asked" tabindex="-1">${title}</h2>
      <p class="soft">${help}</p>
      ${body}
      <p class="bad" role="alert">${run.refusal}</p>
      <div class="row">
        <wr-button look="main" @click=${settle}>${label}</wr-button>
        ${run.warmUp.stage === 'arrange' ? nothing : this.#back()}
      </div>`;
  }

  #back(): unknown {
    return html`<wr-button look="quiet" @click=${() => this.run.back()}>${words.back}</wr-button>`;
  }

  get #tilesMarked(): Tiles {
    return tilesOfIds(this.marked, this.run.layout.rack);
  }

  #selected({ detail }: CustomEvent<RackIds>): void {
    const passable = withoutJokers(detail.ids, this.run.layout.rack);
    const joker = this.run.warmUp.stage === 'choose' && passable.length < detail.ids.length;
    this.refusal = joker ? warmUpWords.jokerStays : '';
    if (joker) announce(warmUpWords.jokerStays);
    this.marked = joker ? passable : detail.ids;
  }

  #blindChosen(blind: number): void {
    this.blind = blind;
    this.marked = this.marked.slice(0, 3 - blind);
  }
}

customElements.define('wr-warm-up-run', WrWarmUpRun);

import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { JOKER } from '../../../core/tiles/kinds.ts';
import { Tiles } from '../../../core/tiles/tiles.ts';
import { blindNow, mayStop, type Stage, STAGES } from '../../../core/warmup/warm-up.ts';
import { announce } from '../../parts/announcer.ts';
import type { RackTile } from '../../parts/rack/rack-tile.ts';
import '../../parts/rack/wr-rack.ts';
import type { RackIds, RackReordered } from '../../parts/rack/wr-rack.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { arranged, relaid } from '../../session/layout.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { warmUpWords } from '../../words/warmup.ts';
import { kindsOf, tileRow } from './tile-row.ts';
import type { PracticeRoom } from './practice-room.ts';
import { rackMarks } from './rack-marks.ts';
import { runStyles } from './run-styles.ts';
import type { WarmUpRun } from './warm-up-run.ts';
import { warmUpStyles } from './warm-up-styles.ts';
import './wr-warm-up-answer.ts';
import './wr-warm-up-ledger.ts';

const words = warmUpWords.run;

/** One problem: the rack, and the one thing that is asked now. */
export class WrWarmUpRun extends LitElement {
  static override properties = {
    room: { attribute: false },
    run: { attribute: false },
    app: { attribute: false },
    aims: { state: true },
    marked: { state: true },
    blind: { state: true },
    why: { state: true },
    told: { state: true },
  };

  declare room: PracticeRoom;
  declare run: WarmUpRun;
  declare app: AppContext;
  declare aims: readonly string[];
  /** The tiles chosen in the rack, by id. */
  declare marked: readonly string[];
  declare blind: number;
  declare why: string;
  declare told: string;

  static override styles = [sharedStyles, warmUpStyles, runStyles, css``];

  #stage: Stage | 'over' = 'arrange';
  #tick: ReturnType<typeof setInterval> | undefined;

  constructor() {
    super();
    this.aims = [];
    this.marked = [];
    this.blind = 0;
    this.why = '';
    this.told = '';
    new StoreController(this, () => [this.room]);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#tick = setInterval(() => {
      if (this.room.wishes.clock) this.requestUpdate();
    }, 1000);
  }

  override disconnectedCallback(): void {
    clearInterval(this.#tick);
    super.disconnectedCallback();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const stage = this.run.over ? 'over' : this.run.warmUp.stage;
    if (changed.has('run')) {
      this.aims = [];
      this.why = '';
      this.told = '';
    }
    if (!changed.has('run') && stage === this.#stage) return;
    this.#stage = stage;
    this.marked = this.#markedAt(stage);
    this.blind = 0;
    this.told = '';
  }

  protected override updated(): void {
    if (this.#stage === this.#shown) return;
    this.#shown = this.#stage;
    this.renderRoot.querySelector<HTMLElement>('.asked')?.focus({ preventScroll: false });
  }

  #shown: Stage | 'over' | null = null;

  protected override render(): unknown {
    const { over } = this.run;
    return html`<div class="run">
      ${this.#head()} ${over ? nothing : this.#stages()} ${this.#rack()}
      <section class="panel ask" aria-busy=${this.run.working !== null}>
        ${over ? this.#ledger() : this.#asked()}
      </section>
      ${this.#foot()}
    </div>`;
  }

  #head(): unknown {
    const { item, about, rack, seconds } = this.run;
    const { sitting, wishes } = this.room;
    const { found } = about;
    return html`<div class="row spread">
      <p>
        <strong>${warmUpWords.steps[this.run.step ?? 'courtesy']}</strong> · ${words.seat(item.seat, rack.size)}
        ${sitting === null ? nothing : html`<span class="soft">${words.nextOf(sitting.done, sitting.of)}</span>`}
        ${
          found === undefined || found.tried === 1
            ? nothing
            : html`<span class="soft"
                >${words.tried(found.tried, found.share === null ? '' : words.share(Math.round(1 / found.share)))}</span
              >`
        }
      </p>
      <div class="row">
        ${wishes.clock ? html`<span class="clock" role="timer" aria-label=${words.clockLabel}>${words.clock(seconds)}</span>` : nothing}
        ${item.code === undefined ? nothing : html`<span class="code">${words.code(item.code)}</span>`}
        <wr-button look="quiet" @click=${() => this.room.leave()}>${words.leave}</wr-button>
      </div>
    </div>`;
  }

  #stages(): unknown {
    const now = STAGES.indexOf(this.run.warmUp.stage);
    return html`<ol class="stages" aria-label=${words.stagesLabel}>
      ${STAGES.map(
        (stage, place) =>
          html`<li class=${place < now ? 'past' : ''} aria-current=${place === now ? 'step' : nothing}>
            ${words.stages[stage]}
          </li>`,
      )}
    </ol>`;
  }

  #asked(): unknown {
    switch (this.run.warmUp.stage) {
      case 'arrange':
        return this.#ask(
          words.arrange,
          words.arrangeHelp,
          html`<wr-button @click=${() => this.run.lay(arranged(this.run.layout))}>${words.arrangeAll}</wr-button>`,
          html`<wr-button look="main" @click=${() => this.run.arranged()}>${words.next}</wr-button>`,
        );
      case 'aim':
        return this.#ask(
          words.aim,
          words.aimHelp,
          this.#aimChoices(),
          html`<wr-button look="main" @click=${() => this.run.aimed(this.aims)}>${words.next}</wr-button>`,
        );
      case 'keep':
        return this.#ask(
          words.keep,
          words.keepHelp,
          html`<p role="status">${words.kept(this.marked.length)}</p>`,
          html`<wr-button look="main" @click=${() => this.run.kept(this.#tilesMarked())}>${words.next}</wr-button>`,
        );
      case 'choose':
        return this.#choose();
      case 'say':
        return this.#ask(
          words.say,
          words.sayHelp,
          html`<wr-field
            label=${words.say}
            lines="3"
            .value=${this.why}
            @field-typed=${({ detail }: CustomEvent<FieldText>) => (this.why = detail.value)}
          ></wr-field>`,
          html`<wr-button look="main" @click=${() => this.run.said(this.why)}>${words.show}</wr-button>`,
        );
      case 'answer':
        return html`<wr-warm-up-answer .room=${this.room} .run=${this.run}></wr-warm-up-answer>`;
    }
  }

  #ask(title: string, help: string, body: unknown, act: unknown): unknown {
    return html`<h2 class="asked" tabindex="-1">${title}</h2>
      <p class="soft">${help}</p>
      ${body}
      <p class="bad" role="alert">${this.run.refusal}</p>
      <div class="row">${act} ${this.#back()}</div>`;
  }

  #back(): unknown {
    if (this.run.warmUp.stage === 'arrange') return nothing;
    return html`<wr-button look="quiet" @click=${() => this.run.back()}>${words.back}</wr-button>`;
  }

  #choose(): unknown {
    const { step, warmUp } = this.run;
    const courtesy = step === 'courtesy';
    const most = blindNow(warmUp);
    const due = 3 - this.blind;
    const count = this.marked.length;
    const ready = courtesy || count === due;
    const body = html`<p role="status">${courtesy ? words.courtesyChosen(count) : words.chosen(count, due)}</p>
      ${
        most === 0
          ? nothing
          : html`<wr-choice
              label=${words.blind}
              .options=${[0, 1, 2, 3].map((blind) => ({ value: `${blind}`, label: `${blind}` }))}
              .value=${String(this.blind)}
              @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => this.#blindChosen(Number(detail.value))}
            ></wr-choice>`
      }`;
    const act = html`<wr-button
        look="main"
        ?disabled=${!ready}
        @click=${() => this.run.chosen(this.#tilesMarked(), courtesy ? 0 : this.blind)}
        >${words.give(courtesy ? count : due)}</wr-button
      >
      ${mayStop(warmUp) ? html`<wr-button @click=${() => this.run.stop()}>${words.stop}</wr-button>` : nothing}`;
    return this.#ask(
      courtesy ? words.chooseCourtesy : words.choose,
      courtesy ? words.chooseCourtesyHelp : words.chooseHelp,
      body,
      act,
    );
  }

  #aimChoices(): unknown {
    const { sections } = this.room;
    const lines = sections.flatMap((section) => section.lines.map((line) => ({ ...line, section: section.name })));
    const hand = this.aims.find((aim) => aim.startsWith('line:')) ?? '';
    return html`<div class="row">
        ${sections.map(({ name }) => {
          const aim = `section:${name}`;
          return html`<wr-button .pressed=${this.aims.includes(aim)} @click=${() => this.#toggle(aim)}
            >${name}</wr-button
          >`;
        })}
      </div>
      <label class="labelled"
        >${words.hand}
        <select @change=${this.#handChosen}>
          <option value="" ?selected=${hand === ''}>${words.noHand}</option>
          ${lines.map(
            ({ id, section, pattern }) =>
              html`<option value="line:${id}" ?selected=${hand === `line:${id}`}>${section}: ${pattern}</option>`,
          )}
        </select>
      </label>`;
  }

  #rack(): unknown {
    const { layout, warmUp, over } = this.run;
    const { stage, item } = warmUp;
    const marks =
      stage === 'answer' ? rackMarks(layout.rack, this.run.answer?.tiles ?? []) : new Map<string, Partial<RackTile>>();
    const limit = stage === 'keep' ? layout.rack.length : stage === 'choose' ? 3 - this.blind : 1;
    return html`<div class="rack">
      ${item.gone === '' ? nothing : html`<p class="row soft">${words.gone} ${tileRow(kindsOf(item.gone))}</p>`}
      <wr-rack
        label=${words.rack}
        .tiles=${layout.rack.map((tile) => ({ ...tile, ...marks.get(tile.id) }))}
        .tiers=${this.app.preferences.values.rackTiers}
        .selected=${over ? [] : this.marked}
        .limit=${limit}
        @rack-reordered=${({ detail }: CustomEvent<RackReordered>) => this.run.lay(relaid(layout, detail.placed))}
        @rack-selected=${this.#selected}
      ></wr-rack>
    </div>`;
  }

  #ledger(): unknown {
    return html`<wr-warm-up-ledger .room=${this.room} .run=${this.run}></wr-warm-up-ledger>`;
  }

  #foot(): unknown {
    const { warmUp, answer, over, whole, step, working } = this.run;
    if (warmUp.stage !== 'answer' && !over) return nothing;
    const last = step === 'courtesy';
    return html`<div class="row foot">
      ${
        over || !whole
          ? nothing
          : html`<wr-button ?disabled=${answer === null} @click=${() => this.run.goOn()}
              >${last ? words.finish : words.goOn}</wr-button
            >`
      }
      <wr-button look="main" ?disabled=${answer === null && !over} @click=${() => this.room.next()}
        >${words.another}</wr-button
      >
      <wr-button look="quiet" @click=${this.#toSheet}>${words.toSheet}</wr-button>
      ${
        this.run.item.code === undefined
          ? nothing
          : html`<wr-button look="quiet" @click=${this.#copyCode}>${words.copyCode}</wr-button>`
      }
      <span role="status" class="soft"
        >${this.told}${over || working === null || answer !== null ? '' : words.working}</span
      >
    </div>`;
  }

  #markedAt(stage: Stage | 'over'): readonly string[] {
    if (stage !== 'choose' && stage !== 'keep' && stage !== 'say') return [];
    const text = stage === 'keep' ? this.run.warmUp.attempt.keeps : this.run.warmUp.attempt.give;
    let left = Tiles.of(kindsOf(text));
    return this.run.layout.rack
      .filter(({ kind }) => {
        const here = left.count(kind) > 0;
        left = here ? left.without(kind) : left;
        return here;
      })
      .map(({ id }) => id);
  }

  #tilesMarked(): Tiles {
    return Tiles.of(this.run.layout.rack.filter(({ id }) => this.marked.includes(id)).map(({ kind }) => kind));
  }

  #selected({ detail }: CustomEvent<RackIds>): void {
    const { stage } = this.run.warmUp;
    const jokers = this.run.layout.rack.filter(({ kind }) => kind === JOKER).map(({ id }) => id);
    if (stage === 'choose' && detail.ids.some((id) => jokers.includes(id))) {
      announce(warmUpWords.jokerStays);
      this.told = warmUpWords.jokerStays;
      this.marked = detail.ids.filter((id) => !jokers.includes(id));
      return;
    }
    this.marked = detail.ids;
  }

  #blindChosen(blind: number): void {
    this.blind = blind;
    this.marked = this.marked.slice(0, 3 - blind);
  }

  #toggle(aim: string): void {
    this.aims = this.aims.includes(aim) ? this.aims.filter((each) => each !== aim) : [...this.aims, aim];
  }

  #handChosen({ target }: Event): void {
    if (!(target instanceof HTMLSelectElement)) return;
    const rest = this.aims.filter((aim) => !aim.startsWith('line:'));
    this.aims = target.value === '' ? rest : [...rest, target.value];
  }

  #toSheet(): void {
    this.room.sheets.add([this.run.item]);
    this.told = words.onSheet;
  }

  async #copyCode(): Promise<void> {
    await navigator.clipboard.writeText(this.run.item.code ?? '');
    this.told = words.copied;
  }
}

customElements.define('wr-warm-up-run', WrWarmUpRun);

declare global {
  interface HTMLElementTagNameMap {
    'wr-warm-up-run': WrWarmUpRun;
  }
}

import { html, LitElement, nothing, type PropertyValues } from 'lit';
import type { Stage } from '../../../core/warmup/warm-up.ts';
import { announce } from '../../parts/announcer.ts';
import type { RackIds } from '../../parts/rack/wr-rack.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { warmUpWords } from '../../words/warmup.ts';
import { markedAt, tilesOfIds, withoutJokers } from './marked-tiles.ts';
import type { PracticeRoom } from './practice-room.ts';
import { runHead, stageList } from './run-head.ts';
import { runRack } from './run-rack.ts';
import { runStyles } from './run-styles.ts';
import { stageAsk } from './stage-ask.ts';
import { TickController } from './tick-controller.ts';
import type { WarmUpRun } from './warm-up-run.ts';
import { warmUpStyles } from './warm-up-styles.ts';
import './wr-run-foot.ts';
import './wr-warm-up-answer.ts';
import './wr-warm-up-ledger.ts';

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
  /** Why a click did nothing, in words. */
  declare told: string;

  static override styles = [sharedStyles, warmUpStyles, runStyles];

  #stage: Stage | 'over' = 'arrange';
  #shown: Stage | 'over' | null = null;

  constructor() {
    super();
    this.aims = [];
    this.marked = [];
    this.blind = 0;
    this.why = '';
    this.told = '';
    new StoreController(this, () => [this.room]);
    new TickController(this, () => this.room.wishes.clock);
  }

  /** A new problem and a new stage begin with what was said of them before. */
  protected override willUpdate(changed: PropertyValues<this>): void {
    const { over, warmUp, layout } = this.run;
    const stage = over ? 'over' : warmUp.stage;
    if (!changed.has('run') && stage === this.#stage) return;
    if (changed.has('run')) this.aims = warmUp.attempt.aims;
    if (changed.has('run') || stage === 'choose') this.why = warmUp.attempt.why;
    this.#stage = stage;
    this.marked = stage === 'over' ? [] : markedAt(stage, warmUp.attempt, layout.rack);
    this.blind = stage === 'over' ? 0 : warmUp.attempt.blind;
    this.told = '';
  }

  protected override updated(): void {
    if (this.#stage === this.#shown) return;
    this.#shown = this.#stage;
    this.renderRoot.querySelector<HTMLElement>('.asked')?.focus({ preventScroll: false });
  }

  protected override render(): unknown {
    const { run, room } = this;
    // Not before the answer above it: the buttons would run away from whoever wants to press them.
    const isTold = run.working === null && (run.over || run.warmUp.stage === 'answer');
    return html`<div class="run">
      ${runHead(run, room)} ${run.over ? nothing : stageList(run)} ${this.#rack()}
      <section class="panel ask" aria-busy=${run.working !== null}>
        ${run.over ? html`<wr-warm-up-ledger .room=${room} .run=${run}></wr-warm-up-ledger>` : this.#asked()}
      </section>
      ${isTold ? html`<wr-run-foot .room=${room} .run=${run}></wr-run-foot>` : nothing}
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
    if (this.run.warmUp.stage === 'answer') {
      return html`<wr-warm-up-answer .room=${this.room} .run=${this.run}></wr-warm-up-answer>`;
    }
    return stageAsk(this.run.warmUp.stage, {
      room: this.room,
      run: this.run,
      aims: this.aims,
      marked: this.marked.length,
      blind: this.blind,
      why: this.why,
      told: this.told,
      aimed: (aims) => (this.aims = aims),
      typed: (why) => (this.why = why),
      blindChosen: (blind) => this.#blindChosen(blind),
      kept: () => this.run.kept(this.#tilesMarked),
      given: () => this.run.chosen(this.#tilesMarked, this.blind),
    });
  }

  get #tilesMarked(): ReturnType<typeof tilesOfIds> {
    return tilesOfIds(this.marked, this.run.layout.rack);
  }

  #selected({ detail }: CustomEvent<RackIds>): void {
    const passable = withoutJokers(detail.ids, this.run.layout.rack);
    const joker = this.run.warmUp.stage === 'choose' && passable.length < detail.ids.length;
    this.told = joker ? warmUpWords.jokerStays : '';
    if (joker) announce(warmUpWords.jokerStays);
    this.marked = joker ? passable : detail.ids;
  }

  #blindChosen(blind: number): void {
    this.blind = blind;
    this.marked = this.marked.slice(0, 3 - blind);
  }
}

customElements.define('wr-warm-up-run', WrWarmUpRun);

declare global {
  interface HTMLElementTagNameMap {
    'wr-warm-up-run': WrWarmUpRun;
  }
}

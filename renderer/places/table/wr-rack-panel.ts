import { css, html, nothing } from 'lit';
import { mayBePassed } from '../../../core/exchange/steps.ts';
import { exposedGroups, groupKinds } from '../../../core/game/hand-view.ts';
import { codeOf } from '../../../core/tiles/kinds.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import type { VerdictDocument } from '../../../core/engine/documents.ts';
import { announce } from '../../parts/announcer.ts';
import { data, element, state } from '../../parts/element.ts';
import type { RackTile } from '../../parts/rack/rack-tile.ts';
import '../../parts/rack/wr-rack.ts';
import type { RackIds, RackReordered } from '../../parts/rack/wr-rack.ts';
import { tileRow } from '../../parts/tile/tile-row.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-toolbar.ts';
import { arranged, isArranged, relaid, removeTile, toTray, takeBack } from '../../session/layout.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { playWords } from '../../words/play.ts';
import { tableWords } from '../../words/table.ts';
import { isDiscardDue } from './play/moves.ts';
import { panelStyles } from './panel-styles.ts';
import { isAdviceWelcome } from './aids.ts';
import { freshTiles, marksOf } from './rack-marks.ts';

const words = tableWords.rack;

type Marks = ReturnType<typeof marksOf>;

/** The rack's shelf along the bottom. */
const rackStyles = css`
  .rack {
    container-type: inline-size;
    padding: var(--space-1) 0 0;
    margin-inline: calc(-1 * var(--table-side));
    background: var(--well);
    border-top: 1px solid var(--hairline);
  }

  /* All 14 in one row where there is room for it, else in two. */
  wr-rack {
    --ledge: 20px;
    --tile-width: clamp(48px, (100cqi - 32px) / 14 - 8px, var(--tile-usual));
    --tile-gap: 8px;
  }

  @container (max-width: 899px) {
    wr-rack {
      --tile-width: clamp(47.7px, 100cqi / 7 - 8px, var(--tile-usual));
      --rack-side: 4px;
    }
  }

  .laid {
    --tile-width: clamp(33px, 1.83rem, 48px);
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-2) var(--space-4);
    padding: 0 var(--table-side) var(--space-2);
  }

  .laid .tiles {
    display: inline-flex;
    gap: 3px;
  }

  /* Own open groups lie beside the rack, which is the shorter for them. */
  @container (min-width: 900px) {
    .shelf {
      display: flex;
      align-items: center;
    }

    .shelf wr-rack {
      flex: 1 1 auto;
      min-width: 0;
    }

    .shelf .laid {
      flex: none;
      padding-block: 0;
    }
  }

  .bar {
    --room: 0.5em;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-1) var(--space-4);
    min-height: var(--target);
    padding-inline: var(--table-side);
  }

  @media (max-height: 760px) {
    .bar {
      --target: 44px;
      min-height: 44px;
    }
  }

  .verdict {
    flex: 1 1 10rem;
    line-height: 1.25;
    max-width: none;
    color: var(--ink-soft);
    font-size: var(--text-small);
  }

  /* Without room beside the buttons the words have a line of their own, while there is something to say. */
  @container (max-width: 899px) {
    .verdict {
      order: 1;
      flex-basis: 100%;
    }

    .idle {
      display: none;
    }

    .bar {
      gap: 0;
      --room: 0.3em;
      --space-2: 2px;
      font-size: min(1rem, 4.3cqi);
    }
  }

  @container (max-width: 420px) {
    .bar {
      --room: 0.2em;
      --target: 44px;
    }
  }

  /* Large type in a low window. */
  @media (max-height: 760px) {
    @container (max-width: 44rem) {
      .idle {
        display: none;
      }
    }
  }

  /* Nothing is dealt yet: all room for what is entered. */
  .none wr-rack {
    display: none;
  }
`;

const Base = element({
  app: data<AppContext>(),
  /** Where tiles may be dropped to be given. */
  sendTo: data<Element | null>(null),
  selected: state<readonly string[]>(() => []),
});

/** The rack along the bottom, its few actions, and what the chosen tile is worth. */
export class WrRackPanel extends Base {
  static override styles = [sharedStyles, panelStyles, rackStyles];

  constructor() {
    super();
    new StoreController(
      this,
      () => [this.app.session, this.app.analysis, this.app.lookAhead, this.app.preferences],
      () => {
        const { session, analysis, preferences, lookAhead } = this.app;
        return [
          session.state,
          session.layout,
          session.giveDue !== null,
          isAdviceWelcome(this.app),
          analysis.tiles.value,
          analysis.reading.value,
          analysis.advice,
          lookAhead.ranked,
          preferences.values,
        ];
      },
    );
  }

  /** Puts the focus on the rack's tile that was handled last. */
  async focusFirst(): Promise<void> {
    const rack = this.renderRoot.querySelector('wr-rack');
    await rack?.updateComplete;
    rack?.focus();
  }

  protected override render(): unknown {
    const { state, layout } = this.app.session;
    const marks = marksOf(this.app);
    const isUndealt = state.exchange === null && layout.rack.length === 0;
    return html`<section class="rack ${isUndealt ? 'none' : ''}" aria-label=${words.label}>
      <div class="bar">
        <wr-toolbar label=${words.actions}>${this.#actions()}</wr-toolbar>
        <p class="verdict ${this.selected.length === 0 ? 'idle' : ''}" aria-live="polite">${this.#words(marks)}</p>
        <slot name="game"></slot>
      </div>
      <div class="shelf">
        <wr-rack
          label=${words.label}
          .tiles=${this.#tiles(marks)}
          .tiers=${this.app.preferences.values.rackTiers}
          .selected=${this.selected}
          .sendTo=${this.sendTo}
          @rack-reordered=${this.#reordered}
          @rack-selected=${this.#chosen}
          @rack-sent=${this.#sent}
          @rack-recalled=${this.#recalled}
        ></wr-rack>
        ${this.#laidOpen()}
      </div>
    </section>`;
  }

  /** The tools that can act now; the others are not shown. */
  #actions(): unknown {
    const { state, layout } = this.app.session;
    const some = this.selected.length > 0;
    const send = (label: string): unknown =>
      html`<wr-button look="quiet" @click=${() => this.#send(this.selected)}>${label}</wr-button>`;
    return html`${isArranged(layout) ? nothing : html`<wr-button look="quiet" @click=${this.#arrange}>${words.arrange}</wr-button>`}
    ${
      this.selected.length === 1
        ? html`<wr-button look="quiet" label=${words.gapLabel} @click=${this.#toggleGap}>${words.gap}</wr-button>`
        : nothing
    }
    ${this.#isGiving && this.#sendable().length > 0 ? send(words.toTray) : nothing}
    ${isDiscardDue(this.app.session) && some ? send(playWords.discard) : nothing}
    ${
      state.seat === null && some
        ? html`<wr-button look="quiet" @click=${this.#remove}>${tableWords.deal.remove}</wr-button>`
        : nothing
    }`;
  }

  /** Whether a pass is being put together. */
  get #isGiving(): boolean {
    return this.app.session.giveDue !== null;
  }

  /** The groups that the player has laid open, beside the rack. */
  #laidOpen(): unknown {
    const { state } = this.app.session;
    const groups = exposedGroups(state, state.seat);
    if (groups.length === 0) return nothing;
    return html`<div class="laid" role="group" aria-label=${words.laidOpen}>
      ${groups.map((group) => tileRow(groupKinds(group)))}
    </div>`;
  }

  /** The rack's tiles, each marked with what the first choice of the list does with it, and those that just came. */
  #tiles(marks: Marks): RackTile[] {
    const { rack } = this.app.session.layout;
    const fresh = freshTiles(this.app.session);
    return rack.map(({ id, kind, space }) => {
      const mark = marks?.get(id);
      return { id, kind, space, fresh: fresh.has(id), ...(mark === undefined ? {} : { mark }) };
    });
  }

  /** What a tile is to the reading, where advice is welcome. Copies of a kind are distinguished by their order in the rack. */
  #verdictOn(id: string): VerdictDocument | undefined {
    if (!isAdviceWelcome(this.app)) return undefined;
    const { rack } = this.app.session.layout;
    const tile = rack.find((other) => other.id === id);
    const copies = rack.filter((other) => other.kind === tile?.kind);
    const copy = copies.findIndex((other) => other.id === id) + 1;
    const { value } = this.app.analysis.tiles;
    return value?.verdicts.find((verdict) => verdict.kind === tile?.kind && verdict.copy === copy);
  }

  #words(marks: Marks): string {
    const { session, analysis } = this.app;
    if (session.layout.rack.length === 0) return '';
    const chosen = this.selected.at(-1);
    const verdict = chosen === undefined ? undefined : this.#verdictOn(chosen);
    if (!isAdviceWelcome(this.app)) return words.help;
    if (verdict === undefined) return marks === null || analysis.reading.value === null ? words.help : words.ask;
    const mark = marks?.get(chosen ?? '');
    if (mark === 'spare' && verdict.verdict !== 'spare') return words.givenThough;
    return mark === 'kept' && verdict.verdict === 'spare' ? words.keptThough : verdict.sentence;
  }

  /** The chosen tiles that may be given. */
  #sendable(ids: readonly string[] = this.selected): string[] {
    const { rack } = this.app.session.layout;
    return ids.filter((id) => rack.some((tile) => tile.id === id && mayBePassed(tile.kind)));
  }

  #arrange(): void {
    this.app.session.lay(arranged(this.app.session.layout));
    announce(words.arranged);
    // The button goes with what it was for.
    void this.focusFirst();
  }

  #toggleGap(): void {
    this.renderRoot.querySelector('wr-rack')?.toggleGap();
  }

  #reordered({ detail }: CustomEvent<RackReordered>): void {
    this.app.session.lay(relaid(this.app.session.layout, detail.placed));
  }

  #chosen({ detail }: CustomEvent<RackIds>): void {
    this.selected = detail.ids;
  }

  #sent({ detail }: CustomEvent<RackIds>): void {
    this.#send(detail.ids);
  }

  /** Takes the tile back that went into the tray last. */
  #recalled(): void {
    const { session } = this.app;
    const last = session.layout.tray.at(-1);
    if (last !== undefined) session.lay(takeBack(session.layout, [last.id]));
  }

  #send(ids: readonly string[]): void {
    const { session } = this.app;
    if (isDiscardDue(session)) return this.#discard(ids.at(-1));
    if (session.giveDue === null) return;
    const sendable = this.#sendable(ids);
    if (sendable.length < ids.length) announce(tableWords.exchange.joker);
    session.lay(toTray(session.layout, sendable));
    this.selected = [];
  }

  #discard(id: string | undefined): void {
    const { session } = this.app;
    const kind = session.layout.rack.find((tile) => tile.id === id)?.kind;
    if (kind === undefined || session.state.seat === null) return;
    const layout = removeTile(session.layout, id ?? '');
    const done = session.apply({ type: 'discarded', seat: session.state.seat, tile: codeOf(kind) }, layout);
    announce(done.ok ? playWords.discarded(playWords.chair.you, nameOf(kind)) : done.problem.message);
    this.selected = [];
  }

  #remove(): void {
    const { session } = this.app;
    session.lay(this.selected.reduce(removeTile, session.layout));
    this.selected = [];
  }
}

customElements.define('wr-rack-panel', WrRackPanel);

declare global {
  interface HTMLElementTagNameMap {
    'wr-rack-panel': WrRackPanel;
  }
}

import { html, LitElement, nothing } from 'lit';
import { legalEvents } from '../../../core/game/legal.ts';
import { codeOf, JOKER } from '../../../core/tiles/kinds.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import { announce } from '../../parts/announcer.ts';
import type { RackTile } from '../../parts/rack/rack-tile.ts';
import '../../parts/rack/wr-rack.ts';
import type { RackIds, RackReordered } from '../../parts/rack/wr-rack.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-toolbar.ts';
import { arranged, isArranged, relaid, removeTile, setAside, takeBack } from '../../session/layout.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import type { TileMark } from '../../parts/tile/wr-tile.ts';
import type { VerdictView } from '../../worker/calls.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { playWords } from '../../words/play.ts';
import { tableWords } from '../../words/table.ts';
import { isDiscardDue } from './play/discard-due.ts';
import { panelStyles } from './panel-styles.ts';
import { rackStyles } from './rack-styles.ts';

const words = tableWords.rack;

const MARKS: Readonly<Record<VerdictView['verdict'], TileMark>> = { keep: 'kept', spare: 'spare', strain: 'strained' };

/** The rack along the bottom, its few actions, and what the chosen tile is worth. */
export class WrRackPanel extends LitElement {
  static override properties = {
    app: { attribute: false },
    sendTo: { attribute: false },
    selected: { state: true },
  };

  declare app: AppContext;
  /** Where tiles may be dropped to be given. */
  declare sendTo: Element | null;
  declare selected: readonly string[];

  static override styles = [sharedStyles, panelStyles, rackStyles];

  constructor() {
    super();
    this.sendTo = null;
    this.selected = [];
    new StoreController(
      this,
      () => [this.app.session, this.app.analysis, this.app.preferences],
      () => {
        const { session, analysis, preferences } = this.app;
        return [session.state, session.layout, analysis.tiles.value, analysis.reading.value, preferences.values];
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
    return html`<section class="rack" aria-label=${words.label}>
      <div class="bar">
        <wr-toolbar label=${words.actions}>${this.#actions()}</wr-toolbar>
        <p class="verdict" aria-live="polite">${this.#words()}</p>
        <slot name="game"></slot>
      </div>
      <wr-rack
        label=${words.label}
        .tiles=${this.#tiles()}
        .tiers=${this.app.preferences.values.rackTiers}
        .selected=${this.selected}
        .sendTo=${this.sendTo}
        @rack-reordered=${this.#reordered}
        @rack-selected=${this.#chosen}
        @rack-sent=${this.#sent}
        @rack-recalled=${this.#recalled}
      ></wr-rack>
    </section>`;
  }

  #actions(): unknown {
    const { state, layout } = this.app.session;
    const dealing = state.seat === null;
    const giving = legalEvents(state).give !== null;
    return html`<wr-button look="quiet" ?disabled=${isArranged(layout)} @click=${this.#arrange}
        >${words.arrange}</wr-button
      >
      <wr-button look="quiet" label=${words.gapLabel} ?disabled=${this.selected.length !== 1} @click=${this.#toggleGap}
        >${words.gap}</wr-button
      >
      ${
        giving
          ? html`<wr-button look="quiet" ?disabled=${!this.#sendable().length} @click=${() => this.#send(this.selected)}
              >${words.toTray}</wr-button
            >`
          : nothing
      }
      ${
        isDiscardDue(state)
          ? html`<wr-button
              look="quiet"
              ?disabled=${this.selected.length === 0}
              @click=${() => this.#send(this.selected)}
              >${playWords.discard}</wr-button
            >`
          : nothing
      }
      ${
        dealing
          ? html`<wr-button look="quiet" ?disabled=${this.selected.length === 0} @click=${this.#remove}
              >${tableWords.deal.remove}</wr-button
            >`
          : nothing
      }`;
  }

  /** The rack's tiles, each marked with what it is to the reading. */
  #tiles(): RackTile[] {
    const { rack } = this.app.session.layout;
    return rack.map(({ id, kind, space }) => {
      const verdict = this.#verdictOn(id);
      return { id, kind, space, ...(verdict === undefined ? {} : { mark: MARKS[verdict.verdict] }) };
    });
  }

  /** Copies of a kind are told apart by their order in the rack. */
  #verdictOn(id: string): VerdictView | undefined {
    const { rack } = this.app.session.layout;
    const tile = rack.find((other) => other.id === id);
    const copies = rack.filter((other) => other.kind === tile?.kind);
    const copy = copies.findIndex((other) => other.id === id) + 1;
    const { value } = this.app.analysis.tiles;
    return value?.verdicts.find((verdict) => verdict.kind === tile?.kind && verdict.copy === copy);
  }

  #words(): string {
    const { session, analysis } = this.app;
    if (session.layout.rack.length === 0) return '';
    const chosen = this.selected.at(-1);
    const verdict = chosen === undefined ? undefined : this.#verdictOn(chosen);
    if (verdict !== undefined) return verdict.sentence;
    return analysis.reading.value === null ? words.help : words.ask;
  }

  /** The chosen tiles that may be given. */
  #sendable(ids: readonly string[] = this.selected): string[] {
    const { rack } = this.app.session.layout;
    return ids.filter((id) => rack.some((tile) => tile.id === id && tile.kind !== JOKER));
  }

  #arrange(): void {
    this.app.session.lay(arranged(this.app.session.layout));
    announce(words.arranged);
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

  /** Takes the tile back that was set aside last. */
  #recalled(): void {
    const { session } = this.app;
    const last = session.layout.aside.at(-1);
    if (last !== undefined) session.lay(takeBack(session.layout, [last.id]));
  }

  #send(ids: readonly string[]): void {
    const { session } = this.app;
    if (isDiscardDue(session.state)) return this.#discard(ids.at(-1));
    if (legalEvents(session.state).give === null) return;
    const sendable = this.#sendable(ids);
    if (sendable.length < ids.length) announce(tableWords.exchange.joker);
    session.lay(setAside(session.layout, sendable));
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

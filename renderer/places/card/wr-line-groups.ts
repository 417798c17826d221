import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { groupWords, movementWords, takesJokers } from '../../../core/card/words.ts';
import type { WayGroup } from '../../../core/card/way.ts';
import { announce } from '../../parts/announcer.ts';
import { emit } from '../../parts/emit.ts';
import { rove } from '../../parts/rove.ts';
import '../../parts/tile/wr-tile.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { lineGroupsStyles } from './line-groups-styles.ts';
import { type LineReading, tilesOfGroups } from './line-reading.ts';

const words = cardWords.line;

/** What `group-chosen`, `group-removed` carry; a place behind the last group stands for a new one. */
export interface GroupPlace {
  readonly at: number;
}
/** What `group-moved` carries. */
export interface GroupMoved {
  readonly from: number;
  readonly to: number;
}

/**
 * The groups of a line, drawn with the tiles of one of its ways. A listbox: Left, Right, Home and
 * End choose a group, Delete takes it away, Alt with Left or Right moves it. `fixed` only shows it.
 */
export class WrLineGroups extends LitElement {
  static override properties = {
    reading: { attribute: false },
    way: { type: Number },
    chosen: { type: Number },
    fixed: { type: Boolean },
    covered: { attribute: false },
  };

  declare reading: LineReading;
  /** Which way is drawn. */
  declare way: number;
  declare chosen: number;
  declare fixed: boolean;
  /** Places of groups that are shown face down. */
  declare covered: readonly number[];

  static override styles = [sharedStyles, lineGroupsStyles];

  #wantsFocus = false;

  constructor() {
    super();
    this.way = 0;
    this.chosen = -1;
    this.fixed = false;
    this.covered = [];
  }

  /** Puts the focus on the chosen group. */
  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('[tabindex="0"]')?.focus();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    this.#wantsFocus =
      this.shadowRoot?.activeElement !== null && (changed.has('chosen') || changed.has('reading')) && this.hasUpdated;
  }

  protected override updated(): void {
    if (!this.#wantsFocus) return;
    this.#wantsFocus = false;
    this.focus();
  }

  protected override render(): unknown {
    const drawn = tilesOfGroups(this.reading, this.reading.ways[this.way]);
    if (this.fixed) {
      return html`<div class="groups" role="img" aria-label=${this.#allWords()}>
        ${drawn.map((tiles, at) => html`<div class="group">${this.#inside(tiles, at)}</div>`)}
      </div>`;
    }
    return html`<div
      class="groups"
      role="listbox"
      aria-label=${words.groups}
      aria-orientation="horizontal"
      aria-keyshortcuts="Delete Alt+ArrowLeft Alt+ArrowRight"
      @keydown=${this.#onKey}
    >
      ${drawn.map((tiles, at) => this.#option(at, this.#inside(tiles, at), this.#nameOf(at)))}
      ${this.#option(drawn.length, html`<span aria-hidden="true">+</span>`, words.newGroupHere, 'plus')}
    </div>`;
  }

  #option(at: number, inside: unknown, label: string, look = ''): unknown {
    const chosen = at === this.chosen;
    return html`<div
      class="group ${look}"
      role="option"
      aria-selected=${String(chosen)}
      aria-label=${label}
      tabindex=${chosen || (this.chosen < 0 && at === 0) ? '0' : '-1'}
      @click=${() => this.#choose(at)}
    >
      ${inside}
    </div>`;
  }

  #inside(tiles: readonly WayGroup[] | null, at: number): unknown {
    const scanned = this.reading.groups[at];
    if (scanned === undefined) return nothing;
    if (tiles === null || !scanned.group.ok) {
      return html`<span class="unread" aria-hidden="true">?</span> <span class="caption">${scanned.text}</span>`;
    }
    const hidden = this.covered.includes(at);
    const joker = takesJokers(scanned.group.value) && !this.fixed;
    return html`<span class="tiles"
        >${tiles.flatMap(({ kind, size }) =>
          Array.from(
            { length: size },
            () => html`<wr-tile .kind=${hidden ? null : kind} aria-hidden="true"></wr-tile>`,
          ),
        )}</span
      >
      <span class="caption">${hidden ? '\u00a0' : scanned.text}</span>
      ${joker ? html`<span class="joker">${words.takesJokers}</span>` : nothing}`;
  }

  #nameOf(at: number): string {
    const scanned = this.reading.groups[at];
    if (scanned === undefined) return words.newGroupHere;
    if (!scanned.group.ok) return `${scanned.text}, ${words.unreadable}`;
    const group = scanned.group.value;
    const joker = takesJokers(group) ? `, ${words.takesJokers}` : '';
    return `${groupWords(group)}${movementWords(group)}${joker}`;
  }

  #allWords(): string {
    const names = this.reading.groups.map((_, at) =>
      this.covered.includes(at) ? cardWords.study.covered : this.#nameOf(at),
    );
    return names.join('; ');
  }

  #choose(at: number): void {
    emit<GroupPlace>(this, 'group-chosen', { at });
  }

  #onKey(event: KeyboardEvent): void {
    const count = this.reading.groups.length;
    const at = Math.max(0, this.chosen);
    const next = rove(event.key, at, event.altKey ? count : count + 1);
    if (next !== null && event.altKey) this.#move(at, next);
    else if (next !== null) this.#choose(next);
    else if (event.key === 'Delete' || event.key === 'Backspace') this.#remove(at);
    else if (event.key === 'Enter' || event.key === ' ') this.#choose(at);
    else return;
    event.preventDefault();
  }

  #move(from: number, to: number): void {
    if (from === to || from >= this.reading.groups.length) return;
    announce(words.moved(this.#nameOf(from), to + 1, this.reading.groups.length));
    emit<GroupMoved>(this, 'group-moved', { from, to });
  }

  #remove(at: number): void {
    if (at < this.reading.groups.length) emit<GroupPlace>(this, 'group-removed', { at });
  }
}

customElements.define('wr-line-groups', WrLineGroups);

declare global {
  interface HTMLElementTagNameMap {
    'wr-line-groups': WrLineGroups;
  }
}

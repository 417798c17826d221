import { css, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { FormReading } from '../../../core/card/form.ts';
import { tilesOfGroups } from '../../../core/card/line.ts';
import { groupWords, movementWords, takesJokers } from '../../../core/card/words.ts';
import { announce } from '../../parts/announcer.ts';
import { data, element, flag, numeric } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import { rove } from '../../parts/rove.ts';
import { tileStyles } from '../../parts/tile/drawing.ts';
import { openTileStyles } from '../../parts/tile/open-tile.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-toolbar.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { facesDown, printedTiles, wayTiles } from './group-tiles.ts';

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

/** Stands for no way: the form is drawn as printed. */
export const AS_PRINTED = -1;

const Base = element({
  reading: data<FormReading>(),
  /** Which way is drawn with its tiles; below nought the form as printed, with marks for what is open. */
  way: numeric(AS_PRINTED),
  chosen: numeric(-1),
  fixed: flag(),
  /** Places of groups that are shown face down. */
  covered: data<readonly number[]>(() => []),
});

/**
 * The groups of a form of a line, drawn with the tiles of one of its ways. A listbox: Left, Right, Home and
 * End choose a group, Delete removes it, Alt with Left or Right moves it. `fixed` only shows it.
 */
export class WrLineGroups extends Base {
  static override styles = [
    sharedStyles,
    tileStyles,
    openTileStyles,
    css`
      :host {
        display: block;
        --tile-width: clamp(34px, 1.9rem, 48px);
      }

      .groups {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2);
        align-items: stretch;
      }

      .group {
        display: flex;
        flex-direction: column;
        gap: 2px;
        min-width: 48px;
        max-width: 100%;
        min-height: 64px;
        padding: 6px;
        border: var(--stroke) solid transparent;
        border-radius: var(--round);
      }

      [role='option'] {
        border-color: var(--hairline);
        cursor: pointer;
      }

      [role='option']:hover {
        border-color: var(--accent);
      }

      [aria-selected='true'] {
        border-color: var(--accent);
        background: var(--accent-wash);
        box-shadow: inset 0 -4px 0 var(--accent);
      }

      .tiles {
        display: flex;
        flex-wrap: wrap;
        gap: 2px;
      }

      .caption {
        overflow-wrap: anywhere;
        font-size: var(--text-small);
        font-family: var(--font-code);
      }

      .unread {
        color: var(--bad);
        font-weight: 700;
      }

      @media (forced-colors: active) {
        [aria-selected='true'] {
          border-width: 4px;
        }
      }

      .plus {
        place-content: center;
        align-items: center;
        border-style: dashed;
        border-color: var(--edge);
        font-weight: 600;
      }
    `,
  ];

  #wantsFocus = false;

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
    const drawn = this.#drawn();
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

  /** The pictures of each group; null for a group that can't be read. */
  #drawn(): readonly (readonly unknown[] | null)[] {
    if (this.way < 0) return this.reading.groups.map(({ group }) => (group.ok ? printedTiles(group.value) : null));
    return tilesOfGroups(this.reading, this.reading.ways[this.way]).map((tiles) => tiles?.flatMap(wayTiles) ?? null);
  }

  #option(at: number, inside: unknown, label: string, look = ''): unknown {
    const chosen = at === this.chosen;
    // oxlint-disable-next-line lit-a11y/click-events-have-key-events -- the list hears the keys
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

  #inside(tiles: readonly unknown[] | null, at: number): unknown {
    const scanned = this.reading.groups[at];
    if (scanned === undefined) return nothing;
    if (tiles === null || !scanned.group.ok) {
      return html`<span class="unread" aria-hidden="true">?</span> <span class="caption">${scanned.text}</span>`;
    }
    const hidden = this.covered.includes(at);
    const shown = hidden ? facesDown(tiles.length) : tiles;
    return html`<span class="tiles">${shown}</span> <span class="caption">${hidden ? '\u00a0' : scanned.text}</span>`;
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

/** Goes from the line as printed through its ways; `go` gets `AS_PRINTED` or the place of a way. */
export function leafing(way: number, ways: number, go: (way: number) => void): TemplateResult | typeof nothing {
  if (ways === 0) return nothing;
  return html`<div class="row leaf">
    <span>${way < 0 ? words.asPrinted : words.exampleOf(way + 1, ways)}</span>
    <wr-toolbar label=${words.examplesLabel}>
      <wr-button look="quiet" ?disabled=${way < 0} @click=${() => go(way - 1)}>${words.earlier}</wr-button>
      <wr-button look="quiet" ?disabled=${way >= ways - 1} @click=${() => go(way + 1)}>${words.later}</wr-button>
    </wr-toolbar>
  </div>`;
}

customElements.define('wr-line-groups', WrLineGroups);

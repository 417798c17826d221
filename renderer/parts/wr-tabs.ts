import { css, html } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';
import { data, element, text } from './element.ts';
import { emit } from './emit.ts';
import { rove } from './rove.ts';
import { tabLook } from './tab-look.ts';

export interface Tab {
  readonly id: string;
  readonly label: string;
}

/** What `tab-chosen` carries. */
export interface TabChosen {
  readonly id: string;
}

const Base = element({
  tabs: data<readonly Tab[]>(() => []),
  current: text(),
  label: text(),
});

/**
 * Tabs over panels: `<wr-tabs .tabs=${[{id: 'a', label: 'One'}]} current="a"><div slot="a">…`.
 * Left, Right, Home and End move, round the ends, and show at once (APG tabs, automatic activation).
 */
export class WrTabs extends Base {
  static override styles = [
    sharedStyles,
    tabLook,
    css`
      :host {
        display: block;
      }

      [role='tabpanel'] {
        padding-top: var(--space-4);
      }
    `,
  ];

  /** Puts the focus on the tab that is open. */
  override focus(): void {
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('[aria-selected=true]')?.focus());
  }

  protected override render(): unknown {
    return html`<div class="tabs" role="tablist" aria-label=${this.label} @keydown=${this.#onKey}>
        ${this.tabs.map((tab) => this.#tab(tab))}
      </div>
      ${this.tabs.map(
        ({ id }) =>
          html`<div role="tabpanel" id="panel-${id}" aria-labelledby="tab-${id}" ?hidden=${id !== this.current}>
            <slot name=${id}></slot>
          </div>`,
      )}`;
  }

  #tab({ id, label }: Tab): unknown {
    const current = id === this.current;
    return html`<button
      class=${current ? 'tab current' : 'tab'}
      type="button"
      role="tab"
      id="tab-${id}"
      aria-selected=${String(current)}
      aria-controls="panel-${id}"
      tabindex=${current ? '0' : '-1'}
      @click=${() => this.#choose(id)}
    >
      ${label}
    </button>`;
  }

  #onKey(event: KeyboardEvent): void {
    const at = this.tabs.findIndex(({ id }) => id === this.current);
    const next = rove(event.key, at, this.tabs.length, 'round');
    const tab = next === null ? undefined : this.tabs[next];
    if (!tab) return;
    event.preventDefault();
    this.#choose(tab.id);
    this.renderRoot.querySelector<HTMLElement>(`#tab-${CSS.escape(tab.id)}`)?.focus();
  }

  #choose(id: string): void {
    if (id === this.current) return;
    this.current = id;
    emit<TabChosen>(this, 'tab-chosen', { id });
  }
}

customElements.define('wr-tabs', WrTabs);

declare global {
  interface HTMLElementTagNameMap {
    'wr-tabs': WrTabs;
  }
}

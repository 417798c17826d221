import { css, html, LitElement } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';
import { emit } from './emit.ts';
import { tabLook } from './tab-look.ts';

export interface Tab {
  readonly id: string;
  readonly label: string;
}

/** What `tab-chosen` carries. */
export interface TabChosen {
  readonly id: string;
}

/**
 * Tabs over panels: `<wr-tabs .tabs=${[{id: 'a', label: 'One'}]} current="a"><div slot="a">…`.
 * Left, Right, Home and End move and show at once (APG tabs, automatic activation).
 */
export class WrTabs extends LitElement {
  static override properties = {
    tabs: { attribute: false },
    current: {},
    label: {},
  };

  declare tabs: readonly Tab[];
  declare current: string;
  declare label: string;

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

  constructor() {
    super();
    this.tabs = [];
    this.current = '';
    this.label = '';
  }

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
    const last = this.tabs.length - 1;
    const at = this.tabs.findIndex(({ id }) => id === this.current);
    const next = { ArrowLeft: at === 0 ? last : at - 1, ArrowRight: at === last ? 0 : at + 1, Home: 0, End: last }[
      event.key
    ];
    const tab = next === undefined ? undefined : this.tabs[next];
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

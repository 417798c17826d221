import { css, html, nothing } from 'lit';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-notice.ts';
import '../../parts/wr-tabs.ts';
import type { TabChosen } from '../../parts/wr-tabs.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { shellWords } from '../../words/shell.ts';
import { warmUpWords as words } from '../../words/warmup.ts';
import { itemOfAddress } from './item-route.ts';
import { type PracticeRoom, roomOf } from './practice-room.ts';
import './wr-guess.ts';
import './wr-practice-progress.ts';
import './wr-sheets.ts';
import './wr-warm-up-run.ts';
import './wr-warm-up-start.ts';

const VIEWS = ['practise', 'guess', 'sheets', 'progress'] as const;
type View = (typeof VIEWS)[number];

const Base = element({
  app: data<AppContext>(),
  view: state<View>('practise'),
});

/** The Warm-up: problems to practise, guesses, sheets for a class, and how it goes. */
export class WrWarmUpPlace extends Base {
  static override styles = [
    sharedStyles,
    placeStyles,
    css`
      .page {
        gap: var(--space-4);
        padding-top: var(--space-3);
      }

      .head {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        justify-content: space-between;
        gap: 0 var(--space-4);
      }

      .soft {
        margin-inline-start: auto;
      }
    `,
  ];

  readonly #onHash = (): void => this.#startFromAddress();

  constructor() {
    super();
    new StoreController(this, () => [this.#room]);
  }

  get #room(): PracticeRoom {
    return roomOf(this.app);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('hashchange', this.#onHash);
    void this.#enter();
  }

  override disconnectedCallback(): void {
    window.removeEventListener('hashchange', this.#onHash);
    super.disconnectedCallback();
  }

  protected override render(): unknown {
    const room = this.#room;
    return html`<div class="page">
      <header class="head">
        <h1>${words.title}</h1>
        <p class="soft">${words.card(room.cardTitle)}</p>
      </header>
      ${
        room.trouble === ''
          ? nothing
          : html`<wr-notice tone="bad" @notice-closed=${() => room.forgetTrouble()}>${room.trouble}</wr-notice>`
      }
      ${this.#unsaved(room)}
      <wr-tabs
        label=${words.viewsLabel}
        .tabs=${VIEWS.map((id) => ({ id, label: words.views[id] }))}
        current=${this.view}
        @tab-chosen=${({ detail }: CustomEvent<TabChosen>) => this.#show(detail.id)}
      >
        <div slot=${this.view}>${this.#content(room)}</div>
      </wr-tabs>
    </div>`;
  }

  #unsaved(room: PracticeRoom): unknown {
    const problem = this.app.saving.unsaid(room.unsaved);
    if (problem === null) return nothing;
    return html`<wr-notice
      tone="bad"
      action=${shellWords.retry}
      .closable=${false}
      @notice-action=${() => room.retrySaving()}
      >${problem.message}</wr-notice
    >`;
  }

  #content(room: PracticeRoom): unknown {
    switch (this.view) {
      case 'practise':
        return room.run === null
          ? html`<wr-warm-up-start .room=${room}></wr-warm-up-start>`
          : html`<wr-warm-up-run .room=${room} .run=${room.run} .app=${this.app}></wr-warm-up-run>`;
      case 'guess':
        return html`<wr-guess .room=${room}></wr-guess>`;
      case 'sheets':
        return html`<wr-sheets .room=${room}></wr-sheets>`;
      case 'progress':
        return html`<wr-practice-progress .room=${room}></wr-practice-progress>`;
    }
  }

  async #enter(): Promise<void> {
    await this.#room.enter();
    this.#startFromAddress();
  }

  #show(id: string): void {
    this.view = VIEWS.find((view) => view === id) ?? 'practise';
  }

  /** Starts the problem of the address, once. */
  #startFromAddress(): void {
    const route = itemOfAddress(window.location.hash);
    if (route === null || this.#room.card.document === undefined) return;
    window.history.replaceState(null, '', '#/warm-up');
    if (!route.ok) {
      this.#room.fail(route.problem.message);
      return;
    }
    const { goal, item } = route.value;
    this.view = goal === 'sheet' ? 'sheets' : 'practise';
    if (goal === 'sheet') this.#room.sheets.add([item]);
    else this.#room.start(item);
  }
}

customElements.define('wr-warm-up-place', WrWarmUpPlace);

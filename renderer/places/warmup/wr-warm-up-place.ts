import { css, html, nothing } from 'lit';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-notice.ts';
import '../../parts/wr-tabs.ts';
import type { TabChosen } from '../../parts/wr-tabs.ts';
import type { WarmUpItem } from '../../../core/warmup/item.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { shellWords } from '../../words/shell.ts';
import { warmUpWords as words } from '../../words/warmup.ts';
import { itemOfAddress } from './item-route.ts';
import { type PracticeRoom, roomOf } from './practice-room.ts';
import type { WarmUpRun } from './warm-up-run.ts';
import './wr-guess.ts';
import './wr-practice-progress.ts';
import './wr-sheets.ts';
import './wr-throw.ts';
import './wr-warm-up-run.ts';
import './wr-warm-up-start.ts';

const VIEWS = ['practise', 'throw', 'guess', 'sheets', 'progress'] as const;
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
      :host {
        display: flex;
        flex: 1 1 auto;
        flex-direction: column;
      }

      .page {
        width: 100%;
      }

      /* A problem has the whole window. */
      .problem {
        flex: 1 1 auto;
        display: flex;
        flex-direction: column;
        max-width: 84rem;
        gap: 0;
        padding-block: var(--space-1) 0;
      }

      @media (min-height: 40em) {
        @container (min-width: 50rem) {
          :host {
            min-height: 0;
            overflow: auto;
          }

          .problem {
            flex: 1 1 0;
            min-height: 0;
          }
        }
      }

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
    const isAtProblem = (this.view === 'practise' || this.view === 'progress') && room.run !== null;
    return html`<div class="page ${isAtProblem ? 'problem' : ''}">
      ${isAtProblem ? html`<h1 class="unseen">${words.title}</h1>` : this.#head(room)}
      ${
        room.trouble === ''
          ? nothing
          : html`<wr-notice tone="bad" @notice-closed=${() => room.forgetTrouble()}>${room.trouble}</wr-notice>`
      }
      ${this.#unsaved(room)} ${isAtProblem ? this.#content(room) : this.#tabs(room)}
    </div>`;
  }

  #head(room: PracticeRoom): unknown {
    return html`<header class="head">
      <h1>${words.title}</h1>
      <p class="soft">${words.card(room.cardTitle)}</p>
    </header>`;
  }

  #tabs(room: PracticeRoom): unknown {
    return html`<wr-tabs
      label=${words.viewsLabel}
      .tabs=${VIEWS.map((id) => ({ id, label: words.views[id] }))}
      current=${this.view}
      @tab-chosen=${({ detail }: CustomEvent<TabChosen>) => this.#show(detail.id)}
    >
      <div slot=${this.view}>${this.#content(room)}</div>
    </wr-tabs>`;
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
          ? html`<wr-warm-up-start .room=${room} @progress-wanted=${() => this.#show('progress')}></wr-warm-up-start>`
          : this.#problem(room, room.run);
      case 'throw':
        return html`<wr-throw .room=${room}></wr-throw>`;
      case 'guess':
        return html`<wr-guess .room=${room}></wr-guess>`;
      case 'sheets':
        return html`<wr-sheets .room=${room}></wr-sheets>`;
      case 'progress':
        if (room.run !== null) return this.#problem(room, room.run);
        return html`<wr-practice-progress .room=${room}></wr-practice-progress>`;
    }
  }

  #problem(room: PracticeRoom, run: WarmUpRun): unknown {
    return html`<wr-warm-up-run .room=${room} .run=${run} .app=${this.app}></wr-warm-up-run>`;
  }

  async #enter(): Promise<void> {
    await this.#room.enter();
    this.#startFromAddress();
  }

  #show(id: string): void {
    this.view = VIEWS.find((view) => view === id) ?? 'practise';
  }

  /** A problem on a screen; when that is closed, one is back where it was asked for. */
  async #project(item: WarmUpItem, back: string): Promise<void> {
    const { showProblem } = await import('./show-problem.ts');
    await showProblem(this.#room, item, this.app.about.appVersion, () => {
      if (back !== '') window.location.hash = back;
    });
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
    const { goal, item, back } = route.value;
    if (goal === 'show') {
      void this.#project(item, back);
      return;
    }
    this.view = goal === 'sheet' ? 'sheets' : 'practise';
    if (goal === 'sheet') this.#room.sheets.add([item]);
    else this.#room.start(item);
  }
}

customElements.define('wr-warm-up-place', WrWarmUpPlace);

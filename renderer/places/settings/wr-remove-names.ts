import { css, html } from 'lit';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-dialog.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { moneyWords as words } from '../../words/play.ts';

const Base = element({
  app: data<AppContext>(),
  asking: state(false),
  /** What came of it. */
  said: state(''),
});

/** Removes the names of players from all games, after one question. */
export class WrRemoveNames extends Base {
  static override styles = [
    sharedStyles,
    css`
      .names {
        display: flex;
        flex-direction: column;
        align-items: flex-start;
        gap: var(--space-3);
      }

      p {
        margin: 0;
      }
    `,
  ];

  protected override render(): unknown {
    return html`<div class="names">
        <p>${words.namesWords}</p>
        <wr-button look="danger" @click=${() => this.#ask(true)}>${words.removeNames}</wr-button>
        <p role="status">${this.said}</p>
      </div>
      <wr-dialog heading=${words.askTitle} ?open=${this.asking} @dialog-closed=${() => this.#ask(false)}>
        <p>${words.askBody}</p>
        <wr-button slot="actions" @click=${() => this.#ask(false)}>${words.keep}</wr-button>
        <wr-button slot="actions" look="danger" @click=${this.#remove}>${words.removeNames}</wr-button>
      </wr-dialog>`;
  }

  #ask(asking: boolean): void {
    this.asking = asking;
  }

  async #remove(): Promise<void> {
    this.asking = false;
    const { desk, session } = this.app;
    const removed = await desk.removeNames();
    this.said = removed.ok ? words.removed(removed.value) : removed.problem.message;
    if (removed.ok) session.forgetNames();
  }
}

customElements.define('wr-remove-names', WrRemoveNames);

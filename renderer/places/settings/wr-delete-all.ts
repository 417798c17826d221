import { html, nothing } from 'lit';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-dialog.ts';
import '../../parts/wr-notice.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { showInstead } from '../../shell/show-instead.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { settingsWords as words } from '../../words/settings.ts';
import { filesStyles } from './files-styles.ts';

const Base = element({
  app: data<AppContext>(),
  /** Which of the two questions is open; 0 for none. */
  asking: state<0 | 1 | 2>(0),
  counts: state<{ readonly games: number; readonly cards: number }>(() => ({ games: 0, cards: 0 })),
  trouble: state(''),
});

/** Deletes everything that Windrow keeps, after two questions. */
export class WrDeleteAll extends Base {
  static override styles = [sharedStyles, filesStyles];

  protected override render(): unknown {
    const keep = (): void => this.#ask(0);
    return html`<p>${words.removeWords}</p>
      <wr-button look="danger" @click=${() => void this.#begin()}>${words.removeButton}</wr-button>
      ${this.trouble === '' ? nothing : html`<wr-notice tone="bad" .closable=${false}>${this.trouble}</wr-notice>`}
      <wr-dialog heading=${words.removeAsk} ?open=${this.asking === 1} @dialog-closed=${keep}>
        <p>${words.removeBody(this.counts.games, this.counts.cards)}</p>
        <p>${words.removeAdvice}</p>
        <wr-button slot="actions" @click=${keep}>${words.removeNo}</wr-button>
        <wr-button slot="actions" look="danger" @click=${() => this.#ask(2)}>${words.removeNext}</wr-button>
      </wr-dialog>
      <wr-dialog heading=${words.removeSure} ?open=${this.asking === 2} @dialog-closed=${keep}>
        <p>${words.removeLast}</p>
        <wr-button slot="actions" look="danger" @click=${() => void this.#remove()}>${words.removeYes}</wr-button>
        <wr-button slot="actions" @click=${keep}>${words.removeNo}</wr-button>
      </wr-dialog>`;
  }

  #ask(asking: 0 | 1 | 2): void {
    this.asking = asking;
  }

  async #begin(): Promise<void> {
    const [games, cards] = await Promise.all([this.app.desk.listGames(), this.app.desk.listCards()]);
    this.counts = {
      games: games.ok ? games.value.length : 0,
      cards: cards.ok ? cards.value.filter(({ fixed }) => !fixed).length : 0,
    };
    this.trouble = '';
    this.asking = 1;
  }

  async #remove(): Promise<void> {
    this.asking = 0;
    const gone = await this.app.desk.deleteEverything('delete everything');
    if (!gone.ok) {
      this.trouble = gone.problem.message;
      return;
    }
    const act = (): void => {
      window.location.hash = '';
      window.location.reload();
    };
    showInstead(document.body, {
      title: words.removed,
      text: words.removedWords,
      button: { words: words.beginAnew, act },
    });
  }
}

customElements.define('wr-delete-all', WrDeleteAll);

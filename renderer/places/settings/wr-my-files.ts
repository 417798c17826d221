import { html, LitElement, nothing } from 'lit';
import '../../parts/wr-button.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { settingsWords as words } from '../../words/settings.ts';
import { filesStyles } from './files-styles.ts';

/** Where the files are, the way to see them, and what the desk noticed about them since the start. */
export class WrMyFiles extends LitElement {
  static override properties = {
    app: { attribute: false },
    said: { state: true },
    notices: { state: true },
  };

  declare app: AppContext;
  declare protected said: string;
  declare protected notices: readonly string[];

  static override styles = [sharedStyles, filesStyles];

  constructor() {
    super();
    this.said = '';
    this.notices = [];
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#ask();
  }

  protected override render(): unknown {
    return html`<p>${words.filesWords}</p>
      <p><code>${this.app.about.folder}</code></p>
      <wr-button @click=${this.#show}>${words.show}</wr-button>
      <div class="said" role="status">${this.said === '' ? nothing : html`<p>${this.said}</p>`}</div>
      <p class="soft">${words.copyWords}</p>
      <h3>${words.notices}</h3>
      ${
        this.notices.length === 0
          ? html`<p>${words.noticesNone}</p>`
          : html`<ul>
              ${this.notices.map((notice) => html`<li>${notice}</li>`)}
            </ul>`
      }`;
  }

  async #show(): Promise<void> {
    const told = await this.app.desk.folder({ do: 'show' });
    const { folder } = this.app.about;
    if (!told.ok) this.said = told.problem.message;
    else this.said = told.value.shown ? words.shown : `${words.notShown} ${folder}`;
  }

  async #ask(): Promise<void> {
    const notices = await this.app.desk.notices();
    if (notices.ok) this.notices = notices.value;
  }
}

customElements.define('wr-my-files', WrMyFiles);

declare global {
  interface HTMLElementTagNameMap {
    'wr-my-files': WrMyFiles;
  }
}

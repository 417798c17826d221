import { html, nothing } from 'lit';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { settingsWords as words } from '../../words/settings.ts';
import { filesStyles } from './files-styles.ts';

const Base = element({
  app: data<AppContext>(),
  said: state(''),
  notices: state<readonly string[]>(() => []),
});

/** Where the files are, the way to see them, and what the desk noticed about them since the start. */
export class WrMyFiles extends Base {
  static override styles = [sharedStyles, filesStyles];

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
    const shown = await this.app.desk.showFolder();
    const { folder } = this.app.about;
    if (!shown.ok) this.said = shown.problem.message;
    else this.said = shown.value ? words.shown : `${words.notShown} ${folder}`;
  }

  async #ask(): Promise<void> {
    const notices = await this.app.desk.notices();
    if (notices.ok) this.notices = notices.value;
  }
}

customElements.define('wr-my-files', WrMyFiles);

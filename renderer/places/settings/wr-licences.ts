import { css, html, nothing } from 'lit';
import { element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { settingsWords as words } from '../../words/settings.ts';
import { filesStyles } from './files-styles.ts';

const Base = element({
  text: state(''),
  failed: state(false),
});

/** The licences of all that is shipped: a long text, fetched when somebody wants to read it. */
export class WrLicences extends Base {
  static override styles = [
    sharedStyles,
    filesStyles,
    css`
      pre {
        max-width: min(80ch, 100%);
        margin: 0;
        white-space: pre-wrap;
        overflow-wrap: anywhere;
        font-family: var(--font-code);
        font-size: var(--text-small);
      }
    `,
  ];

  protected override render(): unknown {
    return html`<p>${words.licencesWords}</p>
      <wr-button @click=${this.#turn}>${this.text === '' ? words.licencesShow : words.licencesHide}</wr-button>
      <p role="status">${this.failed ? words.licencesFailed : nothing}</p>
      ${this.text === '' ? nothing : html`<pre>${this.text}</pre>`}`;
  }

  async #turn(): Promise<void> {
    const text = this.text === '' ? await fetched() : '';
    this.failed = text === null;
    this.text = text ?? '';
  }
}

/** The built file; null when it can't be had. */
async function fetched(): Promise<string | null> {
  try {
    const reply = await fetch('licences.txt');
    const text = reply.ok ? await reply.text() : '';
    return text === '' ? null : text;
  } catch {
    return null;
  }
}

customElements.define('wr-licences', WrLicences);

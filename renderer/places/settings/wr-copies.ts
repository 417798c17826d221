import { css, html, nothing } from 'lit';
import type { CopyChoice, CopyEntry, CopyFile } from '../../../main/desk/desk.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { copyWords as words } from '../../words/settings.ts';
import { filesStyles } from './files-styles.ts';

const Base = element({
  app: data<AppContext>(),
  copies: state<readonly CopyEntry[]>(() => []),
  said: state(''),
});

/** Games and cards that are there in two files: a person chooses the one that stays. Nothing is drawn where there are none. */
export class WrCopies extends Base {
  static override styles = [
    sharedStyles,
    filesStyles,
    css`
      li + li {
        margin-top: var(--space-4);
      }

      .choices {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2) var(--space-3);
        margin-top: var(--space-2);
      }
    `,
  ];

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#ask();
  }

  protected override render(): unknown {
    if (this.copies.length === 0 && this.said === '') return nothing;
    return html`<h3>${words.title}</h3>
      <p>${words.lead}</p>
      <div class="said" role="status" tabindex="-1">${this.said}</div>
      <ul>
        ${this.copies.map((copy) => html`<li>${this.#entry(copy)}</li>`)}
      </ul>`;
  }

  #entry({ kind, used, copy }: CopyEntry): unknown {
    const button = (choice: CopyChoice, label: string, about: string): unknown =>
      html`<wr-button label=${`${label}: ${about}`} @click=${() => void this.#settle(copy, choice)}
        >${label}</wr-button
      >`;
    return html`${used === null ? nothing : html`<p>${words.used} ${factsOf(kind, used)}</p>`}
      <p>${words.copy} ${factsOf(kind, copy)}</p>
      <div class="choices">
        ${used === null ? nothing : button('used', words.keepUsed, used.file)}
        ${copy.holds === null || used === null ? nothing : button('copy', words.keepCopy, copy.file)}
        ${copy.holds === null ? nothing : button('both', used === null ? words.takeIn : words.keepBoth, copy.file)}
        ${used === null ? button('used', words.putAside, copy.file) : nothing}
      </div>`;
  }

  async #settle({ file }: CopyFile, choice: CopyChoice): Promise<void> {
    const left = await this.app.desk.settleCopy(file, choice);
    this.said = left.ok ? words.done : left.problem.message;
    if (left.ok) this.copies = left.value;
    await this.updateComplete;
    // The button that was pressed may be gone.
    this.renderRoot.querySelector<HTMLElement>('.said')?.focus();
  }

  async #ask(): Promise<void> {
    const found = await this.app.desk.listCopies();
    if (found.ok) this.copies = found.value;
    else this.said = found.problem.message;
  }
}

function factsOf(kind: CopyEntry['kind'], { file, changedAt, holds }: CopyFile): unknown {
  const day = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' }).format(
    new Date(changedAt),
  );
  return html`<code>${file}</code> · ${words.changed(day)} · ${holds === null ? words.unread : words[kind](holds)}`;
}

customElements.define('wr-copies', WrCopies);

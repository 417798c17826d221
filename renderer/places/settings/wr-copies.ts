import { css, html, nothing } from 'lit';
import type { CopyChoice, CopyEntry, CopyFile } from '../../../main/desk/desk.ts';
import { data, element, state } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { copyWords as words } from '../../words/settings.ts';
import { filesStyles } from './files-styles.ts';

const Base = element({
  app: data<AppContext>(),
  copies: state<readonly CopyEntry[]>(() => []),
  /** What came of the choices made here, by the second file: its row stays, so that no other one takes its place. */
  outcomes: state<ReadonlyMap<string, Outcome>>(() => new Map()),
  trouble: state(''),
});

interface Outcome {
  readonly isDone: boolean;
  readonly text: string;
}

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

  #isBusy = false;

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#ask();
  }

  protected override render(): unknown {
    if (this.copies.length === 0 && this.trouble === '') return nothing;
    return html`<h3>${words.title}</h3>
      ${this.trouble === '' ? html`<p>${words.lead}</p>` : html`<p role="status">${this.trouble}</p>`}
      <ul>
        ${this.copies.map((entry) => html`<li>${this.#entry(entry)}</li>`)}
      </ul>`;
  }

  #entry(entry: CopyEntry): unknown {
    const { kind, used, copy } = entry;
    const outcome = this.outcomes.get(copy.file);
    return html`${used === null ? nothing : html`<p>${words.used} ${factsOf(kind, used)}</p>`}
      <p>${used === null ? words.alone : words.copy} ${factsOf(kind, copy)}</p>
      ${outcome?.isDone === true ? nothing : this.#choices(entry)}
      <p role="status" tabindex="-1" data-of=${copy.file}>${outcome?.text ?? ''}</p>`;
  }

  #choices({ used, copy }: CopyEntry): unknown {
    const button = (choice: CopyChoice, label: string, file: string, done: string): unknown =>
      html`<wr-button label=${`${label}: ${file}`} @click=${() => void this.#settle(copy, choice, done)}
        >${label}</wr-button
      >`;
    const { done } = words;
    if (used === null) {
      return html`<div class="choices">
        ${copy.holds === null ? nothing : button('both', words.takeIn, copy.file, done.takenIn)}
        ${button('used', words.putAside, copy.file, done.putAside)}
      </div>`;
    }
    return html`<div class="choices">
      ${button('used', words.keepUsed, used.file, done.used)}
      ${copy.holds === null ? nothing : button('copy', words.keepCopy, copy.file, done.copy)}
      ${copy.holds === null ? nothing : button('both', words.keepBoth, copy.file, done.both)}
    </div>`;
  }

  async #settle({ file }: CopyFile, choice: CopyChoice, done: string): Promise<void> {
    if (this.#isBusy) return;
    this.#isBusy = true;
    const { desk } = this.app;
    const told = await desk.notices();
    const left = await desk.settleCopy(file, choice);
    const now = await desk.notices();
    this.#isBusy = false;
    if (told.ok && now.ok) {
      const settled = told.value.filter((notice) => !now.value.includes(notice));
      emit<readonly string[]>(this, 'notices-settled', settled);
    }
    const text = left.ok ? done : left.problem.message;
    this.outcomes = new Map([...this.outcomes, [file, { isDone: left.ok, text }]]);
    await this.updateComplete;
    // The button that was pressed may be gone.
    this.renderRoot.querySelector<HTMLElement>(`[data-of="${CSS.escape(file)}"]`)?.focus();
    // The Table or the Card place may hold the version that was in use: all is opened anew.
    if (left.ok && choice === 'copy') window.location.reload();
  }

  async #ask(): Promise<void> {
    const found = await this.app.desk.listCopies();
    if (found.ok) this.copies = found.value;
    else this.trouble = found.problem.message;
  }
}

function factsOf(kind: CopyEntry['kind'], { file, changedAt, holds }: CopyFile): unknown {
  const day = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' }).format(
    new Date(changedAt),
  );
  return html`<code>${file}</code> · ${words.changed(day)} · ${holds === null ? words.unread : words[kind](holds)}`;
}

customElements.define('wr-copies', WrCopies);

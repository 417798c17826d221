import { html, nothing } from 'lit';
import { readCollection, type ReadCollection } from '../../../core/journal/collection.ts';
import { bringIn, type Brought } from '../../backup/bring-in.ts';
import { backupName, gatherEverything } from '../../backup/gather.ts';
import { saveFile } from '../../backup/save-file.ts';
import { BROUGHT_IN } from '../../desk/connect.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-notice.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { settingsWords as words } from '../../words/settings.ts';
import { filesStyles } from './files-styles.ts';

const Base = element({
  app: data<AppContext>(),
  /** What is under way, in words; empty when nothing is. */
  doing: state(''),
  said: state(''),
  trouble: state(''),
});

/** Everything into one file, and back from it; what is here stays. */
export class WrBackup extends Base {
  static override styles = [sharedStyles, filesStyles];

  protected override render(): unknown {
    const busy = this.doing !== '';
    return html`<p>${words.backupWords}</p>
      <wr-button ?disabled=${busy} @click=${() => void this.#save()}>${words.backupSave}</wr-button>
      <h3>${words.restore}</h3>
      <p>${words.restoreWords}</p>
      <wr-button ?disabled=${busy} @click=${() => this.#input?.click()}>${words.restoreChoose}</wr-button>
      <input type="file" tabindex="-1" aria-label=${words.restoreChoose} @change=${() => void this.#chosen()} />
      <div role="status">${this.doing || this.said}</div>
      ${
        this.trouble === ''
          ? nothing
          : html`<wr-notice tone="bad" @notice-closed=${this.#troubleRead}>${this.trouble}</wr-notice>`
      }`;
  }

  #troubleRead(): void {
    this.trouble = '';
  }

  async #save(): Promise<void> {
    const { desk, about } = this.app;
    this.#begin(words.gathering(0, 0));
    const text = await gatherEverything(desk, about.appVersion, (done, of) => {
      this.doing = words.gathering(done, of);
    });
    this.doing = '';
    if (!text.ok) {
      this.trouble = text.problem.message;
      return;
    }
    saveFile(backupName(), 'application/json', text.value);
    this.said = words.saved(backupName());
  }

  async #chosen(): Promise<void> {
    const input = this.#input;
    const file = input?.files?.[0];
    if (!input || file === undefined) return;
    const read = readCollection(await file.text().catch(() => ''));
    input.value = '';
    if (read.ok) await this.#restore(read.value);
    else this.trouble = `${words.cannotRead} ${read.problem.message}`;
  }

  async #restore(collection: ReadCollection): Promise<void> {
    this.#begin(words.bringing(0, collection.games.length));
    const brought = await bringIn(this.app, collection, (done, of) => {
      this.doing = words.bringing(done, of);
    });
    this.doing = '';
    // Lists on the page are of what was here before.
    window.dispatchEvent(new Event(BROUGHT_IN));
    if (brought.ok) this.said = broughtWords(brought.value);
    else this.trouble = brought.problem.message;
    const { problems } = collection;
    if (problems.length > 0) this.trouble = [words.someBad(problems.length), ...problems.slice(0, 3)].join(' ');
  }

  #begin(doing: string): void {
    this.doing = doing;
    this.said = '';
    this.trouble = '';
  }

  get #input(): HTMLInputElement | null {
    return this.renderRoot.querySelector('input');
  }
}

function broughtWords({ added, copied, cards, sheets, settings }: Brought): string {
  const sum = words.brought(added, copied, cards, sheets);
  return settings ? `${sum} ${words.broughtSettings}` : sum;
}

customElements.define('wr-backup', WrBackup);

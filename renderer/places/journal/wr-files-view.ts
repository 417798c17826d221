import { css, html, LitElement, nothing } from 'lit';
import type { Result } from '../../../core/base/result.ts';
import { readCollection } from '../../../core/journal/collection.ts';
import { bringIn } from '../../backup/bring-in.ts';
import { backupName, gatherEverything } from '../../backup/gather.ts';
import { saveFile } from '../../backup/save-file.ts';
import '../../parts/wr-notice.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { filesWords as words, journalWords } from '../../words/journal.ts';
import { journalCsv } from './csv.ts';
import { demoSection, inSection, namesSection, outSection, whereSection } from './files-sections.ts';
import { journalStyles } from './journal-styles.ts';
import type { JournalStore } from './journal-store.ts';
import { addSeason } from './season-maker.ts';

/** Something under way, in words, with the part done. */
interface Doing {
  readonly words: string;
  readonly share: number;
}

/** What leaves the journal and what comes in: files, the example season, players' names. */
export class WrFilesView extends LitElement {
  static override properties = {
    app: { attribute: false },
    store: { attribute: false },
    doing: { state: true },
    said: { state: true },
    trouble: { state: true },
  };

  declare app: AppContext;
  declare store: JournalStore;
  declare protected doing: Doing | null;
  declare protected said: string;
  declare protected trouble: string;

  static override styles = [
    sharedStyles,
    placeStyles,
    journalStyles,
    css`
      input[type='file'] {
        display: none;
      }
    `,
  ];

  constructor() {
    super();
    this.doing = null;
    this.said = '';
    this.trouble = '';
    new StoreController(this, () => [this.store]);
  }

  protected override render(): unknown {
    const named = (this.store.games ?? []).filter(({ names }) => names.length > 0).length;
    return html`${this.#messages()}
    ${outSection(
      this.store.shown.length,
      () => this.#saveTable(),
      () => void this.#saveAll(),
    )}
    ${inSection(
      () => this.#fileInput()?.click(),
      () => void this.#chosen(),
    )}
    ${demoSection(
      this.#demoIds().length,
      () => void this.#addDemo(),
      () => void this.#removeDemo(),
    )}
    ${namesSection(named, () => void this.#removeNames())} ${whereSection(this.app.about.folder)}`;
  }

  #messages(): unknown {
    const { doing } = this;
    return [
      doing === null
        ? nothing
        : html`<div class="progress">
            <span role="status">${doing.words}</span>
            <progress aria-label=${doing.words} max="1" .value=${doing.share}></progress>
          </div>`,
      this.said === ''
        ? nothing
        : html`<wr-notice tone="good" @notice-closed=${() => (this.said = '')}>${this.said}</wr-notice>`,
      this.trouble === ''
        ? nothing
        : html`<wr-notice tone="bad" @notice-closed=${() => (this.trouble = '')}>${this.trouble}</wr-notice>`,
    ];
  }

  #saveTable(): void {
    saveFile('windrow-games.csv', 'text/csv;charset=utf-8', journalCsv(this.store.asSeason(this.store.shown)));
    this.#say(words.saved('windrow-games.csv'));
  }

  async #saveAll(): Promise<void> {
    const { desk, about } = this.app;
    const told = (done: number, of: number): void => this.#progress(words.gathering(done, of), done / of);
    const text = await this.#do(words.gathering(0, 0), () => gatherEverything(desk, about.appVersion, told));
    if (text === null) return;
    const name = backupName();
    saveFile(name, 'application/json', text);
    this.#say(words.saved(name));
  }

  async #chosen(): Promise<void> {
    const input = this.#fileInput();
    const file = input?.files?.[0];
    if (input === null || file === undefined) return;
    const text = await file.text().catch(() => '');
    input.value = '';
    const read = readCollection(text);
    if (!read.ok) {
      this.trouble = `${words.cannotRead} ${read.problem.message}`;
      return;
    }
    const told = (done: number, of: number): void => this.#progress(words.bringing(done, of), done / of);
    const brought = await this.#do(words.bringing(0, read.value.games.length), () =>
      bringIn(this.app, read.value, told),
    );
    await this.store.load();
    if (brought === null) return;
    const { added, copied, same, cards } = brought;
    this.#say(`${words.brought(added, copied, same)} ${words.broughtCards(cards)}`);
    const { problems } = read.value;
    if (problems.length > 0) this.trouble = [words.someBad(problems.length), ...problems.slice(0, 3)].join(' ');
  }

  async #addDemo(): Promise<void> {
    const told = (share: number): void => this.#progress(journalWords.makingDemo, share);
    const made = await this.#do(journalWords.makingDemo, () => addSeason(this.app, this.store, told));
    if (made !== null) this.#say(words.demoAdded(made.added));
  }

  async #removeDemo(): Promise<void> {
    const ids = this.#demoIds();
    let gone = 0;
    for (const id of ids) {
      const removed = await this.app.desk.removeGame(id);
      if (!removed.ok) this.trouble = removed.problem.message;
      else gone += 1;
      this.#progress(words.removeDemo, gone / ids.length);
    }
    this.doing = null;
    await this.store.load();
    this.#say(words.demoRemoved(gone));
  }

  async #removeNames(): Promise<void> {
    const told = await this.#do(words.removeNames, () => this.app.desk.folder({ do: 'remove-names' }));
    await this.store.load();
    if (told !== null) this.#say(words.namesRemoved(told.named));
  }

  #demoIds(): string[] {
    return (this.store.games ?? []).filter(({ demo }) => demo).map(({ id }) => id);
  }

  async #do<Value>(sentence: string, task: () => Promise<Result<Value>>): Promise<Value | null> {
    this.#progress(sentence, 0);
    const answer = await task();
    this.doing = null;
    this.trouble = answer.ok ? '' : answer.problem.message;
    return answer.ok ? answer.value : null;
  }

  #progress(sentence: string, share: number): void {
    this.said = '';
    this.doing = { words: sentence, share };
  }

  #say(sentence: string): void {
    this.said = sentence;
  }

  #fileInput(): HTMLInputElement | null {
    return this.renderRoot.querySelector('input');
  }
}

customElements.define('wr-files-view', WrFilesView);

declare global {
  interface HTMLElementTagNameMap {
    'wr-files-view': WrFilesView;
  }
}

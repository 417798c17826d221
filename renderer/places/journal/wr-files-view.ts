import { css, html, nothing } from 'lit';
import type { Result } from '../../../core/base/result.ts';
import { isOfDemoSeason } from '../../../core/journal/filter.ts';
import { readCollection } from '../../../core/journal/collection.ts';
import { bringIn } from '../../backup/bring-in.ts';
import { backupName, gatherEverything } from '../../backup/gather.ts';
import { saveFile } from '../../backup/save-file.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-notice.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { filesWords as words, journalWords } from '../../words/journal.ts';
import { journalCsv } from './csv.ts';
import { addSeason, type JournalStore } from './journal-store.ts';
import { journalStyles } from './journal-styles.ts';

/** Something under way, in words, with the part done. */
interface Doing {
  readonly words: string;
  readonly share: number;
}

const Base = element({
  app: data<AppContext>(),
  store: data<JournalStore>(),
  doing: state<Doing | null>(null),
  said: state(''),
  trouble: state(''),
});

/** What leaves the journal and what comes in: files, the example season, players' names. */
export class WrFilesView extends Base {
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
    new StoreController(this, () => [this.store]);
  }

  protected override render(): unknown {
    const named = (this.store.games ?? []).filter(({ names }) => names.length > 0).length;
    return html`${this.#messages()}
    ${outSection(
      this.store.counted.length,
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
    saveFile('windrow-games.csv', 'text/csv;charset=utf-8', journalCsv(this.store.asSeason(this.store.counted)));
    this.#say(words.saved('windrow-games.csv'));
  }

  async #saveAll(): Promise<void> {
    const { desk, about } = this.app;
    const report = (done: number, of: number): void => this.#progress(words.gathering(done, of), done / of);
    const text = await this.#do(words.gathering(0, 0), () => gatherEverything(desk, about.appVersion, report));
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
    const report = (done: number, of: number): void => this.#progress(words.bringing(done, of), done / of);
    const brought = await this.#do(words.bringing(0, read.value.games.length), () =>
      bringIn(this.app, read.value, report),
    );
    await this.store.load();
    if (brought === null) return;
    const { added, copied, same, cards } = brought;
    this.#say(`${words.brought(added, copied, same)} ${words.broughtCards(cards)}`);
    const { problems } = read.value;
    if (problems.length > 0) this.trouble = [words.someBad(problems.length), ...problems.slice(0, 3)].join(' ');
  }

  async #addDemo(): Promise<void> {
    const report = (share: number): void => this.#progress(journalWords.makingDemo, share);
    const made = await this.#do(journalWords.makingDemo, () => addSeason(this.app, this.store, report));
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
    const named = await this.#do(words.removeNames, () => this.app.desk.removeNames());
    await this.store.load();
    if (named !== null) this.#say(words.namesRemoved(named));
  }

  #demoIds(): string[] {
    return (this.store.games ?? []).filter(isOfDemoSeason).map(({ id }) => id);
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

type Act = () => void;

/** What leaves the journal: a table of the games shown, or everything. */
function outSection(shown: number, saveTable: Act, saveAll: Act): unknown {
  return html`<section aria-labelledby="out">
    <h2 id="out">${words.out}</h2>
    <p>${words.outLead}</p>
    <wr-button @click=${saveTable}>${words.csv}</wr-button>
    <p class="soft">${words.csvNote(shown)}</p>
    <wr-button @click=${saveAll}>${words.all}</wr-button>
    <p class="soft">${words.allNote}</p>
  </section>`;
}

/**
 * What comes in: `choose` opens the hidden field for a file, `chosen` reads its file. Any name may be chosen: versions that
 * were kept aside end in their time.
 */
function inSection(choose: Act, chosen: Act): unknown {
  return html`<section aria-labelledby="in">
    <h2 id="in">${words.bring}</h2>
    <p>${words.bringLead}</p>
    <wr-button @click=${choose}>${words.choose}</wr-button>
    <input type="file" tabindex="-1" aria-label=${words.choose} @change=${chosen} />
  </section>`;
}

/** The example season: a button to add it, or to remove its `count` games. */
function demoSection(count: number, add: Act, remove: Act): unknown {
  return html`<section aria-labelledby="demo">
    <h2 id="demo">${words.demo}</h2>
    <p>${words.demoLead}</p>
    ${
      count === 0
        ? html`<wr-button @click=${add}>${journalWords.addDemo}</wr-button>`
        : html`<p>${words.demoHere(count)}</p>
            <wr-button look="danger" @click=${remove}>${words.removeDemo}</wr-button>`
    }
  </section>`;
}

/** The names of players, which stand in `count` games. */
function namesSection(count: number, remove: Act): unknown {
  return html`<section aria-labelledby="names">
    <h2 id="names">${words.names}</h2>
    <p>${words.namesLead}</p>
    <p>${words.namesHere(count)}</p>
    <wr-button look="danger" ?disabled=${count === 0} @click=${remove}>${words.removeNames}</wr-button>
  </section>`;
}

/** Where the files lie. */
function whereSection(folder: string): unknown {
  return html`<section aria-labelledby="where">
    <h2 id="where">${words.title}</h2>
    <p>${words.where}</p>
    <p><code>${folder}</code></p>
  </section>`;
}

customElements.define('wr-files-view', WrFilesView);

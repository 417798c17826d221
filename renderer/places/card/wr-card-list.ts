import { css, html, nothing } from 'lit';
import { textField } from '../../../core/card/document.ts';
import { changeCard } from '../../../core/card/edit.ts';
import type { BackupEntry, CardEntry } from '../../../main/desk/desk.ts';
import { data, element, state } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-dialog.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import '../../parts/wr-notice.ts';
import '../../parts/wr-toolbar.ts';
import { StoreController } from '../../shell/store-controller.ts';
import type { PreferenceStore } from '../../session/preference-store.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { savedWords } from '../../words/card-names.ts';
import type { CardRoom } from './card-room.ts';
import { cardStyles } from './card-styles.ts';

const words = cardWords.shelf;

/** What `card-action` carries: what to do, and with which card. */
export interface CardAction {
  readonly action: 'open' | 'use' | 'copy' | 'export' | 'text' | 'table' | 'start' | 'bring';
  /** Empty for a new card. */
  readonly id: string;
}

/** Under which name a card was saved, in words. */
export interface SavedFile {
  readonly id: string;
  readonly words: string;
}

interface RemovedCard {
  readonly entry: CardEntry;
  /** Whether it was the one for new games. */
  readonly used: boolean;
}

const Base = element({
  room: data<CardRoom>(),
  preferences: data<PreferenceStore>(),
  /** The card that was saved as a file last. */
  savedFile: data<SavedFile | null>(() => null),
  /** The card in use, while it is asked whether it shall go. */
  asked: state<CardEntry | null>(null),
  /** The card that was removed last, to be brought back. */
  removed: state<RemovedCard | null>(null),
  /** The card whose earlier versions are listed. */
  looking: state<CardEntry | null>(null),
  versions: state<readonly BackupEntry[]>(() => []),
});

/** The cards there are, the one in use, and the ways to a new one. */
export class WrCardList extends Base {
  static override styles = [
    sharedStyles,
    cardStyles,
    css`
      .card {
        padding: var(--space-3) 0;
        border-top: 1px solid var(--hairline);
      }

      /* In one line, so that nothing below moves when another card is put into use. */
      .heading {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        column-gap: var(--space-4);
      }

      .title {
        font-size: var(--text-lead);
        font-weight: 700;
        overflow-wrap: anywhere;
      }

      .used {
        color: var(--accent);
        font-weight: 700;
      }

      .names {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 12rem), 1fr));
        gap: var(--space-2) var(--space-4);
        max-width: 44rem;
      }

      .ways {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 18rem), 1fr));
        gap: var(--space-4);
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.room, this.preferences]);
  }

  protected override render(): unknown {
    return html`<div class="stack">
      <p>${words.lead}</p>
      ${this.#removedNotice()}
      <section class="sheet" aria-labelledby="list">
        <h2 id="list" tabindex="-1">${words.list}</h2>
        <ul>
          ${(this.room.entries ?? []).map((entry) => html`<li class="card stack close">${this.#card(entry)}</li>`)}
        </ul>
      </section>
      <section class="sheet" aria-labelledby="add">
        <h2 id="add">${words.add}</h2>
        <div class="ways">
          <div class="stack close">
            <p>${words.startLead}</p>
            <div><wr-button @click=${() => this.#act('start')}>${words.start}</wr-button></div>
          </div>
          <div class="stack close">
            <p>${words.bringLead}</p>
            <div><wr-button @click=${() => this.#act('bring')}>${words.bring}</wr-button></div>
          </div>
        </div>
      </section>
      ${this.#versionsDialog()} ${this.#removeDialog()}
    </div>`;
  }

  #card(entry: CardEntry): unknown {
    const { id, title, season, lines, fixed } = entry;
    const used = this.preferences.values.cardId === id;
    const open = this.room.editor?.id === id;
    const facts = [season, cardWords.lines(lines), savedWords(entry, this.room.entries ?? [])];
    return html`<div>
        <div class="heading">
          <span class="title">${title}</span>
          ${used ? html`<span class="used">✓ ${cardWords.inUse}</span>` : nothing}
        </div>
        <div class="soft">${facts.filter(Boolean).join(' · ')}</div>
      </div>
      ${open && !fixed ? this.#names() : nothing}
      <wr-toolbar label=${words.more(title)}>
        <wr-button label=${`${words.open}, ${title}`} @click=${() => this.#act('open', id)}>${words.open}</wr-button>
        <wr-button ?disabled=${used} @click=${() => this.#act('use', id)}>${cardWords.use}</wr-button>
        <wr-button look="quiet" @click=${() => this.#act('copy', id)}>${words.copy}</wr-button>
        <wr-button look="quiet" @click=${() => this.#act('export', id)}>${words.export}</wr-button>
        <wr-button look="quiet" @click=${() => this.#act('text', id)}>${words.asText}</wr-button>
        <wr-button look="quiet" @click=${() => this.#act('table', id)}>${words.asTable}</wr-button>
        ${
          fixed
            ? nothing
            : html`<wr-button look="quiet" @click=${() => this.#lookBack(entry)}>${words.versions}</wr-button>
                <wr-button look="quiet" @click=${() => this.#askAndRemove(entry)}>${words.remove}</wr-button>`
        }
      </wr-toolbar>
      ${this.savedFile?.id === id ? savedNotice(this, this.savedFile) : nothing}`;
  }

  /** Title and season of the open card, to be changed. */
  #names(): unknown {
    const { editor } = this.room;
    if (editor === null) return nothing;
    const { document } = editor;
    const field = (label: string, name: 'title' | 'season'): unknown =>
      html`<wr-field
        label=${label}
        .value=${textField(document, name)}
        @field-typed=${({ detail }: CustomEvent<FieldText>) =>
          editor.change(changeCard(document, { [name]: detail.value }), editor.selection, name)}
        @field-changed=${() => this.room.list()}
      ></wr-field>`;
    return html`<div class="names">
      ${field(cardWords.start.name, 'title')} ${field(cardWords.start.season, 'season')}
    </div>`;
  }

  #removedNotice(): unknown {
    const { removed } = this;
    if (removed === null) return nothing;
    return html`<wr-notice
      tone="info"
      action=${words.bringBack}
      @notice-action=${() => this.#bringBack(removed)}
      @notice-closed=${() => (this.removed = null)}
      >${words.removed(removed.entry.title)}</wr-notice
    >`;
  }

  #versionsDialog(): unknown {
    const title = this.looking?.title ?? '';
    return html`<wr-dialog
      heading=${words.versionsTitle(title)}
      ?open=${this.looking !== null}
      @dialog-closed=${() => (this.looking = null)}
    >
      <p>${this.versions.length === 0 ? words.noVersions : words.versionsLead}</p>
      <ul class="stack close">
        ${this.versions.map(
          ({ name, savedAt }) =>
            html`<li class="row spread">
              <span>${words.version(momentOf(savedAt))}</span>
              <wr-button @click=${() => this.#restore(name)}>${words.restore}</wr-button>
            </li>`,
        )}
      </ul>
      <wr-button slot="actions" @click=${() => (this.looking = null)}>${words.notNow}</wr-button>
    </wr-dialog>`;
  }

  async #lookBack(entry: CardEntry): Promise<void> {
    this.versions = await this.room.backups(entry.id);
    this.looking = entry;
  }

  async #restore(name: string): Promise<void> {
    const id = this.looking?.id;
    this.looking = null;
    if (id !== undefined) await this.room.restore(id, name);
  }

  /** The card in use is asked about; any other one goes at once, and can be brought back. */
  #askAndRemove(entry: CardEntry): void {
    if (this.#isUsed(entry)) this.asked = entry;
    else void this.#remove(entry);
  }

  #removeDialog(): unknown {
    const { asked } = this;
    return html`<wr-dialog
      heading=${words.removeTitle(asked?.title ?? '')}
      ?open=${asked !== null}
      @dialog-closed=${() => (this.asked = null)}
    >
      <p>${words.removeUsed}</p>
      <p>${words.removeKept}</p>
      <wr-button slot="actions" look="main" @click=${() => (this.asked = null)}>${words.keepCard}</wr-button>
      <wr-button slot="actions" @click=${() => (asked === null ? undefined : this.#remove(asked))}
        >${words.removeIt}</wr-button
      >
    </wr-dialog>`;
  }

  #isUsed({ id }: CardEntry): boolean {
    return this.preferences.values.cardId === id;
  }

  async #remove(entry: CardEntry): Promise<void> {
    this.asked = null;
    const used = this.#isUsed(entry);
    if (await this.room.remove(entry.id)) this.removed = { entry, used };
  }

  async #bringBack({ entry, used }: RemovedCard): Promise<void> {
    if (!(await this.room.bringBack(entry.id, used))) return;
    this.removed = null;
    this.renderRoot.querySelector<HTMLElement>('h2')?.focus();
  }

  #act(action: CardAction['action'], id = ''): void {
    emit<CardAction>(this, 'card-action', { action, id });
  }
}

function savedNotice(list: WrCardList, { words: said }: SavedFile): unknown {
  return html`<wr-notice tone="good" @notice-closed=${() => emit(list, 'saved-read', null)}>${said}</wr-notice>`;
}

function momentOf(moment: string): string {
  return new Intl.DateTimeFormat(undefined, { dateStyle: 'full', timeStyle: 'short' }).format(new Date(moment));
}

customElements.define('wr-card-list', WrCardList);

import { html, LitElement, nothing, type PropertyValues } from 'lit';
import type { Result } from '../../../core/base/result.ts';
import { writeGameFile } from '../../../core/game/file/write-game-file.ts';
import type { GameRecord } from '../../../core/game/record.ts';
import { saveFile } from '../../backup/save-file.ts';
import { announce } from '../../parts/announcer.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-notice.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { paperStyles } from '../../charts/paper-styles.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { journalWords } from '../../words/journal.ts';
import { lookbackWords as words } from '../../words/lookback.ts';
import { whenOf } from '../journal/dates.ts';
import type { JournalStore } from '../journal/journal-store.ts';
import { openAtTable } from '../journal/open-at-table.ts';
import { journalLink } from '../journal/routes.ts';
import { LookbackStore } from './lookback-store.ts';
import { lookbackStyles } from './lookback-styles.ts';
import type { NoteWritten } from './wr-decision.ts';
import './wr-decisions.ts';
import './wr-details.ts';
import type { DetailsChanged } from './wr-details.ts';
import './wr-ledger.ts';

/** The look-back of a game: luck and choices, every choice on its own, and what the player writes about it. */
export class WrLookback extends LitElement {
  static override properties = {
    app: { attribute: false },
    store: { attribute: false },
    gameId: { attribute: false },
    trouble: { state: true },
  };

  declare app: AppContext;
  declare store: JournalStore;
  declare gameId: string;
  declare protected trouble: string;

  static override styles = [sharedStyles, placeStyles, lookbackStyles, paperStyles];

  #game: LookbackStore | null = null;
  #unsubscribe: (() => void) | null = null;

  constructor() {
    super();
    this.trouble = '';
  }

  override disconnectedCallback(): void {
    this.#leave();
    super.disconnectedCallback();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    if (this.#game?.id === this.gameId) return;
    this.#leave();
    this.trouble = '';
    const game = new LookbackStore(this.app, this.store, this.gameId);
    this.#unsubscribe = game.subscribe(() => this.requestUpdate());
    this.#game = game;
    void game.open();
  }

  protected override render(): unknown {
    const game = this.#game;
    if (game === null) return nothing;
    const { record } = game;
    return html`<a class="plain screen" href=${journalLink('games')}>← ${words.back}</a>
      ${record === null ? nothing : this.#head(record)}
      ${
        this.trouble === ''
          ? nothing
          : html`<wr-notice tone="bad" @notice-closed=${this.#calm}>${this.trouble}</wr-notice>`
      }
      ${this.#body(game)}
      ${
        record === null || game.status === 'thinking'
          ? nothing
          : html`<wr-details
              .record=${record}
              .notes=${notesOfGame(record)}
              @details-changed=${({ detail }: CustomEvent<DetailsChanged>) => this.#do(game.change(detail.change), words.details.saved)}
              @note-written=${(event: CustomEvent<NoteWritten>) => this.#note(game, event)}
            ></wr-details>`
      }`;
  }

  readonly #calm = (): void => {
    this.trouble = '';
  };

  #head(record: GameRecord): unknown {
    const game = this.store.game(record.id);
    const facts: readonly (readonly [string, string])[] = [
      [words.facts.seat, game?.seat ?? words.facts.noSeat],
      [words.facts.place, record.place],
      [words.facts.card, [game?.cardTitle, game?.season].filter(Boolean).join(' · ')],
      [
        isOver(record) ? words.facts.result : words.facts.sofar,
        [game?.stage, game?.section].filter(Boolean).join(' · '),
      ],
      [words.facts.points, game === undefined || game.points === null ? '' : journalWords.points(game.points)],
    ];
    return html`<h2>${whenOf(record)}</h2>
      <dl>
        ${facts
          .filter(([, value]) => value !== '')
          .map(
            ([name, value]) =>
              html`<dt>${name}</dt>
                <dd>${value}</dd>`,
          )}
      </dl>
      <div class="row screen">
        <wr-button @click=${() => this.#open(record.id)}>${words.table}</wr-button>
        <wr-button ?disabled=${this.#game?.status !== 'done'} @click=${() => window.print()}>${words.print}</wr-button>
        <wr-button @click=${() => saveGame(record)}>${words.save}</wr-button>
      </div>`;
  }

  #body(game: LookbackStore): unknown {
    switch (game.status) {
      case 'opening':
        return html`<p>${words.waiting}</p>`;
      case 'gone':
        return html`<p>${words.gone}</p>`;
      case 'no-deal':
        return html`<p>${words.nothing}</p>`;
      case 'thinking':
        return html`<div class="row">
          <span role="status">${words.thinking}</span>
          <progress aria-label=${words.thinking} max="1" .value=${game.share}></progress>
          <wr-button @click=${() => game.stop()}>${words.stop}</wr-button>
        </div>`;
      case 'stopped':
      case 'failed':
        return html`<wr-notice
          tone=${game.status === 'failed' ? 'bad' : 'info'}
          .closable=${false}
          action=${words.start}
          @notice-action=${() => game.think()}
          >${game.status === 'failed' ? `${words.failed} ${game.trouble}` : words.stopped}</wr-notice
        >`;
      case 'done':
        return this.#review(game);
    }
  }

  /** How the look ahead stands, which follows the exact review. */
  #ahead(game: LookbackStore): unknown {
    const { ahead } = words;
    if (game.aheadStatus === 'done')
      return html`<div class="row screen still"><span role="status">${ahead.done}</span></div>`;
    if (game.aheadStatus !== 'thinking') {
      return html`<wr-notice
        class="screen"
        .closable=${false}
        action=${ahead.start}
        @notice-action=${() => game.lookAhead()}
        >${game.aheadStatus === 'failed' ? ahead.failed : ahead.stopped}</wr-notice
      >`;
    }
    return html`<div class="row screen still">
      <span role="status">${ahead.working}</span>
      <progress aria-label=${ahead.working} max="1" .value=${game.share}></progress>
      <wr-button @click=${() => game.stop()}>${ahead.stop}</wr-button>
    </div>`;
  }

  #review(game: LookbackStore): unknown {
    const { review, record, trouble } = game;
    if (review === null || record === null) return nothing;
    return html`${trouble === '' ? nothing : html`<wr-notice tone="warn" .closable=${false}>${trouble}</wr-notice>`}
      <wr-ledger .ledger=${review.ledger} .events=${record.events} model=${review.model}></wr-ledger>
      ${this.#ahead(game)}
      <wr-decisions
        .review=${review}
        .record=${record}
        .worker=${this.store.worker}
        ?awaited=${game.aheadStatus === 'thinking'}
        @note-written=${(event: CustomEvent<NoteWritten>) => this.#game !== null && this.#note(this.#game, event)}
      ></wr-decisions>`;
  }

  #note(game: LookbackStore, event: CustomEvent<NoteWritten>): void {
    event.stopPropagation();
    const { text, about } = event.detail;
    this.#do(game.note(text, about), words.notes.kept);
  }

  #do(task: Promise<Result<null>>, done: string): void {
    void this.#tell(task, done);
  }

  async #tell(task: Promise<Result<null>>, done: string): Promise<void> {
    const answer = await task;
    this.trouble = answer.ok ? '' : answer.problem.message;
    if (answer.ok) announce(done);
  }

  async #open(id: string): Promise<void> {
    const opened = await openAtTable(this.app, id);
    this.trouble = opened.ok ? '' : opened.problem.message;
  }

  #leave(): void {
    this.#unsubscribe?.();
    this.#game?.stop();
  }
}

/** One game on its own, in the form of its file, which can be brought in elsewhere. */
function saveGame(record: GameRecord): void {
  const name = `${record.id}.windrow-game.json`;
  saveFile(name, 'application/json', writeGameFile(record));
  announce(words.savedAs(name));
}

function isOver({ events }: GameRecord): boolean {
  return events.some(({ type }) => type === 'ended');
}

function notesOfGame({ events }: GameRecord): string[] {
  return events.flatMap((event) => (event.type === 'noted' && event.about === undefined ? [event.text] : []));
}

customElements.define('wr-lookback', WrLookback);

declare global {
  interface HTMLElementTagNameMap {
    'wr-lookback': WrLookback;
  }
}

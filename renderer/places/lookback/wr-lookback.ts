import { html, nothing, type PropertyValues } from 'lit';
import type { Result } from '../../../core/base/result.ts';
import type { GameRecord } from '../../../core/game/record.ts';
import { resultSentence } from '../../../core/review/story.ts';
import { saveGameFile } from '../../backup/save-file.ts';
import { announce } from '../../parts/announcer.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-notice.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { paperStyles } from '../../charts/chart-styles.ts';
import { data, element, state } from '../../parts/element.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { adviceWords } from '../../words/advice.ts';
import { journalWords } from '../../words/journal.ts';
import { lookbackWords as words } from '../../words/lookback.ts';
import { shellWords } from '../../words/shell.ts';
import { whenOf } from '../journal/journal-game.ts';
import type { JournalStore } from '../journal/journal-store.ts';
import { openAtTable, journalLink } from '../journal/routes.ts';
import { LookbackStore } from './lookback-store.ts';
import { lookbackStyles } from './lookback-styles.ts';
import type { NoteWritten } from './wr-decision.ts';
import './wr-decisions.ts';
import type { WrDecisions } from './wr-decisions.ts';
import './wr-details.ts';
import type { DetailsChanged } from './wr-details.ts';
import './wr-ledger.ts';
import './wr-story.ts';
import type { ChoiceWanted } from './wr-story.ts';

const Base = element({
  app: data<AppContext>(),
  store: data<JournalStore>(),
  gameId: data<string>(),
  trouble: state(''),
});

/** The look-back of a game: its story, every choice and the course of the chance in folds, and what the player writes. */
export class WrLookback extends Base {
  static override styles = [sharedStyles, placeStyles, lookbackStyles, paperStyles];

  #game: LookbackStore | null = null;
  #unsubscribe: (() => void) | null = null;

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
      ${this.#body(game)} ${record !== null && this.#isSettled(game) ? this.#about(game, record) : nothing}`;
  }

  /** Nothing more will come by itself: what stands below the story would be moved by it. */
  #isSettled({ status, isTold }: LookbackStore): boolean {
    return status === 'done' ? isTold : status === 'no-deal' || status === 'stopped' || status === 'failed';
  }

  /** What can be done with the game, and what the player writes about it. */
  #about(game: LookbackStore, record: GameRecord): unknown {
    return html`<div class="row screen">
        <wr-button @click=${() => this.#open(record.id)}>${words.table}</wr-button>
        <wr-button ?disabled=${!game.isTold} @click=${() => window.print()}>${words.print}</wr-button>
        <wr-button @click=${() => announce(shellWords.savedAs(saveGameFile(record)))}>${words.save}</wr-button>
      </div>
      <wr-details
        .record=${record}
        .notes=${notesOfGame(record)}
        @details-changed=${({ detail }: CustomEvent<DetailsChanged>) => this.#do(game.change(detail.change), words.details.saved)}
        @note-written=${(event: CustomEvent<NoteWritten>) => this.#note(game, event)}
      ></wr-details>`;
  }

  readonly #calm = (): void => {
    this.trouble = '';
  };

  /** How the game came out, and when, where and with which card it was played. */
  #head(record: GameRecord): unknown {
    const game = this.store.game(record.id);
    const points = game === undefined || game.points === null ? '' : journalWords.points(game.points);
    const card = [game?.cardTitle, game?.season].filter(Boolean).join(' · ');
    const advice = record.advice === undefined ? '' : adviceWords.played[record.advice];
    return html`<div class="head">
      <h2>${resultSentence(record)}</h2>
      <p class="soft">${[whenOf(record), record.place, card, points, advice].filter(Boolean).join(' · ')}</p>
    </div>`;
  }

  #body(game: LookbackStore): unknown {
    switch (game.status) {
      case 'opening':
      case 'none':
        return html`<p>${words.waiting}</p>`;
      case 'gone':
        return html`<p>${words.gone}</p>`;
      case 'no-deal':
        return html`<p>${words.nothing}</p>`;
      case 'pending':
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
          @notice-action=${() => game.lookBack()}
          >${game.status === 'failed' ? `${words.failed} ${game.trouble}` : words.stopped}</wr-notice
        >`;
      case 'done':
        return this.#review(game);
    }
  }

  /** How the look ahead stands, which follows the exact review. */
  #ahead(game: LookbackStore): unknown {
    const { ahead } = words;
    if (game.ahead !== 'pending') {
      return html`<wr-notice
        class="screen"
        .closable=${false}
        action=${ahead.start}
        @notice-action=${() => game.lookBack()}
        >${game.ahead === 'failed' ? ahead.failed : ahead.stopped}</wr-notice
      >`;
    }
    return html`<div class="row screen still">
      <span role="status">${ahead.working}</span>
      <progress aria-label=${ahead.working} max="1" .value=${game.share}></progress>
      <wr-button @click=${() => game.stop()}>${ahead.stop}</wr-button>
    </div>`;
  }

  /** The story once all is known that it tells of, or was left off: until then only how far it has come. */
  #review(game: LookbackStore): unknown {
    const { review, record, trouble, isTold } = game;
    if (review === null || record === null) return nothing;
    if (!isTold) return this.#ahead(game);
    return html`${trouble === '' ? nothing : html`<wr-notice tone="warn" .closable=${false}>${trouble}</wr-notice>`}
      ${game.ahead === 'done' ? nothing : this.#ahead(game)}
      <wr-story .review=${review} .record=${record} @choice-wanted=${this.#showChoice}></wr-story>
      <details class="screen">
        <summary>${words.story.all(review.decisions.length)}</summary>
        <wr-decisions
          .review=${review}
          .record=${record}
          .tryAnother=${game.tryAnother}
          ?awaited=${game.ahead === 'pending'}
          @note-written=${(event: CustomEvent<NoteWritten>) => this.#game !== null && this.#note(this.#game, event)}
        ></wr-decisions>
      </details>
      <details class="screen">
        <summary>${words.story.course}</summary>
        <wr-ledger .ledger=${review.ledger} .events=${record.events} model=${review.model}></wr-ledger>
      </details>`;
  }

  /** Opens the list at a choice that the story tells of. */
  readonly #showChoice = ({ detail }: CustomEvent<ChoiceWanted>): void => {
    const list = this.renderRoot.querySelector<WrDecisions>('wr-decisions');
    list?.closest('details')?.setAttribute('open', '');
    void list?.show(detail.decision);
  };

  #note(game: LookbackStore, event: CustomEvent<NoteWritten>): void {
    event.stopPropagation();
    const { text, about } = event.detail;
    this.#do(game.note(text, about), words.notes.kept);
  }

  #do(task: Promise<Result<null>>, done: string): void {
    void this.#announceWhenDone(task, done);
  }

  async #announceWhenDone(task: Promise<Result<null>>, done: string): Promise<void> {
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

function notesOfGame({ events }: GameRecord): string[] {
  return events.flatMap((event) => (event.type === 'noted' && event.about === undefined ? [event.text] : []));
}

customElements.define('wr-lookback', WrLookback);

import { css, html, LitElement, nothing } from 'lit';
import { paperStyles } from '../../charts/paper-styles.ts';
import '../../charts/wr-bars.ts';
import { howCounted } from '../../parts/how-counted.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-notice.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { countedWords } from '../../words/counted.ts';
import { journalWords, seasonWords as words } from '../../words/journal.ts';
import { filtersInUse } from './filter-options.ts';
import type { JournalGame } from './journal-game.ts';
import { journalStyles } from './journal-styles.ts';
import type { JournalStore } from './journal-store.ts';
import { costChart } from './season-charts.ts';
import { awaySection, jokersSection, pointsSection, sectionsSection, winsSection } from './season-sections.ts';
import { StudyRun } from './study-run.ts';

/** The season in numbers: charts that print, each with its table. */
export class WrSeasonView extends LitElement {
  static override properties = {
    store: { attribute: false },
  };

  declare store: JournalStore;

  static override styles = [
    sharedStyles,
    placeStyles,
    journalStyles,
    paperStyles,
    css`
      .lead {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-2) var(--space-4);
      }

      @media print {
        h2 {
          break-after: avoid;
        }
      }
    `,
  ];

  #run: StudyRun | null = null;

  constructor() {
    super();
    new StoreController(this, () => [this.store]);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#run = new StudyRun(this.store, () => this.requestUpdate());
    void this.#run.run('figures', this.store.shown);
  }

  override disconnectedCallback(): void {
    this.#run?.stop();
    super.disconnectedCallback();
  }

  protected override render(): unknown {
    const { shown } = this.store;
    if (shown.length === 0) return html`<p>${words.none}</p>`;
    const isMeasuring = this.#run?.progress?.task === 'figures';
    return html`<div class="lead">
        <p>${words.lead(shown.length)}</p>
        <wr-button @click=${() => window.print()}>${words.print}</wr-button>
      </div>
      ${filtersInUse(this.store.filter) > 0 ? html`<p class="soft">${words.filtered}</p>` : nothing} ${this.#progress()}
      ${winsSection(shown)} ${jokersSection(shown)} ${pointsSection(shown)} ${this.#cost(shown)}
      ${isMeasuring ? nothing : this.#measured(shown)}`;
  }

  /** What must be measured first: last, and only once it is whole, so that nothing moves meanwhile. */
  #measured(shown: readonly JournalGame[]): unknown {
    const season = this.store.asSeason(shown);
    return html`${sectionsSection(season)} ${awaySection(season)}`;
  }

  #progress(): unknown {
    const progress = this.#run?.progress ?? null;
    const trouble = this.#run?.trouble ?? '';
    const notice = trouble === '' ? nothing : html`<wr-notice tone="bad" .closable=${false}>${trouble}</wr-notice>`;
    if (progress === null)
      return html`${notice}
        <div class="progress"></div>`;
    const told = (progress.task === 'figures' ? journalWords.measuring : journalWords.judging)(
      progress.done,
      progress.of,
    );
    return html`${notice}
      <div class="progress">
        <wr-button @click=${() => this.#run?.stop()}>${journalWords.stop}</wr-button>
        <progress aria-label=${told} .max=${progress.of} .value=${progress.done}></progress>
        <span>${told}</span>
      </div>`;
  }

  #cost(games: readonly JournalGame[]): unknown {
    const judged = games.filter((game) => this.#choicesOf(game) !== null);
    const choices = [...judged].reverse().flatMap((game) => this.#choicesOf(game) ?? []);
    const free = choices.filter(({ forced }) => !forced).length;
    const { parts, table } = costChart(choices);
    const due = games.length - judged.length;
    return html`<section aria-labelledby="cost">
      <h2 id="cost">${words.cost}</h2>
      ${howCounted(countedWords.cost)}
      ${
        free === 0
          ? html`<p>${words.costNone}</p>`
          : html`<p>
                ${words.costLead(free, journalWords.games(judged.length))} ${words.costForced} ${words.costMeaning}
              </p>
              <wr-bars label=${words.cost} .rows=${parts} .table=${table} .most=${1}></wr-bars>
              <p class="soft">${words.trendNote}</p>`
      }
      ${
        due === 0
          ? nothing
          : html`<p class="soft">${words.judgeLead}</p>
              <wr-button
                ?disabled=${(this.#run?.progress ?? null) !== null}
                @click=${() => this.#run?.run('choices', games)}
                >${words.judge(due)}</wr-button
              >`
      }
    </section>`;
  }

  #choicesOf(game: JournalGame): NonNullable<ReturnType<JournalStore['findingsOf']>>['choices'] {
    return this.store.findingsOf(game)?.choices ?? null;
  }
}

customElements.define('wr-season-view', WrSeasonView);

declare global {
  interface HTMLElementTagNameMap {
    'wr-season-view': WrSeasonView;
  }
}

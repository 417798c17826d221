import { css, html, LitElement, nothing } from 'lit';
import { winRates } from '../../../core/journal/season.ts';
import { paperStyles } from '../../charts/paper-styles.ts';
import '../../charts/wr-bars.ts';
import '../../charts/wr-course.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-notice.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { journalWords, seasonWords as words } from '../../words/journal.ts';
import { inWords, percent, tenths } from '../../words/numbers.ts';
import { filtersInUse } from './filter-options.ts';
import type { JournalGame } from './journal-game.ts';
import { journalStyles } from './journal-styles.ts';
import type { JournalStore } from './journal-store.ts';
import {
  awayChart,
  costChart,
  jokerChart,
  meanJokers,
  pointsChart,
  sectionChart,
  signed,
  winChart,
} from './season-charts.ts';
import { StudyRun } from './study-run.ts';

/** Below so many decided games the page says how little they tell. */
const FEW = 30;

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
    return html`<div class="lead">
        <p>${words.lead(shown.length)}</p>
        <wr-button @click=${() => window.print()}>${words.print}</wr-button>
      </div>
      ${filtersInUse(this.store.filter) > 0 ? html`<p class="soft">${words.filtered}</p>` : nothing} ${this.#progress()}
      ${this.#wins(shown)} ${this.#sections(shown)} ${this.#away(shown)} ${this.#jokers(shown)} ${this.#cost(shown)}
      ${this.#points(shown)}`;
  }

  #progress(): unknown {
    const progress = this.#run?.progress ?? null;
    const trouble = this.#run?.trouble ?? '';
    const notice = trouble === '' ? nothing : html`<wr-notice tone="bad" .closable=${false}>${trouble}</wr-notice>`;
    if (progress === null) return notice;
    const told = (progress.task === 'figures' ? journalWords.measuring : journalWords.judging)(
      progress.done,
      progress.of,
    );
    return html`${notice}
      <div class="progress">
        <span>${told}</span>
        <progress aria-label=${told} .max=${progress.of} .value=${progress.done}></progress>
        <wr-button @click=${() => this.#run?.stop()}>${journalWords.stop}</wr-button>
      </div>`;
  }

  #wins(games: readonly JournalGame[]): unknown {
    const { all } = winRates(games);
    const { parts, table } = winChart(games);
    return html`<section aria-labelledby="wins">
      <h2 id="wins">${words.wins}</h2>
      ${
        all.share === null
          ? nothing
          : html`<p>${words.winsLead(percent(all.share), inWords(all.share), all.hits, all.of)}</p>`
      }
      ${all.of < FEW ? html`<p class="soft">${words.winsFew}</p>` : nothing}
      <wr-bars label=${words.wins} .rows=${parts} .table=${table} .most=${0.5} .tick=${percent}></wr-bars>
      <p class="soft">${words.interval}</p>
    </section>`;
  }

  #sections(games: readonly JournalGame[]): unknown {
    const { parts, table } = sectionChart(this.store.asSeason(games));
    if (parts.length === 0) return nothing;
    return html`<section aria-labelledby="sections">
      <h2 id="sections">${words.sections}</h2>
      <p>${words.sectionsLead}</p>
      <wr-bars
        label=${words.sections}
        .rows=${parts}
        .table=${table}
        .most=${4}
        .keys=${[
          { fill: 'stripes', label: words.aimed },
          { fill: 'solid', label: words.won },
        ]}
      ></wr-bars>
    </section>`;
  }

  #away(games: readonly JournalGame[]): unknown {
    const { parts, table } = awayChart(this.store.asSeason(games));
    if (parts.length === 0) return nothing;
    return html`<section aria-labelledby="away">
      <h2 id="away">${words.away}</h2>
      <p>${words.awayLead}</p>
      <wr-course label=${words.away} .points=${parts} .table=${table} .most=${8} .least=${0}></wr-course>
    </section>`;
  }

  #jokers(games: readonly JournalGame[]): unknown {
    const mean = meanJokers(games);
    if (mean === null) return nothing;
    const { parts, table } = jokerChart(games);
    return html`<section aria-labelledby="jokers">
      <h2 id="jokers">${words.jokers}</h2>
      <p>${words.jokersLead(tenths(mean))}</p>
      <wr-bars label=${words.jokers} .rows=${parts} .table=${table} .most=${4}></wr-bars>
    </section>`;
  }

  #cost(games: readonly JournalGame[]): unknown {
    const judged = games.filter((game) => this.#choicesOf(game) !== null);
    const choices = [...judged].reverse().flatMap((game) => this.#choicesOf(game) ?? []);
    const free = choices.filter(({ forced }) => !forced).length;
    const { parts, table } = costChart(choices);
    const due = games.length - judged.length;
    return html`<section aria-labelledby="cost">
      <h2 id="cost">${words.cost}</h2>
      ${
        free === 0
          ? html`<p>${words.costNone}</p>`
          : html`<p>${words.costLead(free, journalWords.games(judged.length))} ${words.costForced}</p>
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

  #points(games: readonly JournalGame[]): unknown {
    const { parts, table } = pointsChart(games);
    if (parts.length < 2) return nothing;
    const total = parts.at(-1)?.value ?? 0;
    return html`<section aria-labelledby="points">
      <h2 id="points">${words.gone}</h2>
      <p>${words.goneLead(signed(total), parts.length - 1)}</p>
      <wr-course
        label=${words.gone}
        shape="steps"
        .points=${parts}
        .table=${table}
        .least=${-50}
        .most=${50}
        .tick=${signed}
      ></wr-course>
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

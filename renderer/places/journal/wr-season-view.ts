import { css, html, nothing, type PropertyValues } from 'lit';
import { paperStyles } from '../../charts/chart-styles.ts';
import '../../charts/wr-bars.ts';
import '../../charts/wr-course.ts';
import { data, element } from '../../parts/element.ts';
import { howCounted } from '../../parts/how-counted.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-notice.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { adviceWords } from '../../words/advice.ts';
import { countedWords } from '../../words/counted.ts';
import { journalWords, seasonWords as words } from '../../words/journal.ts';
import { inWords, percent, signed, tenths } from '../../words/numbers.ts';
import { filtersInUse } from './filter-options.ts';
import type { AppContext } from '../../shell/app-context.ts';
import type { JournalStore } from './journal-store.ts';
import { journalStyles } from './journal-styles.ts';
import { type SeasonCharts, SeasonSums } from './season-sums.ts';
import { StudyRun } from './study-run.ts';
import './wr-own-table.ts';

const Base = element({
  app: data<AppContext>(),
  store: data<JournalStore>(),
});

/** The season in numbers: charts that print, each with its table. */
export class WrSeasonView extends Base {
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
  #sums: SeasonSums | null = null;

  constructor() {
    super();
    new StoreController(
      this,
      () => [this.store],
      () => [this.store.games, this.store.counted, this.#isMeasuring ? 0 : this.store.known],
    );
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#run = new StudyRun(this.store, this.app, () => this.requestUpdate());
    this.#sums = new SeasonSums(this.store, () => this.requestUpdate());
    void this.#run.run('figures', this.store.counted);
  }

  override disconnectedCallback(): void {
    this.#run?.stop();
    this.#sums?.stop();
    super.disconnectedCallback();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    this.#sums?.refresh(this.#isMeasuring);
  }

  get #isMeasuring(): boolean {
    return this.#run?.progress?.task === 'figures';
  }

  protected override render(): unknown {
    const { counted, examples } = this.store;
    if (counted.length === 0)
      return html`${this.#whose()}
        <p>${words.none}</p>`;
    const { wins, advice, jokers, points, luck, cost, sections, away } = this.#sums?.charts ?? {};
    return html`<div class="lead">
        <p>${examples ? words.examplesLead(counted.length) : words.lead(counted.length)}</p>
        <wr-button @click=${() => window.print()}>${words.print}</wr-button>
      </div>
      ${this.#whose()} ${filtersInUse(this.store.filter) > 0 ? html`<p class="soft">${words.filtered}</p>` : nothing}
      ${this.#progress()} ${drawn(wins, winsSection)} ${drawn(advice, adviceSection)} ${drawn(jokers, jokersSection)}
      ${drawn(points, pointsSection)} ${drawn(luck, luckSection)} ${drawn(cost, (chart) => this.#cost(chart))}
      ${examples || cost === undefined ? nothing : html`<wr-own-table .app=${this.app} .games=${counted}></wr-own-table>`}
      ${
        // What must be measured first: last, and only once it is whole, so that nothing moves meanwhile.
        this.#isMeasuring ? nothing : [drawn(sections, sectionsSection), drawn(away, awaySection)]
      }`;
  }

  /** Own games or examples, where there are both; a choice by the filter of the list. */
  #whose(): unknown {
    const { games, filter, examples } = this.store;
    if (new Set((games ?? []).map(({ demo }) => demo)).size < 2) return nothing;
    const { demo: _, ...rest } = filter;
    return html`<wr-choice
      label=${words.whose}
      labelHidden
      .options=${[
        { value: 'false', label: journalWords.mine },
        { value: 'true', label: journalWords.demoOnly },
      ]}
      .value=${String(examples)}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => {
        this.store.narrow(detail.value === 'true' ? { ...rest, demo: true } : rest);
        void this.#run?.run('figures', this.store.counted);
      }}
    ></wr-choice>`;
  }

  #stopped(): unknown {
    const { stopped = '', task = 'figures' } = this.#run ?? {};
    if (stopped === '') return nothing;
    const again = (): void => void this.#run?.run(task, this.store.counted);
    return html`<wr-notice tone="bad" action=${journalWords.retry} .closable=${false} @notice-action=${again}
      >${words.notMeasured} ${stopped}</wr-notice
    >`;
  }

  #progress(): unknown {
    const progress = this.#run?.progress ?? null;
    const trouble = this.#run?.trouble ?? '';
    const notice = html`${trouble === '' ? nothing : html`<wr-notice tone="bad" .closable=${false}>${trouble}</wr-notice>`}
    ${this.#stopped()}`;
    if (progress === null)
      return html`${notice}
        <div class="progress"></div>`;
    const sentence = (progress.task === 'figures' ? journalWords.measuring : journalWords.judging)(
      progress.done,
      progress.of,
    );
    return html`${notice}
      <div class="progress">
        <wr-button @click=${() => this.#run?.stop()}>${journalWords.stop}</wr-button>
        <progress aria-label=${sentence} .max=${progress.of} .value=${progress.done}></progress>
        <span>${sentence}</span>
      </div>`;
  }

  #cost({ parts, table, free, judged, due }: SeasonCharts['cost']): unknown {
    return html`<section aria-labelledby="cost">
      <h2 id="cost">${words.cost}</h2>
      ${howCounted(countedWords.cost)}
      ${
        free === 0
          ? html`<p>${words.costNone}</p>`
          : html`<p>${words.costLead(free, journalWords.games(judged))} ${words.costForced} ${words.costMeaning}</p>
              <wr-bars label=${words.cost} .rows=${parts} .table=${table} .most=${1}></wr-bars>
              <p class="soft">${words.trendNote}</p>`
      }
      ${
        due === 0
          ? nothing
          : html`<p class="soft">${words.judgeLead}</p>
              <wr-button
                ?disabled=${(this.#run?.progress ?? null) !== null}
                @click=${() => this.#run?.run('choices', this.store.counted)}
                >${words.judge(due)}</wr-button
              >`
      }
    </section>`;
  }
}

/** Nothing for a chart that has nothing to show, or is not there yet. */
function drawn<Chart>(chart: Chart | null | undefined, section: (chart: Chart) => unknown): unknown {
  return chart === null || chart === undefined ? nothing : section(chart);
}

/** With fewer decided games than this the page says that they prove little. */
const FEW = 30;

/** How often the user wins, in all and by seat, with intervals. */
function winsSection({ parts, table, all }: SeasonCharts['wins']): unknown {
  return html`<section aria-labelledby="wins">
    <h2 id="wins">${words.wins}</h2>
    ${howCounted(countedWords.wins)}
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

/** How often the user wins with advice at the Table and without. */
function adviceSection({ parts, table, rates }: NonNullable<SeasonCharts['advice']>): unknown {
  return html`<section aria-labelledby="advice">
    <h2 id="advice">${adviceWords.season}</h2>
    ${howCounted(countedWords.wins)}
    <p>
      ${rates.map(({ advice, rate }) => `${adviceWords.wonOf(adviceWords.played[advice ?? 'unknown'], rate.hits, rate.of)} `)}
    </p>
    <wr-bars label=${adviceWords.season} .rows=${parts} .table=${table} .most=${0.5} .tick=${percent}></wr-bars>
  </section>`;
}

/** What luck and choices moved, of the games that were looked back at. */
function luckSection({ parts, table, games }: NonNullable<SeasonCharts['luck']>): unknown {
  return html`<section aria-labelledby="luck">
    <h2 id="luck">${words.luck}</h2>
    ${howCounted(countedWords.ledger)}
    <p>${words.luckLead(journalWords.games(games))}</p>
    <wr-bars label=${words.luck} .rows=${parts} .table=${table} .most=${1}></wr-bars>
  </section>`;
}

/** Which sections were aimed at, and which were won with. */
function sectionsSection({ parts, table }: SeasonCharts['sections']): unknown {
  if (parts.length === 0) return nothing;
  return html`<section aria-labelledby="sections">
    <h2 id="sections">${words.sections}</h2>
    ${howCounted(countedWords.sections)}
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

/** How far the best hand was away: at the deal, after each pass, at the end. */
function awaySection({ parts, table }: SeasonCharts['away']): unknown {
  if (parts.length === 0) return nothing;
  return html`<section aria-labelledby="away">
    <h2 id="away">${words.away}</h2>
    ${howCounted(countedWords.away)}
    <p>${words.awayLead}</p>
    <wr-course label=${words.away} .points=${parts} .table=${table} .most=${8} .least=${0}></wr-course>
  </section>`;
}

/** How many jokers were dealt. */
function jokersSection({ parts, table, mean }: NonNullable<SeasonCharts['jokers']>): unknown {
  return html`<section aria-labelledby="jokers">
    <h2 id="jokers">${words.jokers}</h2>
    ${howCounted(countedWords.jokers)}
    <p>${words.jokersLead(tenths(mean))}</p>
    <wr-bars label=${words.jokers} .rows=${parts} .table=${table} .most=${4}></wr-bars>
  </section>`;
}

/** The points won and lost, game by game. */
function pointsSection({ parts, table }: SeasonCharts['points']): unknown {
  if (parts.length < 2) return nothing;
  const total = parts.at(-1)?.value ?? 0;
  return html`<section aria-labelledby="points">
    <h2 id="points">${words.gone}</h2>
    ${howCounted(countedWords.points)}
    <p>${words.goneLead(signed(total), parts.length - 1)}</p>
    <wr-course
      label=${words.gone}
      shape="steps"
      .points=${parts}
      .table=${table}
      .least=${-50}
      .most=${50}
      .tick=${(points: number) => signed(points)}
    ></wr-course>
  </section>`;
}

customElements.define('wr-season-view', WrSeasonView);

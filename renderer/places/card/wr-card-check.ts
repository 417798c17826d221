import { css, html, nothing } from 'lit';
import type { CardDocument } from '../../../core/card/document.ts';
import { sectionName, textField } from '../../../core/card/document.ts';
import type { CardStatistics } from '../../../core/card/statistics.ts';
import { data, element } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import { howCounted } from '../../parts/how-counted.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-notice.ts';
import type { TabChosen } from '../../parts/wr-tabs.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { countedWords } from '../../words/counted.ts';
import { percent, tenths } from '../../words/numbers.ts';
import type { Selection } from './card-editor.ts';
import type { CardRoom } from './card-room.ts';
import { cardStyles } from './card-styles.ts';
import './wr-figures.ts';
import { tileBar } from './wr-figures.ts';

const words = cardWords.check;

/** Something to look at: where it is, and what is said of it. */
interface Remark {
  readonly section: string;
  readonly id: string;
  readonly column: number;
  readonly message: string;
}

/** The pairs of sections that are shown; with many sections there are hundreds. */
const MOST_PAIRS = 12;

const Base = element({
  room: data<CardRoom>(),
});

/** What looks wrong on the card, and the card in numbers; every way of it is looked at in the background. */
export class WrCardCheck extends Base {
  static override styles = [
    sharedStyles,
    cardStyles,
    css`
      .remarks li {
        padding: var(--space-2) 0;
        border-top: 1px solid var(--hairline);
      }

      .where {
        font-weight: 700;
        overflow-wrap: anywhere;
      }

      .charts {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 24rem), 1fr));
        gap: var(--space-5);
        align-items: start;
      }
    `,
  ];

  #asked: CardDocument | null = null;

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  protected override willUpdate(): void {
    const document = this.room.editor?.document ?? null;
    if (document === this.#asked) return;
    this.#asked = document;
    void this.room.examine();
  }

  protected override render(): unknown {
    const { status, value, message } = this.room.examination;
    if (status === 'failed')
      return html`<wr-notice tone="bad" .closable=${false}>${words.failed} ${message}</wr-notice>`;
    if (value === null) return html`<p role="status" aria-busy="true">${words.busy}</p>`;
    const { problems, findings, statistics } = value;
    if (statistics.lines === 0 && problems.length === 0) return this.#empty();
    return html`<div class="stack">
      ${problems.length + findings.length === 0 ? this.#good() : nothing}
      ${this.#remarks(words.problems, words.problemsLead, problems)}
      ${this.#remarks(
        words.findings,
        words.findingsLead,
        findings.map((finding) => ({ ...finding, column: 0 })),
      )}
      ${this.#statistics(statistics)}
    </div>`;
  }

  #empty(): unknown {
    return html`<div class="sheet">
      <p>${words.empty}</p>
      <div><wr-button look="main" @click=${() => this.#goTo('lines')}>${words.toLines}</wr-button></div>
    </div>`;
  }

  #good(): unknown {
    return html`<wr-notice
      tone="good"
      action=${words.toProof}
      .closable=${false}
      @notice-action=${() => this.#goTo('proof')}
      >${words.good}</wr-notice
    >`;
  }

  #remarks(title: string, lead: string, remarks: readonly Remark[]): unknown {
    if (remarks.length === 0) return nothing;
    return html`<section class="sheet close">
      <h2>${title} (${remarks.length})</h2>
      <p>${lead}</p>
      <ul class="remarks">
        ${remarks.map((remark) => html`<li class="row spread">${this.#remark(remark)}</li>`)}
      </ul>
    </section>`;
  }

  #remark({ section, id, column, message }: Remark): unknown {
    const { arrived } = cardWords;
    const where = [section || arrived.wholeCard, id, column > 0 ? arrived.column(column) : ''].filter(Boolean);
    const place = this.#placeOf(section, id);
    return html`<div>
        <div class="where">${where.join(' · ')}</div>
        ${message}
      </div>
      ${
        place === null
          ? nothing
          : html`<wr-button
              label=${id === '' ? words.show : words.showLabel(id)}
              @click=${() => emit<Selection>(this, 'line-shown', place)}
              >${words.show}</wr-button
            >`
      }`;
  }

  /** The last line with this id: of two with the same one, that is the one to correct. */
  #placeOf(name: string, id: string): Selection | null {
    const sections = this.room.editor?.document.sections ?? [];
    const section = sections.findIndex((each, at) => sectionName(each, at) === name);
    if (section < 0) return null;
    const line = sections[section]?.lines.findLastIndex((each) => textField(each, 'id') === id) ?? -1;
    return { section, line: line < 0 ? null : line };
  }

  #statistics({ lines, ways, concealed, sections, lineWays, tiles, alike }: CardStatistics): unknown {
    return html`<section class="sheet">
      <h2>${words.statistics}</h2>
      ${howCounted(countedWords.card)}
      <p>${words.totals(cardWords.lines(lines), cardWords.ways(ways), concealed)}</p>
      <div class="charts">
        <wr-figures
          caption=${words.waysBySection}
          .heads=${[words.section, words.ways]}
          .bars=${sections.map((each) => ({ name: each.name, value: each.ways, shown: String(each.ways) }))}
        ></wr-figures>
        <div class="stack close">
          <wr-figures
            caption=${words.alike}
            .heads=${[words.pair, words.share]}
            .bars=${alike
              .slice(0, MOST_PAIRS)
              .map(({ one, other, shared }) => ({ name: `${one} – ${other}`, value: shared, shown: percent(shared) }))}
          ></wr-figures>
          <p class="soft">${words.alikeLead}</p>
        </div>
        <div class="stack close">
          <wr-figures
            caption=${words.tiles}
            .heads=${[words.tile, words.perLine]}
            .bars=${tiles.map(({ kind, perLine }) => tileBar(kind, perLine, tenths(perLine)))}
          ></wr-figures>
          <p class="soft">${words.tilesLead}</p>
        </div>
        <wr-figures
          caption=${words.waysByLine}
          .heads=${[words.line, words.ways]}
          .bars=${lineWays.map(({ id, ways: count }) => ({ name: id, value: count, shown: String(count) }))}
        ></wr-figures>
      </div>
    </section>`;
  }

  #goTo(id: string): void {
    emit<TabChosen>(this, 'view-requested', { id });
  }
}

customElements.define('wr-card-check', WrCardCheck);

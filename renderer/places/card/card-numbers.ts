import { html, type TemplateResult } from 'lit';
import type { CardStatistics } from '../../../core/card/statistics.ts';
import { howCounted } from '../../parts/how-counted.ts';
import { cardWords } from '../../words/card.ts';
import { countedWords } from '../../words/counted.ts';
import { percent, tenths } from '../../words/numbers.ts';
import './wr-figures.ts';
import { tileBar } from './wr-figures.ts';

const words = cardWords.check;

/** The pairs of sections that are shown; with many sections there are hundreds. */
const MOST_PAIRS = 12;

/** A card in numbers, each chart a table as well. */
export function cardNumbers({
  lines,
  ways,
  concealed,
  sections,
  lineWays,
  tiles,
  alike,
}: CardStatistics): TemplateResult {
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
        .bars=${lineWays.map(({ name, ways: count }) => ({ name, value: count, shown: String(count) }))}
      ></wr-figures>
    </div>
  </section>`;
}

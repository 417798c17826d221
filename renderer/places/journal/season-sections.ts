import { html, nothing } from 'lit';
import { type SeasonGame, winRates } from '../../../core/journal/season.ts';
import '../../charts/wr-bars.ts';
import '../../charts/wr-course.ts';
import { howCounted } from '../../parts/how-counted.ts';
import { countedWords } from '../../words/counted.ts';
import { seasonWords as words } from '../../words/journal.ts';
import { inWords, percent, tenths } from '../../words/numbers.ts';
import type { JournalGame } from './journal-game.ts';
import { awayChart, jokerChart, meanJokers, pointsChart, sectionChart, signed, winChart } from './season-charts.ts';

/** Below so many decided games the page says how little they tell. */
const FEW = 30;

/** How often the user wins, in all and by seat, with intervals. */
export function winsSection(games: readonly JournalGame[]): unknown {
  const { all } = winRates(games);
  const { parts, table } = winChart(games);
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

/** Which sections were aimed at, and which were won with. */
export function sectionsSection(games: readonly SeasonGame[]): unknown {
  const { parts, table } = sectionChart(games);
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
export function awaySection(games: readonly SeasonGame[]): unknown {
  const { parts, table } = awayChart(games);
  if (parts.length === 0) return nothing;
  return html`<section aria-labelledby="away">
    <h2 id="away">${words.away}</h2>
    ${howCounted(countedWords.away)}
    <p>${words.awayLead}</p>
    <wr-course label=${words.away} .points=${parts} .table=${table} .most=${8} .least=${0}></wr-course>
  </section>`;
}

/** How many jokers were dealt. */
export function jokersSection(games: readonly JournalGame[]): unknown {
  const mean = meanJokers(games);
  if (mean === null) return nothing;
  const { parts, table } = jokerChart(games);
  return html`<section aria-labelledby="jokers">
    <h2 id="jokers">${words.jokers}</h2>
    ${howCounted(countedWords.jokers)}
    <p>${words.jokersLead(tenths(mean))}</p>
    <wr-bars label=${words.jokers} .rows=${parts} .table=${table} .most=${4}></wr-bars>
  </section>`;
}

/** The points won and lost, game by game. */
export function pointsSection(games: readonly JournalGame[]): unknown {
  const { parts, table } = pointsChart(games);
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
      .tick=${signed}
    ></wr-course>
  </section>`;
}

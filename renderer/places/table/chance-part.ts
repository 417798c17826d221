import { html, nothing, type TemplateResult } from 'lit';
import '../../parts/wr-explain.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { inHundredShort } from '../../words/numbers.ts';
import { tableWords } from '../../words/table.ts';

const words = tableWords.reading;

/**
 * The chance to win, which explains itself: the only number of the Table that is one. `after`: the chance that a choice
 * leaves, where one stands beside it, so that no two numbers compete; else the chance as the game stands.
 */
export function chancePart({ analysis }: Pick<AppContext, 'analysis'>, after: number | null): TemplateResult {
  const { status, value, late } = analysis.chance;
  if (status === 'failed') return html`<p class="chance soft">${words.chanceFailed}</p>`;
  if (status === 'none') return html`<p class="chance soft"></p>`;
  if (value === null || (late && after === null)) return html`<p class="chance soft">${words.chancePending}</p>`;
  const { provisional, kind } = value;
  return html`<p class="chance">
    <wr-explain
      .value=${words.chance(inHundredShort(after ?? value.chance), provisional)}
      .heading=${words.chanceHeading}
      >${after === null ? nothing : html`${words.chanceAfter} `}${words.chanceWords(kind, provisional)}</wr-explain
    >
  </p>`;
}

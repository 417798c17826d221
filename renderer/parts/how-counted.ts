import { html } from 'lit';
import { type Counted, countedWords } from '../words/counted.ts';
import './wr-explain.ts';

/** A figure that opens what is counted in it, over what, and what is taken for granted. */
export function countedFigure(value: string, { heading, words }: Counted): unknown {
  return html`<wr-explain .value=${value} .heading=${heading}>${paragraphs(words)}</wr-explain>`;
}

/** The same for all figures of a chart or a table: stands above it, and is not printed. */
export function howCounted({ heading, words }: Counted): unknown {
  return html`<wr-explain quiet .value=${countedWords.open} .heading=${heading}>${paragraphs(words)}</wr-explain>`;
}

function paragraphs(words: readonly string[]): unknown {
  return words.map((each) => html`<p>${each}</p>`);
}

import { html, nothing, type TemplateResult } from 'lit';
import type { LineDocument } from '../../../core/card/document.ts';
import { HAND_SIZE } from '../../../core/card/pattern.ts';
import { cardWords } from '../../words/card.ts';
import { printedWay, readLine } from './line-reading.ts';
import { pointsFrom } from './points.ts';
import './wr-line-groups.ts';

const words = cardWords.line;

/** What the line at hand comes to while it is typed; `points` is what is being written as its points, if that is. */
export function liveLine(line: LineDocument, points: string | null): TemplateResult {
  const reading = readLine(line);
  const left = HAND_SIZE - reading.tiles;
  const rest = left > 0 ? ` · ${words.toGo(left)}` : left < 0 ? ` · ${words.tooMany(-left)}` : '';
  const ways = reading.whole ? ` · ${cardWords.ways(reading.ways.length)}` : '';
  const wrong = points !== null && points !== '' && pointsFrom(points) === null;
  return html`<p>
      <strong>${words.count(reading.tiles)}${rest}</strong>${ways}
      ${wrong ? html`<span class="bad" role="alert">${cardWords.grid.wrongPoints}</span>` : nothing}
    </p>
    <wr-line-groups fixed .reading=${reading} .way=${printedWay(reading)}></wr-line-groups>`;
}

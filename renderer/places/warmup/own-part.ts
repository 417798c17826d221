import { html, nothing } from 'lit';
import { nameOf } from '../../../core/tiles/names.ts';
import { Tiles } from '../../../core/tiles/tiles.ts';
import type { Attempt } from '../../../core/warmup/warm-up.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { AnswerView } from '../../worker/warm-up-calls.ts';
import { aimWords } from './aim-words.ts';
import { kindsOf } from './tile-row.ts';

const words = warmUpWords.answer;

/** The person's own aims, keepers and reasons beside what the engine found. */
export function ownPart({ keeps, why }: Attempt, { aims, tiles }: AnswerView): unknown {
  const kept = Tiles.of(kindsOf(keeps));
  const keepers = Tiles.of(tiles.filter(({ verdict }) => verdict !== 'spare').map(({ kind }) => kind));
  const right = kept.minus(kept.minus(keepers));
  const missed = keepers.minus(kept).distinct().map(nameOf).join(', ');
  return html`<section>
    ${aims.length === 0 ? nothing : html`<h3>${words.aims}</h3>`} ${aims.map((aim) => html`<p>${aimWords(aim)}</p>`)}
    ${
      kept.size === 0
        ? nothing
        : html`<h3>${words.keeps}</h3>
            <p>${words.keepsRight(right.size, kept.size)} ${missed === '' ? '' : words.keepsMissed(missed)}</p>`
    }
    ${
      why === ''
        ? nothing
        : html`<h3>${words.why}</h3>
            <p>${why}</p>`
    }
  </section>`;
}

import { css, html, nothing } from 'lit';
import { STEPS } from '../../../core/exchange/steps.ts';
import type { FoundDocument } from '../../../core/engine/practice-questions.ts';
import { kindsOf } from '../../../core/tiles/text.ts';
import { codeOfItem } from '../../../core/warmup/problem-code.ts';
import { tileRow } from '../../parts/tile/tile-row.ts';
import '../../parts/wr-button.ts';
import { practiceWords as words } from '../../words/practice.ts';
import { turnWords } from '../../words/sheets.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { PracticeRoom } from './practice-room.ts';
import type { WarmUpRun } from './warm-up-run.ts';

export const runHeadStyles = css`
  .head {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: 0 var(--space-4);
  }

  .head h2 {
    display: inline;
    margin-inline-end: var(--space-2);
  }

  .code,
  .clock {
    font-family: var(--font-code);
    font-size: var(--text-small);
  }
`;

/** What problem it is: its place, the seat and the step, how rare the deal was, the code, the clock if it is on. */
export function runHead(run: WarmUpRun, room: PracticeRoom, extra: unknown): unknown {
  const { item, about, rack, seconds, step } = run;
  const { sitting, options } = room;
  const isExchange = about.isExchange === true;
  const title = run.isReopened
    ? words.answer.title
    : isExchange
      ? words.passOf
      : sitting === null
        ? words.page.label
        : words.of(room.number, sitting.of);
  return html`<div class="head">
    <div>
      <h2>${title}</h2>
      <span class="soft">${words.turn(turnWords(item.seat, step ?? 'courtesy'), rack.size)}</span>
      ${item.code === undefined && about.isByCode !== true ? nothing : html`<span class="code">${words.code(codeOfItem(item))}</span>`}
      ${foundWords(about.found)}
    </div>
    <div class="row">
      ${options.clock && !run.isReopened ? html`<span class="clock" role="timer" aria-label=${words.clockLabel}>${words.clock(seconds)}</span>` : nothing}
      ${extra}
      <wr-button look="quiet" @click=${() => room.leave()}
        >${sitting === null ? words.page.leaveDeal : words.page.leave}</wr-button
      >
    </div>
  </div>`;
}

/** How many deals were tried to find this one, and how many are needed on average. */
function foundWords(found: FoundDocument | undefined): unknown {
  if (found === undefined || found.tried === 1) return nothing;
  const share = found.share === null ? '' : words.share(Math.round(1 / found.share));
  return html`<span class="soft">${words.tried(found.tried, share)}</span>`;
}

/** What came in by the last pass, and from which of the neighbours. */
export function cameRow({ cameIn }: WarmUpRun): unknown {
  if (cameIn === null) return nothing;
  return html`<p class="row">${words.cameIn[STEPS[cameIn.step].from]} ${tileRow(kindsOf(cameIn.tiles))}</p>`;
}

/** What was given away before, which can't come any more. */
export function goneRow({ warmUp }: WarmUpRun): unknown {
  const gone = [warmUp.item.gone, ...warmUp.past.map(({ attempt }) => attempt.give)].filter(Boolean).join(' ');
  return gone === '' ? nothing : html`<p class="row soft">${warmUpWords.run.gone} ${tileRow(kindsOf(gone))}</p>`;
}

import { html, nothing } from 'lit';
import '../../parts/wr-button.ts';
import { STAGES } from '../../../core/warmup/warm-up.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { FoundView } from '../../worker/warm-up-calls.ts';
import type { PracticeRoom } from './practice-room.ts';
import type { WarmUpRun } from './warm-up-run.ts';

const words = warmUpWords.run;

/** What problem it is: the step, the seat, how rare the deal was, the clock if wished, the code. */
export function runHead(run: WarmUpRun, room: PracticeRoom): unknown {
  const { item, about, rack, seconds, step } = run;
  const { sitting, wishes } = room;
  return html`<div class="row spread">
    <p>
      <strong>${warmUpWords.steps[step ?? 'courtesy']}</strong> · ${words.seat(item.seat, rack.size)}
      ${sitting === null ? nothing : html`<span class="soft">${words.nextOf(sitting.done, sitting.of)}</span>`}
      ${foundWords(about.found)}
    </p>
    <div class="row">
      ${wishes.clock ? html`<span class="clock" role="timer" aria-label=${words.clockLabel}>${words.clock(seconds)}</span>` : nothing}
      ${item.code === undefined ? nothing : html`<span class="code">${words.code(item.code)}</span>`}
      <wr-button look="quiet" @click=${() => room.leave()}>${words.leave}</wr-button>
    </div>
  </div>`;
}

/** How many deals were looked at to find this one, beside how many it takes on average. */
function foundWords(found: FoundView | undefined): unknown {
  if (found === undefined || found.tried === 1) return nothing;
  const share = found.share === null ? '' : words.share(Math.round(1 / found.share));
  return html`<span class="soft">${words.tried(found.tried, share)}</span>`;
}

/** The stages of the problem, the one at hand marked. */
export function stageList({ warmUp }: WarmUpRun): unknown {
  const now = STAGES.indexOf(warmUp.stage);
  return html`<ol class="stages" aria-label=${words.stagesLabel}>
    ${STAGES.map(
      (stage, place) =>
        html`<li class=${place < now ? 'past' : ''} aria-current=${place === now ? 'step' : nothing}>
          ${words.stages[stage]}
        </li>`,
    )}
  </ol>`;
}

import { css, html, nothing } from 'lit';
import '../../parts/wr-button.ts';
import { STAGES } from '../../../core/warmup/warm-up.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { FoundDocument } from '../../../core/engine/practice-questions.ts';
import type { PracticeRoom } from './practice-room.ts';
import type { WarmUpRun } from './warm-up-run.ts';

const words = warmUpWords.run;

export const runHeadStyles = css`
  .stages {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-1) var(--space-3);
    color: var(--ink-soft);
    font-size: var(--text-small);
  }

  .stages li {
    padding-bottom: 2px;
    border-bottom: 3px solid var(--hairline);
  }

  .stages .past {
    border-bottom-color: var(--edge);
  }

  .stages .past::before {
    content: '✓ ';
  }

  .stages [aria-current='step'] {
    border-bottom-color: var(--accent);
    color: var(--ink);
    font-weight: 700;
  }

  .code,
  .clock {
    font-family: var(--font-code);
    font-size: var(--text-small);
  }
`;

/** What problem it is: the step, the seat, how rare the deal was, the clock if it is on, the code. */
export function runHead(run: WarmUpRun, room: PracticeRoom): unknown {
  const { item, about, rack, seconds, step } = run;
  const { sitting, options } = room;
  return html`<div class="row spread">
    <p>
      <strong>${warmUpWords.steps[step ?? 'courtesy']}</strong> · ${words.seat(item.seat, rack.size)}
      ${sitting === null ? nothing : html`<span class="soft">${words.nextOf(sitting.done, sitting.of)}</span>`}
      ${foundWords(about.found)}
    </p>
    <div class="row">
      ${options.clock ? html`<span class="clock" role="timer" aria-label=${words.clockLabel}>${words.clock(seconds)}</span>` : nothing}
      ${item.code === undefined ? nothing : html`<span class="code">${words.code(item.code)}</span>`}
      <wr-button look="quiet" @click=${() => room.leave()}>${words.leave}</wr-button>
    </div>
  </div>`;
}

/** How many deals were tried to find this one, and how many are needed on average. */
function foundWords(found: FoundDocument | undefined): unknown {
  if (found === undefined || found.tried === 1) return nothing;
  const share = found.share === null ? '' : words.share(Math.round(1 / found.share));
  return html`<span class="soft">${words.tried(found.tried, share)}</span>`;
}

/** The stages of the problem, with the current one marked. */
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

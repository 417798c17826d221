import { css, html, nothing } from 'lit';
import { formatAnswerCode } from '../../../core/warmup/answer-code.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { practiceWords } from '../../words/practice.ts';
import type { PracticeRoom } from './practice-room.ts';
import type { WarmUpRun } from './warm-up-run.ts';
import { warmUpStyles } from './warm-up-styles.ts';

const words = practiceWords.page;

const Base = element({
  room: data<PracticeRoom>(),
  run: data<WarmUpRun>(),
  /** What was done last, in words. */
  status: state(''),
});

/** The code of an answer, which a pupil at home sends back to the teacher; only for a problem that came by its code. */
export class WrAnswerCode extends Base {
  static override styles = [
    sharedStyles,
    warmUpStyles,
    css`
      .code {
        font-family: var(--font-code);
        font-weight: 700;
        overflow-wrap: anywhere;
      }
    `,
  ];

  protected override render(): unknown {
    const { attempt, past } = this.run.warmUp;
    if (this.run.about.isByCode !== true || attempt === null || past.length > 0) return nothing;
    const code = formatAnswerCode(this.run.item, attempt, this.room);
    return html`<div class="row">
      <span>${words.answerCode} <span class="code">${code}</span></span>
      <wr-button look="quiet" @click=${() => this.#copy(code)}>${words.copyAnswerCode}</wr-button>
      <span role="status" class="soft">${this.status}</span>
    </div>`;
  }

  async #copy(code: string): Promise<void> {
    try {
      await navigator.clipboard.writeText(code);
      this.status = words.copied;
    } catch {
      this.status = words.notCopied;
    }
  }
}

customElements.define('wr-answer-code', WrAnswerCode);

import { css, html, nothing } from 'lit';
import type { Result } from '../../../core/base/result.ts';
import type { CardProblem } from '../../../core/card/check.ts';
import { textField } from '../../../core/card/document.ts';
import { data, element } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-notice.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import type { OpenedCard } from '../../../core/engine/card-questions.ts';
import type { LikeCard } from './card-room.ts';
import { cardStyles } from './card-styles.ts';
import { problemWords } from './problem-words.ts';

const words = cardWords.arrived;

/** A file that was chosen or dropped; `read` is null while it is being read. */
export interface ArrivedFile {
  readonly name: string;
  readonly read: Result<OpenedCard> | null;
  /** The card of its title and season that is here already, if there is one. */
  readonly like: LikeCard | null;
}

/** What `arrival-answered` carries. */
export interface ArrivalAnswer {
  /** `open`: the one that is here already. */
  readonly answer: 'keep' | 'open' | 'leave';
}

const Base = element({
  file: data<ArrivedFile>(),
});

/** What a card file holds, before anything is kept: its problems with their places, and the lines that are good. */
export class WrCardArrived extends Base {
  static override styles = [
    sharedStyles,
    cardStyles,
    css`
      .problems li {
        padding: var(--space-2) 0;
        border-top: 1px solid var(--hairline);
      }

      .where {
        font-weight: 700;
      }

      .lines {
        display: flex;
        flex-direction: column;
        gap: var(--space-1);
      }

      li {
        overflow-wrap: anywhere;
      }
    `,
  ];

  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('h2')?.focus();
  }

  protected override render(): unknown {
    const { name, read } = this.file;
    return html`<section class="sheet" aria-labelledby="arrived">
      <h2 id="arrived" tabindex="-1">${words.title(name)}</h2>
      ${read === null ? html`<p role="status">${words.reading}</p>` : read.ok ? this.#card(read.value) : this.#refused(read.problem.message)}
    </section>`;
  }

  #refused(message: string): unknown {
    return html`<wr-notice tone="bad" .closable=${false}>${words.refused} ${message} ${words.untouched}</wr-notice>
      <div><wr-button look="main" @click=${() => this.#answer('leave')}>${words.close}</wr-button></div>`;
  }

  #card({ document, problems, good }: OpenedCard): unknown {
    const title = [textField(document, 'title') || cardWords.untitled, textField(document, 'season')];
    const bad = problems.length > 0;
    const lines = cardWords.lines(good.length);
    const ways = good.reduce((sum, line) => sum + line.ways, 0);
    const said = bad ? words.bad(lines, words.problems(problems.length)) : words.good;
    return html`<p><strong>${title.filter(Boolean).join(' · ')}</strong><br />${lines}, ${cardWords.ways(ways)}</p>
      <wr-notice tone=${bad ? 'warn' : 'good'} .closable=${false}>${said} ${words.untouched}</wr-notice>
      ${this.#likeWords()}
      <div class="row">
        ${
          this.file.like?.same === true
            ? html`<wr-button look="main" @click=${() => this.#answer('open')}>${words.openSame}</wr-button>
                <wr-button @click=${() => this.#answer('keep')}>${words.keepSecond}</wr-button>`
            : html`<wr-button look="main" @click=${() => this.#answer('keep')}
                >${bad && this.file.like === null ? words.keepBad : words.keep}</wr-button
              >`
        }
        <wr-button @click=${() => this.#answer('leave')}>${words.leave}</wr-button>
      </div>
      ${bad ? problemList(problems) : nothing} ${this.#goodLines(good, bad)}`;
  }

  /** Whether the card is here already, or in how many lines it differs from the one that is. */
  #likeWords(): unknown {
    const { like } = this.file;
    if (like === null) return nothing;
    const said = like.same ? words.same : like.lines === 0 ? words.otherOrder : words.differs(like.lines);
    return html`<wr-notice tone="info" .closable=${false}>${said}</wr-notice>`;
  }

  #goodLines(good: OpenedCard['good'], open: boolean): unknown {
    const names = [...new Set(good.map(({ section }) => section))];
    return html`<details ?open=${open}>
      <summary>${words.linesTitle}</summary>
      ${names.map(
        (name) =>
          html`<h3>${name}</h3>
            <ul class="lines">
              ${good.filter(({ section }) => section === name).map(goodLine)}
            </ul>`,
      )}
    </details>`;
  }

  #answer(answer: ArrivalAnswer['answer']): void {
    emit<ArrivalAnswer>(this, 'arrival-answered', { answer });
  }
}

function goodLine({ pattern, ways }: OpenedCard['good'][number]): unknown {
  return html`<li>
    <span class="code">${pattern}</span>
    <span class="soft">${cardWords.ways(ways)}</span>
  </li>`;
}

/** Every problem with section, line and column. */
function problemList(problems: readonly CardProblem[]): unknown {
  return html`<div class="stack close">
    <h3>${words.what}</h3>
    <ul class="problems">
      ${problems.map(
        ({ name, column, ...problem }) =>
          html`<li>
            <div class="where">
              ${[name || words.wholeCard, column > 0 ? words.column(column) : ''].filter(Boolean).join(' · ')}
            </div>
            ${problemWords(problem)}
          </li>`,
      )}
    </ul>
  </div>`;
}

customElements.define('wr-card-arrived', WrCardArrived);

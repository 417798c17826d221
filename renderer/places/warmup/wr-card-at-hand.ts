import { css, html, nothing } from 'lit';
import type { HandDocument, ReadingDocument } from '../../../core/engine/documents.ts';
import type { Line } from '../../../core/card/card.ts';
import { aimAtLine, aimAtSection } from '../../../core/warmup/aims.ts';
import { data, element, state } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import { howCounted } from '../../parts/how-counted.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-hand.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { practiceWords } from '../../words/practice.ts';
import { countedWords } from '../../words/counted.ts';
import { cardWords } from '../../words/card.ts';
import type { PracticeRoom } from './practice-room.ts';
import { countsOf } from './room-parts.ts';
import { warmUpStyles } from './warm-up-styles.ts';

const words = practiceWords.card;

/** What `aims-changed` carries: `section:Weather` for a section, `line:weather-1` for a line. */
export type AimsChanged = readonly string[];

/** A line is near when it is at most so many tiles further away than the nearest one. */
const NEAR = 1;

const Base = element({
  room: data<PracticeRoom>(),
  /** The rack that is thought about. */
  rack: data<string>(() => ''),
  aims: data<readonly string[]>(() => []),
  /** Whether only lines near the rack are shown. */
  near: state(false),
  reading: state<ReadingDocument | null>(null),
});

/**
 * The card beside a rack: all lines, or on request those near the rack with the tiles that are there. A tap on a line or
 * a section marks it as aimed at. Sends `aims-changed`.
 */
export class WrCardAtHand extends Base {
  static override styles = [
    sharedStyles,
    warmUpStyles,
    css`
      :host {
        display: block;
        container-type: inline-size;
      }

      .head {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        justify-content: space-between;
        gap: 0 var(--space-3);
      }

      h3 {
        margin: 0;
      }

      .aim {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 var(--space-3);
        width: 100%;
        min-height: var(--target);
        padding: 2px var(--space-2);
        border: 0;
        border-bottom: 1px solid var(--hairline);
        border-radius: var(--round-small);
        background: transparent;
        text-align: start;
        cursor: pointer;
      }

      .aim:hover {
        background: var(--accent-wash);
      }

      .aim:focus-visible {
        outline-offset: -3px;
      }

      .aim[aria-pressed='true'] {
        background: var(--accent-wash);
        box-shadow: inset 5px 0 0 var(--accent);
        padding-inline-start: var(--space-3);
      }

      .aim.section {
        font-weight: 700;
        border-bottom: var(--stroke) solid var(--edge);
      }

      .text {
        flex: 1 1 9rem;
        min-width: 0;
        overflow-wrap: anywhere;
      }

      .code {
        font-family: var(--font-code);
      }

      .side {
        color: var(--ink-soft);
        font-size: var(--text-small);
      }

      .mine {
        color: var(--accent);
        font-weight: 700;
      }

      wr-hand {
        --tile-width: clamp(20px, 5cqi, 33px);
        flex-basis: 100%;
      }
    `,
  ];

  #asked = '';

  /** A new rack has other lines near it. */
  protected override willUpdate(): void {
    if (this.rack === this.#asked) return;
    this.#asked = this.rack;
    this.reading = null;
    this.near = false;
  }

  protected override render(): unknown {
    return html`<div class="head">
        <h3>${words.title}</h3>
        <wr-button look="quiet" .pressed=${this.near} @click=${this.#toggleNear}>${words.near}</wr-button>
      </div>
      <p class="soft">${words.aim}</p>
      ${this.near ? this.#nearLines() : this.#wholeCard()}`;
  }

  #wholeCard(): unknown {
    return this.room.sections.map(
      ({ name, lines }) =>
        html`${this.#aim(aimAtSection(name), html`<span class="text">${name}</span>`, 'section')}
        ${lines.map((line) => this.#aim(aimAtLine(line.id), lineText(line)))}`,
    );
  }

  #nearLines(): unknown {
    const { reading } = this;
    if (reading === null) return html`<p role="status">${words.waiting}</p>`;
    const near = reading.byAway.filter(({ away }) => away <= reading.away + NEAR);
    return html`${howCounted(countedWords.answer)}
    ${near.map((hand) => this.#aim(aimAtLine(hand.line), handText(hand)))}`;
  }

  #aim(aim: string, text: unknown, look = ''): unknown {
    const mine = this.aims.includes(aim);
    return html`<button type="button" class="aim ${look}" aria-pressed=${mine} @click=${() => this.#toggle(aim)}>
      ${text} ${mine ? html`<span class="mine">✓ ${words.mine}</span>` : nothing}
    </button>`;
  }

  #toggle(aim: string): void {
    const left = this.aims.filter((each) => each !== aim);
    emit<AimsChanged>(this, 'aims-changed', left.length < this.aims.length ? left : [...left, aim]);
  }

  async #toggleNear(): Promise<void> {
    this.near = !this.near;
    if (!this.near || this.reading !== null) return;
    const { rack, room } = this;
    const moment = { card: room.card, at: { rack: countsOf(rack), gone: countsOf('') } };
    const onProgress = (reading: ReadingDocument): void => {
      if (rack === this.rack) this.reading = reading;
    };
    const read = await room.worker.ask('read', moment, { onProgress });
    if (!read.ok) room.fail(read.problem.message);
  }
}

function lineText({ pattern, concealed, points, note }: Line): unknown {
  return html`<span class="text code">${pattern}</span>
    <span class="side"
      ><span aria-hidden="true">${concealed ? 'C' : 'X'}</span
      ><span class="unseen">${concealed ? cardWords.whole.concealed : cardWords.whole.exposed}</span> ${points}<span
        class="unseen"
      >
        ${cardWords.whole.points}</span
      ></span
    >
    ${note.trim() === '' ? nothing : html`<span class="side">${note}</span>`}`;
}

function handText({ name, places, away }: HandDocument): unknown {
  return html`<span class="text">${name}</span> <span class="side">${words.away(away)}</span>
    <wr-hand .label=${name} .groups=${places}></wr-hand>`;
}

customElements.define('wr-card-at-hand', WrCardAtHand);

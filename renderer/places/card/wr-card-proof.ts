import { css, html, nothing } from 'lit';
import { type CardDocument, type LineDocument, type LinePlace, sectionName } from '../../../core/card/document.ts';
import { lineAt } from '../../../core/card/edit.ts';
import { readLine } from '../../../core/card/line.ts';
import {
  confirmLine,
  isConfirmed,
  proofProgress,
  type ProofState,
  pruneProof,
  unconfirmLine,
} from '../../../core/card/proof.ts';
import { announce } from '../../parts/announcer.ts';
import { data, element, state } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-notice.ts';
import type { TabChosen } from '../../parts/wr-tabs.ts';
import '../../parts/wr-toolbar.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import type { Selection } from './card-editor.ts';
import type { CardRoom } from './card-room.ts';
import { cardStyles } from './card-styles.ts';
import './wr-line-view.ts';

const words = cardWords.proof;

const Base = element({
  room: data<CardRoom>(),
  /** The line that is looked at; null for the first that is not confirmed. */
  place: state<LinePlace | null>(null),
});

/** Proof-reading: each line in tiles and in words, to be compared with the printed card and confirmed. */
export class WrCardProof extends Base {
  static override styles = [
    sharedStyles,
    cardStyles,
    css`
      progress {
        width: 100%;
        height: 14px;
        accent-color: var(--accent);
      }

      .tick {
        min-height: 1.45em;
        color: var(--good);
        font-weight: 700;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  get #proof(): ProofState {
    return { confirmed: this.room.progress.confirmed };
  }

  protected override render(): unknown {
    const document = this.room.editor?.document;
    if (document === undefined) return nothing;
    const progress = proofProgress(this.#proof, document);
    if (progress.lines === 0) return this.#empty();
    const left = this.room.proofPlace;
    const kept = left !== null && lineAt(document, left) !== undefined ? left : null;
    const place = this.place ?? kept ?? progress.next ?? firstPlace(document);
    const line = place === null ? undefined : lineAt(document, place);
    return html`<div class="stack">
      <p>${words.lead}</p>
      <div class="stack close">
        <strong id="progress" role="status">${words.progress(progress.confirmed, progress.lines)}</strong>
        <progress aria-labelledby="progress" max=${progress.lines} value=${progress.confirmed}></progress>
      </div>
      ${progress.confirmed === progress.lines ? this.#done() : nothing}
      ${place === null || line === undefined ? nothing : this.#line(document, place, line)}
    </div>`;
  }

  #line(document: CardDocument, place: LinePlace, line: LineDocument): unknown {
    const confirmed = isConfirmed(this.#proof, line);
    const name = sectionName(document.sections[place.section] ?? { lines: [] }, place.section);
    const whole = readLine(line).whole;
    return html`<section class="sheet" aria-labelledby="line">
      <div class="row spread">
        <h2 id="line">${cardWords.line.title(place.line + 1, name)}</h2>
        <p class="tick">${confirmed ? `✓ ${words.confirmed}` : nothing}</p>
      </div>
      <wr-toolbar label=${words.steps}>
        ${
          confirmed
            ? html`<wr-button @click=${() => this.#unconfirm(line)}>${words.undo}</wr-button>`
            : html`<wr-button look="main" ?disabled=${!whole} @click=${() => this.#confirm(document, place, line)}
                >${words.same}</wr-button
              >`
        }
        <wr-button @click=${() => this.#change(place)}>${words.change}</wr-button>
        <wr-button @click=${() => this.#go(document, place, 1)}>${words.skip}</wr-button>
        <wr-button @click=${() => this.#go(document, place, -1)}>${words.before}</wr-button>
      </wr-toolbar>
      ${whole ? html`<wr-line-view .line=${line}></wr-line-view>` : html`<p class="bad">${words.broken}</p>`}
    </section>`;
  }

  #done(): unknown {
    return html`<wr-notice
      tone="good"
      action=${words.use}
      .closable=${false}
      @notice-action=${() => emit(this, 'use-requested', null)}
      >${words.done}</wr-notice
    >`;
  }

  #empty(): unknown {
    return html`<div class="sheet">
      <p>${words.empty}</p>
      <div>
        <wr-button look="main" @click=${() => emit<TabChosen>(this, 'view-requested', { id: 'lines' })}
          >${cardWords.check.toLines}</wr-button
        >
      </div>
    </div>`;
  }

  #confirm(document: CardDocument, place: LinePlace, line: LineDocument): void {
    this.#keep(pruneProof(confirmLine(this.#proof, line), document));
    const next = proofProgress(this.#proof, document, place);
    this.#show(next.next ?? place);
    announce(words.progress(next.confirmed, next.lines));
  }

  /** Leaves for the line's form; proof-reading goes on where it was left. */
  #change(place: LinePlace): void {
    this.room.proofPlace = place;
    emit<Selection>(this, 'line-shown', place);
  }

  #unconfirm(line: LineDocument): void {
    this.#keep(unconfirmLine(this.#proof, line));
  }

  #keep({ confirmed }: ProofState): void {
    this.room.changeProgress({ confirmed });
  }

  #go({ sections }: CardDocument, place: LinePlace, by: 1 | -1): void {
    const places = sections.flatMap(({ lines }, section) => lines.map((_, line) => ({ section, line })));
    const at = places.findIndex(({ section, line }) => section === place.section && line === place.line);
    this.#show(places.at((at + by) % places.length) ?? place);
  }

  #show(place: LinePlace): void {
    this.place = place;
    this.room.proofPlace = null;
  }
}

function firstPlace({ sections }: CardDocument): LinePlace | null {
  const section = sections.findIndex(({ lines }) => lines.length > 0);
  return section < 0 ? null : { section, line: 0 };
}

customElements.define('wr-card-proof', WrCardProof);

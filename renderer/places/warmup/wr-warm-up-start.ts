import { css, html, nothing } from 'lit';
import { DEAL_KINDS, isDealKind } from '../../../core/warmup/deal-kinds.ts';
import { itemOfCode } from '../../../core/warmup/problem-code.ts';
import { dueMisses } from '../../../core/warmup/returns.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { practiceWords } from '../../words/practice.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { PracticeRoom } from './practice-room.ts';
import { type DealOptions, today } from './room-parts.ts';
import { warmUpStyles } from './warm-up-styles.ts';
import './wr-practice-summary.ts';

const words = practiceWords.start;

const Base = element({
  room: data<PracticeRoom>(),
  code: state(''),
  refusal: state(''),
});

/** Where practice begins: today's own decisions, a deal of a kind, or a deal by its code. */
export class WrWarmUpStart extends Base {
  static override styles = [
    sharedStyles,
    warmUpStyles,
    css`
      .ways {
        display: grid;
        gap: var(--space-4);
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 21rem), 1fr));
      }

      .daily {
        grid-column: 1 / -1;
      }

      wr-field {
        max-width: 16rem;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  protected override render(): unknown {
    const { finding, tried, ended } = this.room;
    return html`<div class="stack">
      ${
        ended === null || finding
          ? nothing
          : html`<wr-practice-summary
              .room=${this.room}
              .answers=${ended}
              .skipped=${this.room.skipped}
            ></wr-practice-summary>`
      }
      <div class="ways">${this.#daily()} ${this.#byKind()} ${this.#whole()} ${this.#byCode()}</div>
      <div class="row" role="status">
        ${
          finding
            ? html`<span>${words.searching(tried)}</span>
                <wr-button look="quiet" @click=${() => this.room.stopFinding()}>${words.stop}</wr-button>`
            : nothing
        }
      </div>
    </div>`;
  }

  #daily(): unknown {
    const due = dueMisses({ history: this.room.history, today: today() }).length;
    return html`<section class="panel daily">
      <h2>${words.daily}</h2>
      <p>${words.dailyLead(due)} ${words.dailyLength}</p>
      <div><wr-button look="main" @click=${() => this.room.practise()}>${words.dailyStart}</wr-button></div>
    </section>`;
  }

  #byKind(): unknown {
    const { kind, tiles, clock } = this.room.options;
    return html`<section class="panel">
      <h2>${words.deal}</h2>
      <label class="labelled"
        >${words.kind}
        <select @change=${this.#kindChosen}>
          ${DEAL_KINDS.map((each) => html`<option value=${each} ?selected=${each === kind}>${warmUpWords.kinds[each]}</option>`)}
        </select>
      </label>
      <wr-choice
        label=${words.tiles}
        .options=${[
          { value: 'turns', label: words.turns },
          { value: '13', label: words.thirteen },
          { value: '14', label: words.fourteen },
        ]}
        .value=${String(tiles)}
        @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => this.room.choose({ tiles: tilesOf(detail.value) })}
      ></wr-choice>
      <div class="row">
        <wr-button look="main" @click=${() => this.room.deal()}>${words.dealNow}</wr-button>
        <wr-button .pressed=${clock} @click=${() => this.room.choose({ clock: !clock })}>${words.clock}</wr-button>
      </div>
    </section>`;
  }

  #whole(): unknown {
    return html`<section class="panel">
      <h2>${words.whole}</h2>
      <p>${words.wholeLead} ${words.wholeAfter}</p>
      <div><wr-button look="main" @click=${() => this.room.exchange()}>${words.wholeStart}</wr-button></div>
    </section>`;
  }

  #byCode(): unknown {
    return html`<section class="panel">
      <h2>${words.code}</h2>
      <wr-field
        label=${words.codeLabel}
        hint=${words.codeHint}
        .value=${this.code}
        .error=${this.refusal}
        @field-typed=${({ detail }: CustomEvent<FieldText>) => (this.code = detail.value)}
        @keydown=${(event: KeyboardEvent) => (event.key === 'Enter' ? this.#startCode() : undefined)}
      ></wr-field>
      <div><wr-button @click=${this.#startCode}>${words.codeStart}</wr-button></div>
    </section>`;
  }

  #kindChosen({ target }: Event): void {
    if (target instanceof HTMLSelectElement && isDealKind(target.value)) this.room.choose({ kind: target.value });
  }

  #startCode(): void {
    if (this.code.trim() === '') {
      this.refusal = words.codeMissing;
      return;
    }
    const item = itemOfCode(this.code);
    this.refusal = item.ok ? '' : item.problem.message;
    if (item.ok) this.room.start(item.value, { isByCode: true });
  }
}

function tilesOf(value: string): DealOptions['tiles'] {
  if (value === '13') return 13;
  return value === '14' ? 14 : 'turns';
}

customElements.define('wr-warm-up-start', WrWarmUpStart);

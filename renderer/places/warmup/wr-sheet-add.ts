import { css, html, nothing } from 'lit';
import { PASS_STEPS, type PassStep } from '../../../core/exchange/steps.ts';
import { formatTileList } from '../../../core/tiles/text.ts';
import { DEAL_KINDS, type DealKind, isDealKind } from '../../../core/warmup/deal-kinds.ts';
import { makeItem, type WarmUpItem } from '../../../core/warmup/item.ts';
import { itemOfCode } from '../../../core/warmup/problem-code.ts';
import { MOST_PROBLEMS } from '../../../core/warmup/sheet.ts';
import { data, element, flag, state } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-entry.ts';
import type { TypedTiles } from '../../parts/wr-entry.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { tableWords } from '../../words/table.ts';
import { practiceWords } from '../../words/practice.ts';
import { sheetWords, stepNames } from '../../words/sheets.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { PracticeRoom } from './practice-room.ts';
import { warmUpStyles } from './warm-up-styles.ts';

const words = sheetWords;
const TILE_COUNTS = ['turns', 13, 14] as const;

const Base = element({
  room: data<PracticeRoom>(),
  /** Whether it can be left, since the sheet has problems. */
  closable: flag(),
  kind: state<DealKind>('any'),
  tiles: state<13 | 14 | 'turns'>('turns'),
  step: state<PassStep>('right'),
  /** As it was typed. */
  count: state('4'),
  code: state(''),
  codeRefusal: state(''),
  typed: state(''),
  typedRefusal: state(''),
  countRefusal: state(''),
});

/** Adds problems to the sheet: found by kind, by a code, or as typed. */
export class WrSheetAdd extends Base {
  static override styles = [
    sharedStyles,
    warmUpStyles,
    css`
      .ways {
        display: grid;
        gap: var(--space-4);
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 19rem), 1fr));
        align-items: start;
      }

      .way {
        display: flex;
        flex-direction: column;
        align-items: flex-start;
        gap: var(--space-3);
      }

      wr-field,
      wr-entry {
        width: 100%;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  protected override render(): unknown {
    const { finding, tried } = this.room;
    return html`<section class="panel">
      <div class="row spread">
        <h2>${words.add}</h2>
        ${
          this.closable
            ? html`<wr-button look="quiet" @click=${() => emit(this, 'adding-done', null)}>${words.addDone}</wr-button>`
            : nothing
        }
      </div>
      <div class="ways">
        <div class="way">
          <label class="labelled"
            >${practiceWords.start.kind}
            <select @change=${this.#kindChosen}>
              ${DEAL_KINDS.map(
                (each) =>
                  html`<option value=${each} ?selected=${each === this.kind}>${warmUpWords.kinds[each]}</option>`,
              )}
            </select>
          </label>
          <wr-choice
            label=${words.tiles}
            .options=${TILE_COUNTS.map((each) => ({ value: String(each), label: words.tileCounts[each] }))}
            .value=${String(this.tiles)}
            @choice-changed=${this.#tilesChosen}
          ></wr-choice>
          <label class="labelled"
            >${words.step}
            <select @change=${this.#stepChosen}>
              ${PASS_STEPS.map(
                (each) => html`<option value=${each} ?selected=${each === this.step}>${stepNames[each]}</option>`,
              )}
            </select>
          </label>
          ${this.step === 'right' ? nothing : html`<p class="soft">${words.stepNote}</p>`}
          <wr-field
            label=${words.howMany}
            type="number"
            .value=${this.count}
            .error=${this.countRefusal}
            @field-typed=${this.#countTyped}
          ></wr-field>
          <wr-button ?disabled=${finding} @click=${this.#find}>${words.addKind(countOf(this.count))}</wr-button>
          <div class="row" role="status">
            ${
              finding
                ? html`<span>${practiceWords.start.searching(tried)}</span>
                    <wr-button look="quiet" @click=${() => this.room.stopFinding()}
                      >${practiceWords.start.stop}</wr-button
                    >`
                : nothing
            }
          </div>
        </div>
        <div class="way">
          <wr-field
            label=${words.byCode}
            hint=${practiceWords.start.codeHint}
            .value=${this.code}
            .error=${this.codeRefusal}
            @field-typed=${this.#codeTyped}
            @keydown=${(event: KeyboardEvent) => (event.key === 'Enter' ? this.#addCode() : undefined)}
          ></wr-field>
          <wr-button label="${words.addThis}: ${words.byCode}" @click=${this.#addCode}>${words.addThis}</wr-button>
          <wr-entry
            label=${words.byTiles}
            hint=${tableWords.deal.hint}
            .value=${this.typed}
            .counts=${[13, 14]}
            .refusal=${this.typedRefusal}
            @tiles-typed=${this.#tilesTyped}
            @tiles-entered=${({ detail }: CustomEvent<TypedTiles>) => this.#addTyped(formatTileList(detail.kinds))}
          ></wr-entry>
          <wr-button label="${words.addThis}: ${words.byTiles}" @click=${() => this.#addTyped(this.typed)}
            >${words.addThis}</wr-button
          >
        </div>
      </div>
    </section>`;
  }

  #kindChosen({ target }: Event): void {
    if (target instanceof HTMLSelectElement && isDealKind(target.value)) this.kind = target.value;
  }

  #tilesChosen({ detail }: CustomEvent<ChoiceChanged>): void {
    this.tiles = TILE_COUNTS.find((each) => String(each) === detail.value) ?? 'turns';
  }

  #stepChosen({ target }: Event): void {
    if (target instanceof HTMLSelectElement) this.step = PASS_STEPS.find((each) => each === target.value) ?? 'right';
  }

  #countTyped({ detail }: CustomEvent<FieldText>): void {
    this.count = detail.value;
    this.countRefusal = '';
  }

  #codeTyped({ detail }: CustomEvent<FieldText>): void {
    this.code = detail.value;
  }

  #tilesTyped({ detail }: CustomEvent<TypedTiles>): void {
    this.typed = detail.text;
  }

  async #find(): Promise<void> {
    const count = countOf(this.count);
    this.countRefusal = count === null ? words.howManyRange : '';
    const items: WarmUpItem[] = [];
    for (let place = 0; place < (count ?? 0); place += 1) {
      const tiles = this.tiles === 'turns' ? (place % 2 === 0 ? 13 : 14) : this.tiles;
      const item = await this.room.problemAt(this.kind, tiles, this.step);
      if (item === null) break;
      items.push(item);
    }
    if (items.length > 0) this.room.sheets.add(items);
  }

  #addCode(): void {
    if (this.code.trim() === '') {
      this.codeRefusal = practiceWords.start.codeMissing;
      return;
    }
    const item = itemOfCode(this.code);
    this.codeRefusal = item.ok ? '' : item.problem.message;
    if (!item.ok) return;
    this.room.sheets.add([item.value]);
    this.code = '';
  }

  #addTyped(rack: string): void {
    const east = makeItem({ rack, gone: '', step: 'right', seat: 'East' });
    const item = east.ok ? east : makeItem({ rack, gone: '', step: 'right', seat: 'South' });
    this.typedRefusal = item.ok ? '' : item.problem.message;
    if (!item.ok) return;
    this.room.sheets.add([item.value]);
    this.typed = '';
  }
}

/** The number that was typed; null if it is out of range. */
function countOf(value: string): number | null {
  const count = value.trim() === '' ? Number.NaN : Number(value);
  return Number.isInteger(count) && count >= 1 && count <= MOST_PROBLEMS ? count : null;
}

customElements.define('wr-sheet-add', WrSheetAdd);

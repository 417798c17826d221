import { css, html, nothing } from 'lit';
import type { Fields } from '../../../core/base/json.ts';
import {
  type CardDocument,
  type LineDocument,
  lineName,
  type LinePlace,
  sectionName,
} from '../../../core/card/document.ts';
import { changeLine, freshId, lineAt } from '../../../core/card/edit.ts';
import type { Finding } from '../../../core/card/inspect.ts';
import { readLine } from '../../../core/card/line.ts';
import { namedSuits, openSuits } from '../../../core/card/suits.ts';
import { data, element } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-notice.ts';
import type { TabChosen } from '../../parts/wr-tabs.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import type { CardEditor, Selection } from './card-editor.ts';
import type { CardRoom } from './card-room.ts';
import { cardNumbers } from './card-numbers.ts';
import { cardStyles } from './card-styles.ts';
import { isInnerName, problemWords } from './problem-words.ts';
import { rewrittenForms, suitLetters } from './suit-question.ts';
import { formsText } from './forms-text.ts';

const words = cardWords.check;

/** Something to look at: where it is, and what is said of it. */
interface Remark {
  readonly section: string;
  readonly place?: LinePlace;
  readonly column?: number;
  readonly code: string;
  readonly message: string;
  /** Of what may be meant so. */
  readonly key?: string;
}

/** The most findings that are kept as meant; the oldest go first. */
const MOST_MEANT = 1000;

const Base = element({
  room: data<CardRoom>(),
});

/** What looks wrong on the card, and the card in numbers; every way of it is looked at in the background. */
export class WrCardCheck extends Base {
  static override styles = [
    sharedStyles,
    cardStyles,
    css`
      .remarks li {
        padding: var(--space-2) 0;
        border-top: 1px solid var(--hairline);
      }

      .where {
        font-weight: 700;
        overflow-wrap: anywhere;
      }

      .charts {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 24rem), 1fr));
        gap: var(--space-5);
        align-items: start;
      }
    `,
  ];

  #asked: CardDocument | null = null;

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  protected override willUpdate(): void {
    const document = this.room.editor?.document ?? null;
    if (document === this.#asked) return;
    this.#asked = document;
    void this.room.examine();
  }

  protected override render(): unknown {
    const { status, value, message } = this.room.examination;
    if (status === 'failed')
      return html`<wr-notice tone="bad" .closable=${false}>${words.failed} ${message}</wr-notice>`;
    if (value === null) return html`<p role="status" aria-busy="true">${words.busy}</p>`;
    const { problems, findings, statistics } = value;
    if (statistics.lines === 0 && problems.length === 0) return this.#empty();
    const meant = new Set(this.room.progress.meant);
    const open = findings.filter(({ key }) => !meant.has(key));
    const ticked = findings.filter(({ key }) => meant.has(key));
    return html`<div class="stack">
      ${problems.length + open.length === 0 ? this.#good() : nothing}
      ${this.#remarks(words.problems, words.problemsLead, problems)}
      ${this.#remarks(words.findings, words.findingsLead, open)} ${this.#meantSo(ticked)} ${cardNumbers(statistics)}
    </div>`;
  }

  #empty(): unknown {
    return html`<div class="sheet">
      <p>${words.empty}</p>
      <div><wr-button look="main" @click=${() => this.#goTo('lines')}>${words.toLines}</wr-button></div>
    </div>`;
  }

  #good(): unknown {
    return html`<wr-notice
      tone="good"
      action=${words.toProof}
      .closable=${false}
      @notice-action=${() => this.#goTo('proof')}
      >${words.good}</wr-notice
    >`;
  }

  #remarks(title: string, lead: string, remarks: readonly Remark[]): unknown {
    if (remarks.length === 0) return nothing;
    return html`<section class="sheet close">
      <h2 tabindex="-1">${title} (${remarks.length})</h2>
      <p>${lead}</p>
      <ul class="remarks">
        ${remarks.map((remark) => html`<li class="row spread">${this.#remark(remark, this.#actions(remark))}</li>`)}
      </ul>
    </section>`;
  }

  /** What was looked at and is meant so: folded, to be asked again if one likes. */
  #meantSo(findings: readonly Finding[]): unknown {
    if (findings.length === 0) return nothing;
    return html`<details class="sheet">
      <summary>${words.meantList(findings.length)}</summary>
      <ul class="remarks">
        ${findings.map(
          (finding) =>
            html`<li class="row spread">
              ${this.#remark(
                finding,
                html`<wr-button
                  look="quiet"
                  label=${words.askAgainLabel(this.#nameOf(finding))}
                  @click=${() => this.#keepMeant((kept) => kept.filter((key) => key !== finding.key))}
                  >${words.askAgain}</wr-button
                >`,
              )}
            </li>`,
        )}
      </ul>
    </details>`;
  }

  #remark(remark: Remark, actions: unknown): unknown {
    const { column = 0, place, code, message } = remark;
    const line = place === undefined ? undefined : this.#lineAt(place);
    const says = line === undefined ? '' : formsText(readLine(line));
    const where = says === '' ? this.#nameOf(remark) : words.where(this.#nameOf(remark), says);
    return html`<div>
        <div class="where">${column > 0 ? `${where} · ${cardWords.arrived.column(column)}` : where}</div>
        ${problemWords({ code, message })}
      </div>
      <div class="row">${actions}</div>`;
  }

  #actions(remark: Remark): unknown {
    const { place, code, key, section } = remark;
    const name = this.#nameOf(remark);
    const at =
      this.room.editor?.document.sections.findIndex((each, index) => sectionName(each, index) === section) ?? -1;
    const shown: Selection | null = place ?? (at < 0 ? null : { section: at, line: null });
    return html`${
      shown === null
        ? nothing
        : html`<wr-button label=${words.showLabel(name)} @click=${() => this.#show(shown)}
            >${place === undefined ? words.showSection : words.show}</wr-button
          >`
    }
    ${place === undefined || this.room.editor?.fixed !== false ? nothing : this.#remedies(code, place, name)}
    ${
      key === undefined
        ? nothing
        : html`<wr-button
            look="quiet"
            label=${words.meantLabel(name)}
            @click=${() => this.#keepMeant((kept) => [...kept, key])}
            >${words.meant}</wr-button
          >`
    }`;
  }

  /** What puts a line right at once. */
  #remedies(code: string, place: LinePlace, name: string): unknown {
    if (isInnerName(code)) {
      return html`<wr-button
        look="main"
        label=${words.putRightLabel(name)}
        @click=${() => this.#change(place, ({ document }) => ({ id: freshId(document, place.section) }))}
        >${words.putRight}</wr-button
      >`;
    }
    if (code !== 'suit-without-a') return nothing;
    const rewrite = (label: string, change: (text: string) => string): unknown =>
      html`<wr-button
        label=${words.suitLabel(label, name)}
        @click=${() => this.#change(place, (_, line) => rewrittenForms(readLine(line), change))}
        >${label}</wr-button
      >`;
    const line = this.#lineAt(place);
    const named = cardWords.rows.named[line === undefined ? 'b' : suitLetters(readLine(line))];
    return html`${rewrite(named, namedSuits)} ${rewrite(words.anySuit, openSuits)}`;
  }

  /** Changes a line, as one step that can be undone. */
  #change(place: LinePlace, change: (editor: CardEditor, line: LineDocument) => Fields): void {
    const line = this.#lineAt(place);
    const { editor } = this.room;
    if (editor === null || line === undefined) return;
    editor.settle();
    editor.change(changeLine(editor.document, place, change(editor, line)));
    this.#focusHead();
  }

  /** What was pressed goes with its remark. */
  #focusHead(): void {
    this.renderRoot.querySelector<HTMLElement>('h2')?.focus();
  }

  #keepMeant(change: (kept: readonly string[]) => readonly string[]): void {
    this.room.changeProgress({ meant: change(this.room.progress.meant ?? []).slice(-MOST_MEANT) });
    this.#focusHead();
  }

  #show(selection: Selection): void {
    emit<Selection>(this, 'line-shown', selection);
  }

  #lineAt(place: LinePlace): LineDocument | undefined {
    const document = this.room.editor?.document;
    return document === undefined ? undefined : lineAt(document, place);
  }

  /** A line by its section and place there, a section by its name. */
  #nameOf({ section, place }: Pick<Remark, 'section' | 'place'>): string {
    const found = place === undefined ? undefined : this.room.editor?.document.sections[place.section];
    if (place === undefined || found === undefined) return section || cardWords.arrived.wholeCard;
    return lineName(found, sectionName(found, place.section), place.line);
  }

  #goTo(id: string): void {
    emit<TabChosen>(this, 'view-requested', { id });
  }
}

customElements.define('wr-card-check', WrCardCheck);

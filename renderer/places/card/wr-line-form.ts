import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { type Fields, type LineDocument, textField } from '../../../core/card/document.ts';
import { draftFromPattern, type GroupDraft, patternFromDraft } from '../../../core/card/draft.ts';
import { HAND_SIZE } from '../../../core/card/pattern.ts';
import { groupWords, takesJokers } from '../../../core/card/words.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-explain.ts';
import '../../parts/wr-toolbar.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { cardStyles } from './card-styles.ts';
import type { LineEdited } from './line-edited.ts';
import { lineFormStyles } from './line-form-styles.ts';
import { type LineReading, printedWay, readLine } from './line-reading.ts';
import { insertGroup, moveGroup, removeGroup, replaceGroup } from './pattern-edit.ts';
import { typingHelp } from './typing-help.ts';
import './wr-group-picker.ts';
import type { GroupDrafted } from './wr-group-picker.ts';
import './wr-line-groups.ts';
import type { GroupMoved, GroupPlace } from './wr-line-groups.ts';
import './wr-line-settings.ts';
import './wr-pattern-field.ts';
import type { TypedPattern } from './wr-pattern-field.ts';

const words = cardWords.line;
const groupNames = cardWords.group;

const NEW_GROUP: GroupDraft = { symbol: 'F', size: 2, suit: 'a', movement: 'first' };

/** One line, built from groups or typed, both showing the same; with its example, count and settings. */
export class WrLineForm extends LitElement {
  static override properties = {
    line: { attribute: false },
    name: {},
    way: { state: true },
    chosen: { state: true },
    next: { state: true },
  };

  declare line: LineDocument;
  /** Distinguishes lines: another name begins anew with the first way and a new group. */
  declare name: string;
  declare protected way: number;
  /** The group that is changed; null for a new one. */
  declare protected chosen: number | null;
  /** Size, suit and movement for the next new group. */
  declare protected next: GroupDraft;

  static override styles = [sharedStyles, cardStyles, lineFormStyles];

  constructor() {
    super();
    this.name = '';
    this.way = 0;
    this.chosen = null;
    this.next = NEW_GROUP;
  }

  /** Puts the focus where the line is typed. */
  override focus(): void {
    this.renderRoot.querySelector('wr-pattern-field')?.focus();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('name')) {
      this.chosen = null;
      this.next = NEW_GROUP;
    }
    const reading = readLine(this.line);
    const { groups } = reading;
    if (changed.has('line')) this.way = printedWay(reading);
    if (this.chosen !== null && this.chosen >= groups.length) this.chosen = null;
  }

  protected override render(): unknown {
    const reading = readLine(this.line);
    return html`<div class="stack">
      <wr-pattern-field
        label=${words.typed}
        .value=${textField(this.line, 'pattern')}
        @pattern-typed=${({ detail }: CustomEvent<TypedPattern>) => this.#edit({ pattern: detail.text }, 'pattern')}
      ></wr-pattern-field>
      ${this.#example(reading)} ${this.#picker(reading)} ${typingHelp()}
      <wr-line-settings .line=${this.line} name=${this.name}></wr-line-settings>
    </div>`;
  }

  #example(reading: LineReading): unknown {
    return html`<section class="drawn stack close" aria-label=${words.groups}>
      <div class="row spread">${this.#facts(reading)} ${this.#leafing(reading)}</div>
      <wr-line-groups
        .reading=${reading}
        .way=${this.way}
        .chosen=${this.chosen ?? reading.groups.length}
        @group-chosen=${({ detail }: CustomEvent<GroupPlace>) => this.#choose(detail.at)}
        @group-removed=${({ detail }: CustomEvent<GroupPlace>) => this.#remove(detail.at)}
        @group-moved=${({ detail }: CustomEvent<GroupMoved>) => this.#move(detail)}
      ></wr-line-groups>
    </section>`;
  }

  #facts({ tiles, whole, ways, groups }: LineReading): unknown {
    const left = HAND_SIZE - tiles;
    const rest = left > 0 ? ` · ${words.toGo(left)}` : left < 0 ? ` · ${words.tooMany(-left)}` : '';
    const jokers = groups.filter(({ group }) => group.ok && takesJokers(group.value)).length;
    return html`<div class="row facts">
      <span class="count ${whole ? 'whole' : ''} ${left < 0 ? 'bad' : ''}" role="status"
        >${words.count(tiles)}${rest}</span
      >
      ${
        whole
          ? html`<wr-explain value=${words.ways(ways.length)} heading=${words.waysHeading}
              >${ways.length === 0 ? words.noWays : words.waysWords}</wr-explain
            >`
          : nothing
      }
      ${
        groups.length > 0
          ? html`<wr-explain value=${words.jokers(jokers)} heading=${words.jokersHeading}
              >${words.jokersWords}</wr-explain
            >`
          : nothing
      }
    </div>`;
  }

  #leafing({ ways }: LineReading): unknown {
    const last = ways.length - 1;
    return html`<div class="row leaf">
      <span>${ways.length === 0 ? words.example : words.exampleOf(this.way + 1, ways.length)}</span>
      <wr-toolbar label=${words.examples}>
        <wr-button look="quiet" ?disabled=${this.way <= 0} @click=${() => this.#leaf(-1)}>${words.earlier}</wr-button>
        <wr-button look="quiet" ?disabled=${this.way >= last} @click=${() => this.#leaf(1)}>${words.later}</wr-button>
      </wr-toolbar>
    </div>`;
  }

  #picker(reading: LineReading): unknown {
    const scanned = this.chosen === null ? undefined : reading.groups[this.chosen];
    const name = scanned?.group.ok === true ? groupWords(scanned.group.value) : (scanned?.text ?? '');
    return html`<section class="picker stack" aria-labelledby="picker">
      <div class="row spread">
        <h3 id="picker">${scanned === undefined ? groupNames.add : groupNames.change(name)}</h3>
        ${scanned === undefined ? nothing : this.#groupActions(reading)}
      </div>
      <wr-group-picker
        .draft=${this.#draft(scanned?.text)}
        .suit=${this.next.suit}
        ?adding=${scanned === undefined}
        @group-drafted=${this.#drafted}
      ></wr-group-picker>
    </section>`;
  }

  #groupActions({ groups }: LineReading): unknown {
    const at = this.chosen ?? 0;
    return html`<wr-toolbar label=${groupNames.actions}>
      <wr-button ?disabled=${at === 0} @click=${() => this.#move({ from: at, to: at - 1 })}
        >${groupNames.left}</wr-button
      >
      <wr-button ?disabled=${at === groups.length - 1} @click=${() => this.#move({ from: at, to: at + 1 })}
        >${groupNames.right}</wr-button
      >
      <wr-button @click=${() => this.#duplicate(at)}>${groupNames.copy}</wr-button>
      <wr-button look="danger" @click=${() => this.#remove(at)}>${groupNames.remove}</wr-button>
      <wr-button look="quiet" @click=${() => this.#choose(groups.length)}>${groupNames.done}</wr-button>
    </wr-toolbar>`;
  }

  /** The chosen group as it stands; one that can't be read begins anew. */
  #draft(text: string | undefined): GroupDraft {
    if (text === undefined) return this.next;
    return draftFromPattern(text).groups[0] ?? this.next;
  }

  #drafted({ detail: { draft, whole } }: CustomEvent<GroupDrafted>): void {
    const pattern = textField(this.line, 'pattern');
    if (this.chosen !== null) this.#edit({ pattern: replaceGroup(pattern, this.chosen, patternFromDraft([draft])) });
    else if (whole) this.#edit({ pattern: insertGroup(pattern, patternFromDraft([draft])) });
    else this.next = { ...draft, suit: draft.suit === 'none' ? this.next.suit : draft.suit };
  }

  #choose(at: number): void {
    this.chosen = at < readLine(this.line).groups.length ? at : null;
  }

  #move({ from, to }: GroupMoved): void {
    this.#edit({ pattern: moveGroup(textField(this.line, 'pattern'), from, to) });
    this.chosen = to;
  }

  #duplicate(at: number): void {
    const pattern = textField(this.line, 'pattern');
    const group = readLine(this.line).groups[at];
    if (group === undefined) return;
    this.#edit({ pattern: insertGroup(pattern, group.text, at + 1) });
    this.chosen = at + 1;
  }

  #remove(at: number): void {
    this.#edit({ pattern: removeGroup(textField(this.line, 'pattern'), at) });
  }

  #leaf(by: number): void {
    this.way += by;
  }

  #edit(change: Fields, doing = ''): void {
    emit<LineEdited>(this, 'line-edited', { change, doing });
  }
}

customElements.define('wr-line-form', WrLineForm);

declare global {
  interface HTMLElementTagNameMap {
    'wr-line-form': WrLineForm;
  }
}

import { html, nothing, type PropertyValues } from 'lit';
import type { Fields } from '../../../core/base/json.ts';
import type { LineDocument } from '../../../core/card/document.ts';
import { insertGroup, moveGroup, removeGroup, replaceGroup } from '../../../core/card/edit.ts';
import type { FormReading } from '../../../core/card/form.ts';
import { MOST_FORMS, printedWay, readLine } from '../../../core/card/line.ts';
import { formatGroup, HAND_SIZE, type PatternGroup, suitIn } from '../../../core/card/pattern.ts';
import { groupWords, takesJokers } from '../../../core/card/words.ts';
import { PausedVoice } from '../../parts/announcer.ts';
import { data, element, state, text } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-explain.ts';
import '../../parts/wr-toolbar.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { cardStyles } from './card-styles.ts';
import { lineFormStyles } from './line-form-styles.ts';
import './wr-group-picker.ts';
import type { GroupChanged } from './wr-group-picker.ts';
import { type GroupMoved, type GroupPlace, leafing } from './wr-line-groups.ts';
import './wr-line-settings.ts';
import type { LineEdited } from './wr-line-settings.ts';
import './wr-pattern-field.ts';
import type { TypedPattern } from './wr-pattern-field.ts';

const words = cardWords.line;
const groupNames = cardWords.group;

/** Size, suit and movement of the first new group; what number it has does not matter. */
const NEW_GROUP: PatternGroup = { tile: { is: 'number', number: 1, suit: 'a', movement: 'first' }, size: 2 };

const Base = element({
  line: data<LineDocument>(),
  /** Distinguishes lines: with another name the form starts over with a new group. */
  name: text(),
  /** The form that is shown and changed: the first, or a further one behind an "or". */
  form: state(0),
  way: state(0),
  /** The group that is changed; null for a new one. */
  chosen: state<number | null>(null),
  /** Size, suit and movement for the next new group. */
  next: state<PatternGroup>(() => NEW_GROUP),
});

/** One line, built from groups or typed, both showing the same; with its example, count and settings. */
export class WrLineForm extends Base {
  static override styles = [sharedStyles, cardStyles, lineFormStyles];

  readonly #voice = new PausedVoice();

  override disconnectedCallback(): void {
    this.#voice.stop();
    super.disconnectedCallback();
  }

  /** Puts the focus where the line is typed. */
  override focus(): void {
    this.renderRoot.querySelector('wr-pattern-field')?.focus();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('name')) {
      this.chosen = null;
      this.form = 0;
      this.next = NEW_GROUP;
    }
    this.form = Math.min(this.form, readLine(this.line).forms.length - 1);
    const form = this.#form;
    if (changed.has('line') || changed.has('form')) this.way = printedWay(form);
    if (changed.has('line') && !changed.has('name')) this.#voice.say(`${countWords(form)}.`);
    if (this.chosen !== null && this.chosen >= form.groups.length) this.chosen = null;
  }

  get #form(): FormReading {
    const { forms } = readLine(this.line);
    return forms[this.form] ?? forms[0];
  }

  protected override render(): unknown {
    const form = this.#form;
    return html`<div class="stack">
      ${this.#forms()}
      <wr-pattern-field
        label=${words.typed}
        .reading=${form}
        @pattern-typed=${({ detail }: CustomEvent<TypedPattern>) => this.#write(detail.text, `pattern ${this.form}`)}
      ></wr-pattern-field>
      ${this.#example(form)} ${this.#picker(form)} ${typingHelp()}
      <wr-line-settings .line=${this.line} name=${this.name}></wr-line-settings>
    </div>`;
  }

  /** What the line may be instead, where the card prints "or". */
  #forms(): unknown {
    const { forms } = readLine(this.line);
    const last = forms.length - 1;
    return html`<div class="row forms">
      ${
        last === 0
          ? nothing
          : html`<wr-choice
              label=${words.forms}
              .options=${forms.map((_, at) => ({ value: String(at), label: words.form(at) }))}
              value=${String(this.form)}
              @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => this.#showForm(Number(detail.value))}
            ></wr-choice>`
      }
      <wr-toolbar label=${words.formActions}>
        <wr-button look="quiet" reason=${last >= MOST_FORMS ? words.formsFull : ''} @click=${() => this.#addForm()}
          >${words.addForm}</wr-button
        >
        ${
          this.form === 0
            ? nothing
            : html`<wr-button look="quiet" @click=${() => this.#removeForm()}>${words.removeForm}</wr-button>`
        }
      </wr-toolbar>
    </div>`;
  }

  #example(reading: FormReading): unknown {
    return html`<section class="drawn stack close" aria-label=${words.groups}>
      <div class="row spread">
        ${this.#facts(reading)} ${leafing(this.way, reading.wayCount, (way) => this.#leaf(way))}
      </div>
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

  #facts(reading: FormReading): unknown {
    const { tiles, groups } = reading;
    const { whole, ways } = readLine(this.line);
    const jokers = groups.filter(({ group }) => group.ok && takesJokers(group.value)).length;
    return html`<div class="row facts">
      <span class="count ${reading.whole ? 'whole' : ''} ${tiles > HAND_SIZE ? 'bad' : ''}"
        >${countWords(reading)}</span
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

  #picker(reading: FormReading): unknown {
    const scanned = this.chosen === null ? undefined : reading.groups[this.chosen];
    const name = scanned?.group.ok === true ? groupWords(scanned.group.value) : (scanned?.text ?? '');
    return html`<section class="picker stack" aria-labelledby="picker">
      <div class="row spread">
        <h3 id="picker">${scanned === undefined ? groupNames.add : groupNames.change(name)}</h3>
        ${scanned === undefined ? nothing : this.#groupActions(reading)}
      </div>
      <wr-group-picker
        .group=${scanned?.group.ok === true ? scanned.group.value : this.next}
        .suit=${suitIn(this.next.tile)}
        ?adding=${scanned === undefined}
        @group-changed=${this.#changed}
      ></wr-group-picker>
    </section>`;
  }

  #groupActions({ groups }: FormReading): unknown {
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

  #changed({ detail: { group, whole } }: CustomEvent<GroupChanged>): void {
    const { text: pattern } = this.#form;
    if (this.chosen !== null) this.#write(replaceGroup(pattern, this.chosen, formatGroup(group)));
    else if (whole) this.#write(insertGroup(pattern, formatGroup(group)));
    else this.next = group;
  }

  #choose(at: number): void {
    this.chosen = at < this.#form.groups.length ? at : null;
  }

  #move({ from, to }: GroupMoved): void {
    this.#write(moveGroup(this.#form.text, from, to));
    this.chosen = to;
  }

  #duplicate(at: number): void {
    const { text: pattern, groups } = this.#form;
    const group = groups[at];
    if (group === undefined) return;
    this.#write(insertGroup(pattern, group.text, at + 1));
    this.chosen = at + 1;
  }

  #remove(at: number): void {
    this.#write(removeGroup(this.#form.text, at));
  }

  #leaf(way: number): void {
    this.way = way;
  }

  /** Puts a text into the form that is shown. */
  #write(pattern: string, doing = ''): void {
    this.#edit(this.form === 0 ? { pattern } : { or: this.#further.with(this.form - 1, pattern) }, doing);
  }

  get #further(): readonly string[] {
    const [, ...further] = readLine(this.line).forms;
    return further.map((form) => form.text);
  }

  #showForm(form: number): void {
    this.form = form;
    this.chosen = null;
  }

  /** A further form begins as the one that is shown: forms of a line mostly differ in little. */
  async #addForm(): Promise<void> {
    this.#edit({ or: [...this.#further, this.#form.text] });
    await this.updateComplete;
    this.#showForm(this.#further.length);
    await this.updateComplete;
    this.focus();
  }

  #removeForm(): void {
    const left = this.#further.toSpliced(this.form - 1, 1);
    this.#edit({ or: left.length === 0 ? undefined : left });
    this.#showForm(this.form - 1);
    this.focus();
  }

  #edit(change: Fields, doing = ''): void {
    emit<LineEdited>(this, 'line-edited', { change, doing });
  }
}

/** What may be typed, with an example of each. */
function typingHelp(): unknown {
  return html`<details>
    <summary>${words.typedHelp}</summary>
    <dl>
      ${cardWords.typing.legend.map(
        ([text, meaning]) =>
          html`<dt>${text}</dt>
            <dd>${meaning}</dd>`,
      )}
    </dl>
  </details>`;
}

/** How many tiles the groups hold, and how many are missing or too many. */
export function countWords({ tiles }: FormReading): string {
  const left = HAND_SIZE - tiles;
  const rest = left > 0 ? ` · ${words.toGo(left)}` : left < 0 ? ` · ${words.tooMany(-left)}` : '';
  return `${words.count(tiles)}${rest}`;
}

customElements.define('wr-line-form', WrLineForm);

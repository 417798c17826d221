import { html, nothing, type PropertyValues } from 'lit';
import type { Fields } from '../../../core/base/json.ts';
import type { LineDocument } from '../../../core/card/document.ts';
import { insertGroup, moveGroup, removeGroup, replaceGroup, withForms } from '../../../core/card/edit.ts';
import type { FormReading } from '../../../core/card/form.ts';
import { type LineReading, readLine } from '../../../core/card/line.ts';
import { formatGroup, type PatternGroup } from '../../../core/card/pattern.ts';
import { lineSentence } from '../../../core/card/sentence.ts';
import { groupWords, takesJokers } from '../../../core/card/words.ts';
import { PausedVoice } from '../../parts/announcer.ts';
import { data, element, flag, state, text } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-explain.ts';
import '../../parts/wr-toolbar.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { cardStyles } from './card-styles.ts';
import { linePanelStyles } from './line-panel-styles.ts';
import { lineTone, standingWords } from './line-standing.ts';
import { suitQuestion } from './suit-question.ts';
import './wr-group-picker.ts';
import type { GroupChanged } from './wr-group-picker.ts';
import './wr-line-choices.ts';
import type { LineEdited } from './wr-line-choices.ts';
import { AS_PRINTED, type GroupMoved, type GroupPlace, leafing } from './wr-line-groups.ts';

const words = cardWords.line;
const groupNames = cardWords.group;

/** Size and movement of the first new group; what number it has does not matter. */
const NEW_GROUP: PatternGroup = { tile: { is: 'number', number: 1, suit: 'a', movement: 'first' }, size: 2 };

const Base = element({
  line: data<LineDocument>(),
  /** Distinguishes lines: with another name the panel starts over with a new group. */
  name: text(),
  /** Whether the builder is open. */
  building: flag(),
  /** The form that is built: the first, or a further one behind an "or". */
  form: state(0),
  way: state(AS_PRINTED),
  /** The group that is changed; null for a new one. */
  chosen: state<number | null>(null),
  /** Size and movement for the next new group. */
  next: state<PatternGroup>(() => NEW_GROUP),
});

/**
 * What opens under a line while it is entered: the line drawn and read back in a sentence, how to go on by keys, its
 * ready choices, and the builder. Sends `line-edited`, `or-wanted`, `building-changed`.
 */
export class WrLinePanel extends Base {
  static override styles = [sharedStyles, cardStyles, linePanelStyles];

  readonly #voice = new PausedVoice();

  override disconnectedCallback(): void {
    this.#voice.stop();
    super.disconnectedCallback();
  }

  /** Puts the focus on the first choice. */
  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('wr-line-choices')?.focus();
  }

  /** Scrolls so that the line as it is drawn is seen. */
  bandInView(): void {
    this.renderRoot.querySelector('.band')?.scrollIntoView({ block: 'nearest' });
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('name')) {
      this.chosen = null;
      this.form = 0;
      this.next = NEW_GROUP;
    }
    const { forms } = this.#reading;
    this.form = Math.min(this.form, forms.length - 1);
    if (changed.has('line') || changed.has('form')) this.way = AS_PRINTED;
    if (changed.has('line') && !changed.has('name')) this.#voice.say(`${standingWords(this.#reading)}.`);
    if (this.chosen !== null && this.chosen >= this.#form.groups.length) this.chosen = null;
  }

  get #reading(): LineReading {
    return readLine(this.line);
  }
  get #form(): FormReading {
    const { forms } = this.#reading;
    return forms[this.form] ?? forms[0];
  }

  protected override render(): unknown {
    const reading = this.#reading;
    return html`<div class="stack close">
      ${reading.text === '' ? examples() : this.#band(reading)}
      ${suitQuestion(reading, (change) => emit<LineEdited>(this, 'line-answered', { change, doing: '' }))}
      <p class="soft keys" id="keys">${words.keys}</p>
      <wr-line-choices .line=${this.line} size=${this.next.size}></wr-line-choices>
      <details ?open=${this.building} @toggle=${this.#toggled}>
        <summary>${words.build}</summary>
        ${this.building ? this.#builder() : nothing}
      </details>
    </div>`;
  }

  /** The line drawn and in words. */
  #band(reading: LineReading): unknown {
    const form = this.#form;
    return html`<section class="band" aria-label=${words.groups}>
      ${
        reading.forms.length === 1
          ? nothing
          : html`<wr-choice
              label=${words.forms}
              .options=${reading.forms.map((_, at) => ({ value: String(at), label: words.form(at) }))}
              value=${String(this.form)}
              @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => this.#showForm(Number(detail.value))}
            ></wr-choice>`
      }
      <wr-line-groups
        .reading=${form}
        .way=${this.way}
        .chosen=${this.chosen ?? form.groups.length}
        @group-chosen=${({ detail }: CustomEvent<GroupPlace>) => this.#choose(detail.at)}
        @group-removed=${({ detail }: CustomEvent<GroupPlace>) => this.#remove(detail.at)}
        @group-moved=${({ detail }: CustomEvent<GroupMoved>) => this.#move(detail)}
      ></wr-line-groups>
      <p class="sentence">${reading.pattern.length === 0 ? nothing : lineSentence(reading)}</p>
      <div class="row spread">
        ${this.#facts(reading)} ${leafing(this.way, form.wayCount, (way) => this.#leaf(way))}
      </div>
    </section>`;
  }

  #facts(reading: LineReading): unknown {
    const jokers = this.#form.groups.filter(({ group }) => group.ok && takesJokers(group.value)).length;
    return html`<div class="row facts">
      <span class="count ${lineTone(reading)}">${standingWords(reading)}</span>
      ${
        this.#form.groups.length === 0
          ? nothing
          : html`<wr-explain value=${words.jokers(jokers)} heading=${words.jokersHeading}
              >${words.jokersWords}</wr-explain
            >`
      }
    </div>`;
  }

  #builder(): unknown {
    const { groups } = this.#form;
    const scanned = this.chosen === null ? undefined : groups[this.chosen];
    const name = scanned?.group.ok === true ? groupWords(scanned.group.value) : (scanned?.text ?? '');
    return html`<section class="picker stack close" aria-labelledby="picker">
      <div class="row spread">
        <h3 id="picker">${scanned === undefined ? groupNames.add : groupNames.change(name)}</h3>
        ${scanned === undefined ? nothing : this.#groupActions()}
      </div>
      <wr-group-picker
        .group=${scanned?.group.ok === true ? scanned.group.value : this.next}
        ?adding=${scanned === undefined}
        @group-changed=${this.#changed}
      ></wr-group-picker>
    </section>`;
  }

  #groupActions(): unknown {
    const { groups } = this.#form;
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
    if (this.chosen !== null && !this.building) emit(this, 'building-changed', true);
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

  #showForm(form: number): void {
    this.form = form;
    this.chosen = null;
  }

  #toggled({ target }: Event): void {
    if (target instanceof HTMLDetailsElement && target.open !== this.building)
      emit(this, 'building-changed', target.open);
  }

  /** Puts a text into the form that is shown. */
  #write(form: string): void {
    this.#edit(withForms(this.#reading.forms.map((each) => each.text).with(this.form, form)));
  }

  #edit(change: Fields): void {
    emit<LineEdited>(this, 'line-edited', { change, doing: '' });
  }
}

/** Two whole lines, as they may be printed and as they are typed. */
function examples(): unknown {
  return html`<section class="band" aria-label=${words.examplesHeading}>
    <p class="sentence">${words.examplesHeading}</p>
    <dl>
      ${words.examples.map(
        ({ printed, typed }) =>
          html`<dt>${printed}</dt>
            <dd><kbd>${typed}</kbd></dd>`,
      )}
    </dl>
    <p class="soft">${words.suitsLead}</p>
  </section>`;
}

customElements.define('wr-line-panel', WrLinePanel);

declare global {
  interface HTMLElementTagNameMap {
    'wr-line-panel': WrLinePanel;
  }
}

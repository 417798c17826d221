import { html, nothing, type PropertyValues } from 'lit';
import type { Fields } from '../../../core/base/json.ts';
import { type LineDocument, textField } from '../../../core/card/document.ts';
import { insertGroup, moveGroup, removeGroup, replaceGroup } from '../../../core/card/edit.ts';
import { type LineReading, printedWay, readLine } from '../../../core/card/line.ts';
import { formatGroup, HAND_SIZE, type PatternGroup, suitIn } from '../../../core/card/pattern.ts';
import { groupWords, takesJokers } from '../../../core/card/words.ts';
import { PausedVoice } from '../../parts/announcer.ts';
import { data, element, state, text } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
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
      this.next = NEW_GROUP;
    }
    const reading = readLine(this.line);
    if (changed.has('line')) this.way = printedWay(reading);
    if (changed.has('line') && !changed.has('name')) this.#voice.say(`${countWords(reading)}.`);
    if (this.chosen !== null && this.chosen >= reading.groups.length) this.chosen = null;
  }

  protected override render(): unknown {
    const reading = readLine(this.line);
    return html`<div class="stack">
      <wr-pattern-field
        label=${words.typed}
        .reading=${reading}
        @pattern-typed=${({ detail }: CustomEvent<TypedPattern>) => this.#edit({ pattern: detail.text }, 'pattern')}
      ></wr-pattern-field>
      ${this.#example(reading)} ${this.#picker(reading)} ${typingHelp()}
      <wr-line-settings .line=${this.line} name=${this.name}></wr-line-settings>
    </div>`;
  }

  #example(reading: LineReading): unknown {
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

  #facts(reading: LineReading): unknown {
    const { tiles, whole, ways, groups } = reading;
    const jokers = groups.filter(({ group }) => group.ok && takesJokers(group.value)).length;
    return html`<div class="row facts">
      <span class="count ${whole ? 'whole' : ''} ${tiles > HAND_SIZE ? 'bad' : ''}">${countWords(reading)}</span>
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

  #picker(reading: LineReading): unknown {
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

  #changed({ detail: { group, whole } }: CustomEvent<GroupChanged>): void {
    const pattern = textField(this.line, 'pattern');
    if (this.chosen !== null) this.#edit({ pattern: replaceGroup(pattern, this.chosen, formatGroup(group)) });
    else if (whole) this.#edit({ pattern: insertGroup(pattern, formatGroup(group)) });
    else this.next = group;
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

  #leaf(way: number): void {
    this.way = way;
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
export function countWords({ tiles }: LineReading): string {
  const left = HAND_SIZE - tiles;
  const rest = left > 0 ? ` · ${words.toGo(left)}` : left < 0 ? ` · ${words.tooMany(-left)}` : '';
  return `${words.count(tiles)}${rest}`;
}

customElements.define('wr-line-form', WrLineForm);

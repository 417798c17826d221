import { css, html, nothing } from 'lit';
import { aimAtLine, aimAtSection } from '../../../core/warmup/aims.ts';
import type { AnswerCard } from '../../../core/warmup/answer-room.ts';
import { addAnswer, isFull } from '../../../core/warmup/class-answers.ts';
import { readClassKeeps, readClassPass, readPeople } from '../../../core/warmup/class-typed.ts';
import { type ClassAnswer, peopleWith, type SheetProblem } from '../../../core/warmup/sheet.ts';
import { STEPS } from '../../../core/exchange/steps.ts';
import { formatTiles } from '../../../core/tiles/text.ts';
import { data, element, flag, state } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { classWords } from '../../words/class.ts';
import { warmUpStyles } from './warm-up-styles.ts';

const words = classWords.typed;

const Base = element({
  card: data<AnswerCard>(),
  problem: data<SheetProblem>(),
  give: state(''),
  keeps: state(''),
  aim: state(''),
  people: state('1'),
  stops: flag(),
  giveRefusal: state(''),
  keepsRefusal: state(''),
  peopleRefusal: state(''),
});

/** The form for an answer that a teacher types: tiles given and kept, the aim, how many people. Sends `class-changed`. */
export class WrClassTyped extends Base {
  static override styles = [
    sharedStyles,
    warmUpStyles,
    css`
      .form {
        display: grid;
        gap: 0 var(--space-4);
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 13rem), 1fr));
        align-items: start;
      }

      .labelled {
        min-width: 0;
      }

      .check {
        display: flex;
        align-items: center;
        gap: var(--space-2);
        min-height: var(--target);
      }

      .check input {
        flex: none;
        width: 1.4em;
        height: 1.4em;
      }
    `,
  ];

  protected override render(): unknown {
    return html`<div class="stack" @keydown=${this.#onKey}>
      <h3>${words.title}</h3>
      <div class="form">
        <wr-field
          label=${words.give}
          .value=${this.give}
          .error=${this.giveRefusal}
          .disabled=${this.stops}
          @field-typed=${this.#giveTyped}
        ></wr-field>
        <wr-field
          label=${words.keeps}
          .value=${this.keeps}
          .error=${this.keepsRefusal}
          @field-typed=${this.#keepsTyped}
        ></wr-field>
        ${this.#aims()}
        <wr-field
          label=${words.people}
          type="number"
          .value=${this.people}
          .error=${this.peopleRefusal}
          @field-typed=${this.#peopleTyped}
        ></wr-field>
      </div>
      <div class="row">${this.#stopping()} <wr-button @click=${this.#add}>${words.add}</wr-button></div>
    </div>`;
  }

  /** Every section with its lines. */
  #aims(): unknown {
    const option = (value: string, label: string): unknown =>
      html`<option value=${value} ?selected=${value === this.aim}>${label}</option>`;
    return html`<label class="labelled"
      >${words.aim}
      <select @change=${this.#aimChosen}>
        ${option('', words.noAim)}
        ${this.card.sections.map(
          ({ name, lines }) =>
            html`${option(aimAtSection(name), name)}${lines.map((line) => option(aimAtLine(line.id), line.name))}`,
        )}
      </select>
    </label>`;
  }

  #stopping(): unknown {
    const { mayStopBefore, round } = STEPS[this.problem.step];
    if (!mayStopBefore || round !== 'second') return nothing;
    return html`<label class="check"
      ><input type="checkbox" .checked=${this.stops} @change=${this.#stopChosen} />${words.stopped}</label
    >`;
  }

  #giveTyped({ detail }: CustomEvent<FieldText>): void {
    this.give = detail.value;
    this.giveRefusal = '';
  }

  #keepsTyped({ detail }: CustomEvent<FieldText>): void {
    this.keeps = detail.value;
    this.keepsRefusal = '';
  }

  #peopleTyped({ detail }: CustomEvent<FieldText>): void {
    this.people = detail.value;
    this.peopleRefusal = '';
  }

  #aimChosen({ target }: Event): void {
    if (target instanceof HTMLSelectElement) this.aim = target.value;
  }

  #stopChosen({ target }: Event): void {
    if (target instanceof HTMLInputElement) this.stops = target.checked;
  }

  #onKey(event: KeyboardEvent): void {
    const { target } = event;
    if (event.key === 'Enter' && target instanceof HTMLElement && target.localName === 'wr-field') this.#add();
  }

  /** An illegal entry stays as typed, with a sentence at its field. */
  #add(): void {
    const give = readClassPass(this.problem, this.give);
    const keeps = readClassKeeps(this.problem, this.keeps);
    const people = readPeople(this.people, give.ok ? peopleWith(this.problem, give.value) : 0);
    this.giveRefusal = give.ok || this.stops ? '' : give.problem.message;
    this.keepsRefusal = keeps.ok ? '' : keeps.problem.message;
    this.peopleRefusal = people.ok ? '' : people.problem.message;
    if ((!give.ok && !this.stops) || !keeps.ok || !people.ok) return;
    const answer: ClassAnswer = {
      give: this.stops || !give.ok ? '' : formatTiles(give.value),
      people: people.value,
      ...(this.stops ? { stops: true } : {}),
      ...(keeps.value.size === 0 ? {} : { keeps: formatTiles(keeps.value) }),
      ...(this.aim === '' ? {} : { aim: this.aim }),
    };
    if (isFull(this.problem, answer)) {
      this.peopleRefusal = words.full;
      return;
    }
    emit<SheetProblem>(this, 'class-changed', addAnswer(this.problem, answer));
    this.give = '';
    this.keeps = '';
    this.aim = '';
    this.people = '1';
    this.stops = false;
    this.renderRoot.querySelector('wr-field')?.focus();
  }
}

customElements.define('wr-class-typed', WrClassTyped);

import { html, nothing } from 'lit';
import { STEP_NAMES } from '../../../core/exchange/words.ts';
import type { TimedEvent } from '../../../core/game/events.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-dialog.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { tableWords } from '../../words/table.ts';
import { panelStyles } from './panel-styles.ts';

const words = tableWords.note;

const Base = element({
  app: data<AppContext>(),
  asking: state(false),
  text: state(''),
  about: state('choice'),
  refusal: state(''),
});

/** Asks for a note about the choice just made, or about the whole game; the look-back shows it. */
export class WrNoteDialog extends Base {
  static override styles = [sharedStyles, panelStyles];

  /** Opens with what was typed and not kept; the focus is where one writes. */
  async open(): Promise<void> {
    this.asking = true;
    await this.updateComplete;
    const dialog = this.renderRoot.querySelector('wr-dialog');
    await dialog?.updateComplete;
    this.renderRoot.querySelector('wr-field')?.focus();
  }

  protected override render(): unknown {
    return html`<wr-dialog heading=${words.title} ?open=${this.asking} @dialog-closed=${this.#close}>
      <div class="stack">
        ${this.#subject()}
        <wr-field
          label=${words.text}
          .lines=${3}
          .value=${this.text}
          error=${this.refusal}
          @field-typed=${this.#type}
        ></wr-field>
      </div>
      <wr-button slot="actions" @click=${this.#close}>${words.leave}</wr-button>
      <wr-button slot="actions" look="main" ?disabled=${this.text.trim() === ''} @click=${this.#keep}
        >${words.keep}</wr-button
      >
    </wr-dialog>`;
  }

  /** Asks what the note is about, once there is a choice that it may be about. */
  #subject(): unknown {
    const { events, state } = this.app.session;
    const choice = events[this.#choicePlace];
    if (choice === undefined || !isChoice(choice, state.seat)) return nothing;
    const options = [
      { value: 'choice', label: words.choice(nameOf(choice)) },
      { value: 'game', label: words.game },
    ];
    return html`<wr-choice
      label=${words.about}
      .options=${options}
      .value=${this.about}
      @choice-changed=${this.#choose}
    ></wr-choice>`;
  }

  /** Where the user's last choice stands among the events; -1 before the first. */
  get #choicePlace(): number {
    const seat = this.app.session.state.seat;
    return this.app.session.events.findLastIndex((event) => isChoice(event, seat));
  }

  #close(): void {
    this.asking = false;
  }

  #choose({ detail }: CustomEvent<ChoiceChanged>): void {
    this.about = detail.value;
  }

  #type({ detail }: CustomEvent<FieldText>): void {
    this.text = detail.value;
  }

  #keep(): void {
    const place = this.about === 'choice' ? this.#choicePlace : -1;
    const text = this.text.trim();
    const kept = this.app.session.apply({ type: 'noted', text, ...(place < 0 ? {} : { about: place }) });
    this.refusal = kept.ok ? '' : kept.problem.message;
    if (!kept.ok) return;
    this.text = '';
    this.asking = false;
  }
}

type ChoiceEvent = Extract<TimedEvent, { readonly type: 'gave' | 'discarded' | 'called' | 'swapped' }>;

/** What the look-back judges: own passes, discards, calls and joker swaps. */
function isChoice(event: TimedEvent, seat: string | null): event is ChoiceEvent {
  if (event.type === 'gave') return true;
  return (event.type === 'discarded' || event.type === 'called' || event.type === 'swapped') && event.seat === seat;
}

/** "first right pass", "discard". */
function nameOf(event: ChoiceEvent): string {
  return event.type === 'gave' ? STEP_NAMES[event.step] : words.kinds[event.type];
}

customElements.define('wr-note-dialog', WrNoteDialog);

declare global {
  interface HTMLElementTagNameMap {
    'wr-note-dialog': WrNoteDialog;
  }
}

import { css, html, LitElement, nothing } from 'lit';
import type { TimedEvent } from '../../../core/game/events.ts';
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
const ABOUT = [
  { value: 'choice', label: words.choice },
  { value: 'game', label: words.game },
];

/** Asks for a note about the choice just made, or about the whole game; the look-back shows it. */
export class WrNoteDialog extends LitElement {
  static override properties = {
    app: { attribute: false },
    asking: { state: true },
    text: { state: true },
    about: { state: true },
    refusal: { state: true },
  };

  declare app: AppContext;
  declare asking: boolean;
  declare text: string;
  declare about: string;
  declare refusal: string;

  static override styles = [sharedStyles, panelStyles, css``];

  constructor() {
    super();
    this.asking = false;
    this.text = '';
    this.about = 'choice';
    this.refusal = '';
  }

  /** Opens with what was typed and not kept. */
  open(): void {
    this.asking = true;
  }

  protected override render(): unknown {
    return html`<wr-dialog heading=${words.title} ?open=${this.asking} @dialog-closed=${this.#close}>
      <div class="stack">
        ${
          this.#choicePlace < 0
            ? nothing
            : html`<wr-choice
                label=${words.about}
                .options=${ABOUT}
                .value=${this.about}
                @choice-changed=${this.#choose}
              ></wr-choice>`
        }
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

/** What the look-back judges: own passes, discards and calls. */
function isChoice(event: TimedEvent, seat: string | null): boolean {
  if (event.type === 'gave') return true;
  return (event.type === 'discarded' || event.type === 'called') && event.seat === seat;
}

customElements.define('wr-note-dialog', WrNoteDialog);

declare global {
  interface HTMLElementTagNameMap {
    'wr-note-dialog': WrNoteDialog;
  }
}

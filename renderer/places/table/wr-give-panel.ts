import { html, LitElement, nothing } from 'lit';
import { type GiveDue, legalEvents } from '../../../core/game/legal.ts';
import { formatTileList } from '../../../core/tiles/text.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-slots.ts';
import type { SlotsReturned } from '../../parts/wr-slots.ts';
import { takeBack } from '../../session/layout.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { tableWords } from '../../words/table.ts';
import { exchangeStyles } from './exchange-styles.ts';
import { panelStyles } from './panel-styles.ts';

const words = tableWords.exchange;
const COUNTS: readonly string[] = ['0', '1', '2', '3'];

/** The pass that is due: the tray, how many go unseen, whether the round is stopped. */
export class WrGivePanel extends LitElement {
  static override properties = {
    app: { attribute: false },
    returnTo: { attribute: false },
    asked: { state: true },
    offered: { state: true },
    refusal: { state: true },
  };

  declare app: AppContext;
  /** Where tiles of the tray may be dropped to be taken back. */
  declare returnTo: Element | null;
  /** Courtesy: how many tiles each side asks for; null until said. */
  declare asked: number | null;
  declare offered: number | null;
  declare refusal: string;

  static override styles = [sharedStyles, panelStyles, exchangeStyles];

  constructor() {
    super();
    this.returnTo = null;
    this.asked = null;
    this.offered = null;
    this.refusal = '';
    new StoreController(
      this,
      () => [this.app.session, this.app.analysis],
      () => [this.app.session.state, this.app.session.layout, this.app.analysis.blind],
    );
  }

  protected override render(): unknown {
    const due = legalEvents(this.app.session.state).give;
    if (due === null) return nothing;
    return html`<div class="stack">
      <h2>${words.giveTitle[due.step]}</h2>
      ${due.step === 'courtesy' ? this.#courtesy() : nothing}
      <div class="row tray">${this.#slots(due)} ${this.#give(due)}</div>
      <p class="refusal" role="alert">${this.refusal}</p>
      ${due.blindUpTo > 0 ? this.#blindChoice(due) : nothing} ${this.#stopChoice()}
    </div>`;
  }

  /** How many tiles of the rack this pass takes; null while the courtesy numbers are not said. */
  #wanted(due: GiveDue): number | null {
    if (due.step !== 'courtesy') return due.most - Math.min(this.app.analysis.blind, due.blindUpTo);
    return this.asked === null || this.offered === null ? null : Math.min(this.asked, this.offered);
  }

  #slots(due: GiveDue): unknown {
    const places = due.step === 'courtesy' ? (this.#wanted(due) ?? due.most) : due.most;
    return html`<wr-slots
      label=${words.slots}
      .tiles=${this.app.session.layout.aside}
      .places=${places}
      .returnTo=${this.returnTo}
      .blind=${due.blindUpTo > 0 ? this.app.analysis.blind : 0}
      @slots-returned=${this.#returned}
    ></wr-slots>`;
  }

  #give(due: GiveDue): unknown {
    const wanted = this.#wanted(due);
    return html`<wr-button look="main" reason=${this.#reason(wanted)} @click=${this.#giveNow}
      >${words.give(wanted ?? due.most)}</wr-button
    >`;
  }

  #reason(wanted: number | null): string {
    if (wanted === null) return words.sayNumbers;
    const short = wanted - this.app.session.layout.aside.length;
    return short > 0 ? words.chooseMore(short) : short < 0 ? words.chooseFewer(-short) : '';
  }

  #blindChoice(due: GiveDue): unknown {
    const options = COUNTS.slice(0, due.blindUpTo + 1).map((value) => ({
      value,
      label: value === '0' ? words.blindNone : value,
    }));
    return html`<details class="more" ?open=${this.app.analysis.blind > 0}>
      <summary>${words.blind}</summary>
      <p class="soft">${words.blindHelp}</p>
      <wr-choice
        label=${words.blind}
        labelHidden
        .options=${options}
        .value=${String(this.app.analysis.blind)}
        @choice-changed=${this.#blindChosen}
      ></wr-choice>
    </details>`;
  }

  #courtesy(): unknown {
    const options = COUNTS.map((value) => ({ value, label: value }));
    const both = this.asked !== null && this.offered !== null;
    return html`<div class="row">
        <wr-choice
          label=${words.asked}
          .options=${options}
          .value=${this.asked === null ? '' : String(this.asked)}
          @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => (this.asked = Number(detail.value))}
        ></wr-choice>
        <wr-choice
          label=${words.offered}
          .options=${options}
          .value=${this.offered === null ? '' : String(this.offered)}
          @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => (this.offered = Number(detail.value))}
        ></wr-choice>
      </div>
      <p class="soft" role="status">
        ${both ? words.courtesyCount(Math.min(this.asked ?? 0, this.offered ?? 0)) : words.sayNumbers}
      </p>`;
  }

  #stopChoice(): unknown {
    const { state } = this.app.session;
    const { stop } = legalEvents(state);
    if (stop === null) return nothing;
    const mine = state.seat === null ? {} : { seat: state.seat };
    const help = stop === 'left2' ? words.stopHelp : words.noCourtesyHelp;
    return html`<div class="row stop">
      ${
        stop === 'left2'
          ? html`<wr-button @click=${() => this.app.session.apply({ type: 'stopped', before: stop, ...mine })}
              >${words.stopMine}</wr-button
            >`
          : nothing
      }
      <wr-button @click=${() => this.app.session.apply({ type: 'stopped', before: stop })}
        >${stop === 'left2' ? words.stop : words.noCourtesy}</wr-button
      >
      <p class="soft">${help}</p>
    </div>`;
  }

  #blindChosen({ detail }: CustomEvent<ChoiceChanged>): void {
    this.app.analysis.passBlind(COUNTS.indexOf(detail.value));
  }

  #returned({ detail }: CustomEvent<SlotsReturned>): void {
    const { session } = this.app;
    session.lay(takeBack(session.layout, detail.ids));
  }

  #giveNow(): void {
    const { session, analysis } = this.app;
    const due = legalEvents(session.state).give;
    if (due === null) return;
    const given = session.apply({
      type: 'gave',
      step: due.step,
      tiles: formatTileList(session.layout.aside.map((tile) => tile.kind)),
      ...(due.blindUpTo > 0 && analysis.blind > 0 ? { blind: analysis.blind } : {}),
      ...(due.step === 'courtesy' ? { asked: this.asked ?? 0, offered: this.offered ?? 0 } : {}),
    });
    this.refusal = given.ok ? '' : given.problem.message;
    if (!given.ok) return;
    this.asked = null;
    this.offered = null;
  }
}

customElements.define('wr-give-panel', WrGivePanel);

declare global {
  interface HTMLElementTagNameMap {
    'wr-give-panel': WrGivePanel;
  }
}

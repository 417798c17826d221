import { html, nothing } from 'lit';
import { CHAIRS, chairOf } from '../../../../core/game/evening.ts';
import { type Seat, SEATS } from '../../../../core/exchange/steps.ts';
import { data, element } from '../../../parts/element.ts';
import '../../../parts/wr-field.ts';
import type { FieldText } from '../../../parts/wr-field.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { eveningWords as words, playWords } from '../../../words/play.ts';
import { panelStyles } from '../panel-styles.ts';
import { keepKeys } from '../../../parts/undo-keys.ts';
import { resultStyles } from './result-styles.ts';

/** The longest name and place that a game keeps. */
const LONGEST = { name: 60, place: 200 } as const;

const Base = element({
  app: data<AppContext>(),
});

/** Where the evening is played and, if somebody cares, with whom; kept with the game as it is written. */
export class WrEveningAbout extends Base {
  static override styles = [sharedStyles, panelStyles, resultStyles];

  constructor() {
    super();
    new StoreController(this, () => [this.app.session]);
  }

  protected override render(): unknown {
    const { session } = this.app;
    const own = session.state.seat;
    return html`<div class="stack" @keydown=${keepKeys}>
      <wr-field
        label=${words.place}
        hint=${words.placeHint}
        .value=${session.place}
        @field-changed=${this.#placed}
      ></wr-field>
      ${own === null ? nothing : this.#names(own)}
    </div>`;
  }

  #names(own: Seat): unknown {
    const others = SEATS.filter((seat) => seat !== own).toSorted(
      (one, other) => CHAIRS.indexOf(chairOf(one, own)) - CHAIRS.indexOf(chairOf(other, own)),
    );
    return html`<details>
      <summary>${words.names}</summary>
      <div class="stack">
        <p class="soft">${words.namesHelp}</p>
        ${others.map((seat) => this.#name(seat, own))}
      </div>
    </details>`;
  }

  #name(seat: Seat, own: Seat): unknown {
    return html`<wr-field
      label=${words.nameOf(playWords.seated(playWords.chair[chairOf(seat, own)], seat))}
      .value=${this.app.session.players[seat] ?? ''}
      @field-changed=${({ detail }: CustomEvent<FieldText>) => this.#named(seat, detail.value)}
    ></wr-field>`;
  }

  #placed({ detail }: CustomEvent<FieldText>): void {
    this.app.session.describe({ place: detail.value.trim().slice(0, LONGEST.place) });
  }

  #named(seat: Seat, typed: string): void {
    const { session } = this.app;
    const name = typed.trim().slice(0, LONGEST.name);
    const { [seat]: _, ...others } = session.players;
    session.describe({ players: name === '' ? others : { ...others, [seat]: name } });
  }
}

customElements.define('wr-evening-about', WrEveningAbout);

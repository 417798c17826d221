import { css, html, nothing } from 'lit';
import { CHAIRS, eveningSheet } from '../../../core/game/evening.ts';
import { data, element, state } from '../../parts/element.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { eveningWords as words, journalWords } from '../../words/journal.ts';
import { longDayOf, type JournalGame } from './journal-game.ts';
import { journalStyles } from './journal-styles.ts';
import type { JournalStore } from './journal-store.ts';
import { gameLink } from './routes.ts';
import { signed } from '../../words/numbers.ts';

/** Evenings drawn at first; the others come when asked for. */
const AT_FIRST = 12;

const Base = element({
  store: data<JournalStore>(),
  many: state(AT_FIRST),
});

/** The evenings, newest first, each with what every chair gained and the running totals. */
export class WrEveningsView extends Base {
  static override styles = [
    sharedStyles,
    placeStyles,
    journalStyles,
    css`
      .scroll {
        overflow-x: auto;
      }

      table {
        border-collapse: collapse;
        width: 100%;
      }

      th,
      td {
        padding: 0.3em 1em 0.3em 0;
        border-top: 1px solid var(--hairline);
        text-align: start;
      }

      .number {
        text-align: end;
      }

      tfoot th,
      tfoot td {
        border-top: 2px solid var(--edge);
        font-weight: 700;
      }

      td a {
        display: inline-grid;
        align-items: center;
        min-height: var(--target);
        min-width: var(--target);
        color: var(--accent);
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.store]);
  }

  readonly #more = (): void => {
    this.many += AT_FIRST;
  };

  protected override render(): unknown {
    const evenings = eveningsOf(this.store.games ?? []);
    if (evenings.length === 0) return html`<p>${words.none}</p>`;
    return html`<p>${words.lead}</p>
      ${evenings.slice(0, this.many).map((games) => evening(games))}
      ${
        evenings.length > this.many
          ? html`<wr-button @click=${this.#more}>${journalWords.earlier}</wr-button>`
          : nothing
      }`;
  }
}

/** Games with the same evening word, each evening oldest game first, the newest evening first. */
function eveningsOf(games: readonly JournalGame[]): (readonly JournalGame[])[] {
  const evenings = new Map<string, JournalGame[]>();
  for (const game of games) {
    if (game.evening === null || game.evening === '') continue;
    evenings.set(game.evening, [...(evenings.get(game.evening) ?? []), game]);
  }
  return [...evenings.values()].map((each) =>
    [...each].sort((one, other) => (one.startedAt < other.startedAt ? -1 : 1)),
  );
}

function evening(games: readonly JournalGame[]): unknown {
  const [first] = games;
  if (first === undefined) return nothing;
  const rows = eveningSheet(games.map(({ id, seat, payments }) => ({ id, seat, payments })));
  const totals = rows.at(-1)?.totals;
  const heading = words.when(longDayOf(first), games.length);
  return html`<section aria-label=${heading}>
    <h2>${heading}</h2>
    <div class="scroll" tabindex="0" role="region" aria-label=${heading}>
      <table>
        <thead>
          <tr>
            <th scope="col">${words.game}</th>
            <th scope="col">${journalWords.seat}</th>
            <th scope="col">${words.result}</th>
            ${CHAIRS.map((chair) => html`<th scope="col" class="number">${words.chairs[chair]}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${rows.map(({ gains }, place) => {
            const game = games[place] ?? first;
            return html`<tr>
              <td><a href=${gameLink(game.id)} aria-label=${`${words.game} ${place + 1}`}>${place + 1}</a></td>
              <td>${game.seat ?? words.unknown}</td>
              <td>${game.stage}</td>
              ${CHAIRS.map((chair) => html`<td class="number">${gains === null ? words.unknown : signed(gains[chair])}</td>`)}
            </tr>`;
          })}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colspan="3">${words.total}</th>
            ${CHAIRS.map((chair) => html`<td class="number">${signed(totals?.[chair] ?? 0)}</td>`)}
          </tr>
        </tfoot>
      </table>
    </div>
  </section>`;
}

customElements.define('wr-evenings-view', WrEveningsView);

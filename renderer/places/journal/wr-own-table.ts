import { css, html, nothing, type PropertyValues } from 'lit';
import type { Mean } from '../../../core/base/intervals.ts';
import { isFields } from '../../../core/base/json.ts';
import type { Rate } from '../../../core/base/statistics.ts';
import { textField } from '../../../core/card/document.ts';
import {
  FEWEST_GAMES,
  judgeKind,
  type KindFigures,
  type KindVerdict,
  type OwnTable,
  ownTable,
} from '../../../core/journal/own-table.ts';
import type { TableKind } from '../../../core/table/kinds.ts';
import { announce } from '../../parts/announcer.ts';
import { data, element } from '../../parts/element.ts';
import { howCounted } from '../../parts/how-counted.ts';
import '../../parts/wr-button.ts';
import { chooseTable } from '../../session/choose-table.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { countedWords } from '../../words/counted.ts';
import { ownTableWords as words } from '../../words/journal.ts';
import { percent } from '../../words/numbers.ts';
import type { JournalGame } from './journal-game.ts';
import { journalStyles } from './journal-styles.ts';
import { KindFits } from './kind-fits.ts';

const Base = element({
  app: data<AppContext>(),
  /** The user's own games that are counted. */
  games: data<readonly JournalGame[]>(),
});

/** How the user's own table compares with the kinds of table, and the kind that fits it, to be chosen by a button. */
export class WrOwnTable extends Base {
  static override styles = [
    sharedStyles,
    placeStyles,
    journalStyles,
    css`
      ul {
        display: flex;
        flex-direction: column;
        gap: var(--space-2);
        padding: 0;
        list-style: none;
      }

      li span {
        display: block;
      }

      /* Room for the longest of what is said here, so that nothing below moves when it comes. */
      .verdict {
        display: flex;
        flex-direction: column;
        align-items: flex-start;
        gap: var(--space-2);
        min-height: calc(7em + var(--target));
      }

      progress {
        width: min(20rem, 100%);
        accent-color: var(--accent);
      }

      @media print {
        wr-button {
          display: none;
        }
      }
    `,
  ];

  #fits: KindFits | null = null;

  constructor() {
    super();
    new StoreController(this, () => [this.app.preferences]);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#fits = new KindFits(this.app, () => this.requestUpdate());
  }

  override disconnectedCallback(): void {
    this.#fits?.stop();
    super.disconnectedCallback();
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    if (this.#own().games >= FEWEST_GAMES) this.#fits?.begin();
  }

  protected override render(): unknown {
    const own = this.#own();
    return html`<section aria-labelledby="own-table">
      <h2 id="own-table">${words.title}</h2>
      ${own.games < FEWEST_GAMES ? html`<p>${words.few(own.games)}</p>` : this.#compared(own)}
    </section>`;
  }

  /** Of the games with the card in use, which the kinds are compared on. */
  #own(): OwnTable {
    const { card } = this.app.session;
    const fields = isFields(card) ? card : {};
    const [title, season] = [textField(fields, 'title').slice(0, 200), textField(fields, 'season').slice(0, 200)];
    return ownTable(this.games.filter((game) => game.cardTitle === title && game.season === season));
  }

  #compared(own: OwnTable): unknown {
    const kinds = this.#fits?.figures ?? [];
    const { wall, drawn, secondRounds } = own;
    return html`<p>${words.lead(own.games)}</p>
      ${howCounted(countedWords.ownTable)}
      <ul>
        <li>
          ${words.wall(wall.hits, wall.of, rangeOf(wall))}
          <span class="soft">${atKinds(kinds, (kind) => percent(kind.wall))}</span>
        </li>
        <li>
          ${words.drawn(drawn.count, averageOf(drawn))}
          <span class="soft">${atKinds(kinds, (kind) => String(Math.round(kind.drawn)))}</span>
        </li>
        <li>
          ${words.rounds(secondRounds.hits, secondRounds.of, rangeOf(secondRounds))}
          <span class="soft">${atKinds(kinds, (kind) => percent(kind.secondRounds))}</span>
        </li>
      </ul>
      <div class="verdict">${this.#verdict(own, kinds)}</div>`;
  }

  #verdict(own: OwnTable, kinds: readonly KindFigures[]): unknown {
    const { isWhole = false, failed = false, progress = 0 } = this.#fits ?? {};
    if (failed) return html`<p role="status">${words.failed}</p>`;
    if (!isWhole) {
      return html`<p role="status">${words.playing}</p>
        <progress aria-label=${words.playing} max="1" .value=${progress}></progress>`;
    }
    const { table } = this.app.preferences.values;
    const verdict = judgeKind(own, kinds, table);
    return html`<p id="said" role="status" tabindex="-1">${verdictWords(verdict, table)}</p>
      ${
        verdict.says === 'other'
          ? html`<wr-button @click=${() => this.#use(verdict.kind)}>${words.use(verdict.kind)}</wr-button>
              <p class="soft">${words.note}</p>`
          : nothing
      }`;
  }

  /** The button goes with what it did, so the focus goes to what is said then. */
  #use(kind: TableKind): void {
    chooseTable(this.app, kind);
    announce(words.used(kind));
    this.renderRoot.querySelector<HTMLElement>('#said')?.focus();
  }
}

function verdictWords(verdict: KindVerdict, used: TableKind): string {
  if (verdict.says === 'other') return words.other(verdict.kind, used, verdict.times);
  return verdict.says === 'fits' ? words.fits(used) : words.untold(used);
}

function rangeOf({ share, low, high }: Rate): string {
  return words.ranged(percent(share ?? 0), percent(low), percent(high));
}

/** One value alone has no range. */
function averageOf({ mean, interval }: Mean): string {
  const [middle, low, high] = [mean ?? 0, interval?.low ?? 0, interval?.high ?? 0].map((each) =>
    String(Math.round(each)),
  );
  return interval === null ? `${middle}` : words.ranged(`${middle}`, `${low}`, `${high}`);
}

/** "Quick 3 %, club 10 %, relaxed 22 %."; dots for a kind whose games are not known yet, so that nothing moves. */
function atKinds(kinds: readonly KindFigures[], figure: (kind: KindFigures) => string): string {
  const at = (kind: TableKind): string => {
    const known = kinds.find((each) => each.kind === kind);
    return known === undefined ? '…' : figure(known);
  };
  return words.kinds(at('quick'), at('club'), at('relaxed'));
}

customElements.define('wr-own-table', WrOwnTable);

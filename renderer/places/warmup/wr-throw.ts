import { css, html, nothing } from 'lit';
import type { AdvisedDocument } from '../../../core/engine/documents.ts';
import type { Seat } from '../../../core/exchange/steps.ts';
import { likelyDrawn } from '../../../core/game/stage.ts';
import { isRight } from '../../../core/review/decision.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import { throwProgress } from '../../../core/warmup/progress.ts';
import { data, element, state } from '../../parts/element.ts';
import type { RackTile } from '../../parts/rack/rack-tile.ts';
import '../../parts/rack/wr-rack.ts';
import type { RackIds } from '../../parts/rack/wr-rack.ts';
import { tileRow } from '../../parts/tile/tile-row.ts';
import '../../parts/wr-button.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { gamesOfHundred } from '../../words/numbers.ts';
import { playWords } from '../../words/play.ts';
import { throwWords as words } from '../../words/throw.ts';
import { riskSentence, riskWords } from '../table/play/advised.ts';
import { costPart } from '../table/play/cost-part.ts';
import { inChairOrder, seatName } from '../table/play/seat-names.ts';
import { groupsShown, seatRows, seatRowStyles } from '../table/play/seat-row.ts';
import { panelStyles } from '../table/panel-styles.ts';
import { failed } from '../table/work-part.ts';
import type { PracticeRoom } from './practice-room.ts';
import { type ThrowMoment, ThrowRun } from './throw-run.ts';
import { warmUpStyles } from './warm-up-styles.ts';

/** Nobody at a simulated table has a name. */
const NO_NAMES = {};

const Base = element({
  room: data<PracticeRoom>(),
  /** The tile that is chosen to be thrown. */
  chosen: state(''),
});

/** Problems of play: a moment with two groups of another open, what is thrown, and then what each tile costs. */
export class WrThrow extends Base {
  static override styles = [
    sharedStyles,
    panelStyles,
    warmUpStyles,
    seatRowStyles,
    css`
      wr-rack {
        --tile-width: clamp(48px, (100cqi - 32px) / 14 - 8px, 60px);
        --tile-gap: 8px;
      }

      @container (max-width: 820px) {
        wr-rack {
          --tile-width: clamp(47.7px, 100cqi / 7 - 8px, 60px);
          --rack-side: 4px;
        }
      }

      .stack {
        container-type: inline-size;
      }

      .small {
        --tile-width: 30px;
      }

      ol {
        padding: 0;
        list-style: none;
      }

      ol li {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 var(--space-3);
        min-height: var(--target);
        padding-inline: var(--space-2);
        border-bottom: 1px solid var(--hairline);
      }

      /* Its room is kept while it is worked out. */
      .verdict {
        min-height: 3.2em;
      }

      ol wr-explain {
        --explain-wrap: normal;
        max-width: 100%;
      }

      .equal {
        background: var(--accent-wash);
      }

      .own {
        box-shadow: inset 6px 0 var(--accent);
      }
    `,
  ];

  #run: ThrowRun | null = null;

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  get #throws(): ThrowRun {
    this.#run ??= new ThrowRun(this.room);
    return this.#run;
  }

  protected override render(): unknown {
    const { moment, finding } = this.#throws;
    if (finding.status === 'failed') return failed(words.failed, finding.message, () => this.#throws.again());
    if (moment !== null) return this.#problem(moment);
    const { rate } = throwProgress(this.room.history);
    return html`<div class="stack" aria-busy=${finding.status === 'pending'}>
      <p>${words.lead}</p>
      ${rate.of === 0 ? nothing : html`<p class="soft">${words.done(rate.hits, rate.of)}</p>`}
      ${
        finding.status === 'pending'
          ? html`<p>${words.finding}</p>`
          : html`<div><wr-button look="main" @click=${this.#next}>${words.start}</wr-button></div>`
      }
    </div>`;
  }

  #problem(moment: ThrowMoment): unknown {
    const { thrown } = this.#throws;
    return html`<div class="stack">
      <h2 tabindex="-1">${words.question}</h2>
      <p class="soft">${words.about(moment.seat, likelyDrawn(moment.state))}</p>
      ${thrown === null ? this.#asking(moment) : this.#answered(moment)}
      <p class="unseen" role="status">${thrown === null ? '' : this.#verdict}</p>
    </div>`;
  }

  #asking(moment: ThrowMoment): unknown {
    const tiles = tilesOf(moment);
    const kind = tiles.find(({ id }) => id === this.chosen)?.kind;
    return html`${this.#open(moment)}
      <div>
        <wr-button
          look="main"
          reason=${kind === undefined ? words.chooseFirst : ''}
          label=${kind === undefined ? '' : words.throwing(nameOf(kind))}
          @click=${() => this.#throw(tiles, this.chosen)}
          >${words.throwIt}</wr-button
        >
      </div>
      <wr-rack
        label=${words.rack}
        .tiles=${tiles}
        .tiers=${1}
        .selected=${this.chosen === '' ? [] : [this.chosen]}
        .limit=${1}
        @rack-selected=${({ detail }: CustomEvent<RackIds>) => (this.chosen = detail.ids.at(-1) ?? '')}
        @rack-sent=${({ detail }: CustomEvent<RackIds>) => this.#throw(tiles, detail.ids[0] ?? '')}
      ></wr-rack>
      <details>
        <summary>${playWords.discards(moment.state.discards.length)}</summary>
        <div class="small">${tileRow(moment.state.discards.map(({ kind }) => kind))}</div>
      </details>`;
  }

  /** The groups that lie open, seat by seat; the own ones where there are any. */
  #open({ state: game, seat: own }: ThrowMoment): unknown {
    const table = { state: game, players: NO_NAMES };
    const shows = (seat: Seat): boolean => seat !== own || game.exposures.some((each) => each.seat === own);
    return html`<h3>${words.others}</h3>
      <ul class="seats">
        ${inChairOrder(table)
          .filter(shows)
          .map(
            (seat) =>
              html`<li class="glance"><strong>${seatName(table, seat)}</strong> ${groupsShown(table, seat)}</li>`,
          )}
      </ul>`;
  }

  #answered(moment: ThrowMoment): unknown {
    const { thrown, advice, others } = this.#throws;
    const table = { state: moment.state, players: NO_NAMES };
    return html`${tileRow(moment.state.rack.toKinds())}
      <div><wr-button look="main" @click=${this.#next}>${words.next}</wr-button></div>
      <p class="verdict"><strong>${thrown === null ? '' : words.thrown(nameOf(thrown))} ${this.#verdict}</strong></p>
      <h3>${words.others}</h3>
      ${others.value === null ? html`<div class="seats"></div>` : seatRows(table, others.value.seats)}
      ${advice.status === 'failed' ? failed(words.failed, advice.message, () => this.#throws.again()) : nothing}
      ${advice.status === 'done' && advice.value !== null ? this.#list(advice.value.choices) : nothing}`;
  }

  get #verdict(): string {
    const { judged } = this.#throws;
    if (judged === null || judged.verdict === null) return words.working;
    const said = isRight(judged.verdict)
      ? words.right
      : judged.verdict === 'slip' && judged.slip !== null
        ? words.slips[judged.slip]
        : words.costs(gamesOfHundred(judged.cost));
    return [said, riskSentence(judged)].filter(Boolean).join(' ');
  }

  #list(choices: readonly AdvisedDocument[]): unknown {
    const { judged } = this.#throws;
    return html`<h3>${words.list}</h3>
      <ol class="small">
        ${choices.map(
          (choice) =>
            html`<li
              class="${choice.verdict !== null && isRight(choice.verdict) ? 'equal' : ''} ${choice === judged ? 'own' : ''}"
            >
              ${choice.tiles.length === 0 ? words.other : tileRow(choice.tiles)} ${costPart(choice)}
              <span class="soft">${riskWords(choice)}</span>
            </li>`,
        )}
      </ol>`;
  }

  #throw(tiles: readonly RackTile[], id: string): void {
    const kind = tiles.find((tile) => tile.id === id)?.kind;
    if (kind === undefined) return;
    this.#throws.throw(kind);
    void this.#focusHeading();
  }

  async #next(): Promise<void> {
    this.chosen = '';
    await this.#throws.next();
    await this.#focusHeading();
  }

  /** The button that was pressed is gone: the focus moves to where the new content begins. */
  async #focusHeading(): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('h2')?.focus();
  }
}

function tilesOf({ state: game }: ThrowMoment): RackTile[] {
  return game.rack.toKinds().map((kind, place) => ({ id: `t${place}`, kind, space: 'none' as const }));
}

customElements.define('wr-throw', WrThrow);

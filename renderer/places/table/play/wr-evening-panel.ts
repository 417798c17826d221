import { html, nothing, type PropertyValues } from 'lit';
import {
  type Chair,
  chairOf,
  CHAIRS,
  type EveningRow,
  eveningSheet,
  nextSeat,
  playersMoved,
} from '../../../../core/game/evening.ts';
import { stageOf } from '../../../../core/game/stage.ts';
import { SEATS } from '../../../../core/exchange/steps.ts';
import { type Result, success } from '../../../../core/base/result.ts';
import type { Payments } from '../../../../core/game/points.ts';
import { data, element, state } from '../../../parts/element.ts';
import { emit } from '../../../parts/emit.ts';
import '../../../parts/wr-button.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { eveningWords as words, playWords } from '../../../words/play.ts';
import { panelStyles } from '../panel-styles.ts';
import { resultStyles } from './result-styles.ts';
import './wr-evening-about.ts';
import { signed } from '../../../words/numbers.ts';
import type { Desk, GameEntry } from '../../../../main/desk/desk.ts';
import type { GameSession } from '../../../session/game-session.ts';
import { seatOf } from './seat-names.ts';

/** A game of the evening and the sums after it. */
interface EveningLine extends EveningRow {
  /** How it ended, in words. */
  readonly stage: string;
}

/**
 * The evening's sheet up to the game at hand, which counts as it stands in the window: the list of
 * games may be a moment behind.
 */
async function eveningLines(
  desk: Pick<Desk, 'listGames'>,
  session: GameSession,
  payments: Payments | null,
  stage: string,
): Promise<Result<readonly EveningLine[]>> {
  const games = await desk.listGames();
  if (!games.ok) return games;
  const others = session.evening === undefined ? [] : games.value.filter((entry) => isBefore(entry, session));
  const ordered = others.toSorted((one, other) => (one.startedAt < other.startedAt ? -1 : 1));
  const sheet = eveningSheet([
    ...ordered.map((entry) => ({ id: entry.id, seat: seatOf(entry.seat), payments: entry.payments })),
    { id: session.id, seat: session.state.seat, payments },
  ]);
  const stages = [...ordered.map((entry) => entry.stage), stage];
  return success(sheet.map((row, place) => ({ ...row, stage: stages[place] ?? '' })));
}

function isBefore(entry: GameEntry, { id, evening, startedAt }: GameSession): boolean {
  return entry.evening === evening && entry.id !== id && entry.startedAt <= startedAt;
}

const Base = element({
  app: data<AppContext>(),
  lines: state<readonly EveningLine[] | null>(null),
  problem: state(''),
});

/** The evening's running totals by chair, and the way to its next game. Sends `next-game`. */
export class WrEveningPanel extends Base {
  static override styles = [sharedStyles, panelStyles, resultStyles];

  #loadedFor = '';

  constructor() {
    super();
    new StoreController(this, () => [this.app.session]);
  }

  /** Puts the focus on the way to the next game. */
  override focus(): void {
    this.renderRoot.querySelector('wr-button')?.focus();
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    const { id, evening, state, payment } = this.app.session;
    const asked = JSON.stringify([id, evening, state.result, payment]);
    if (asked === this.#loadedFor) return;
    this.#loadedFor = asked;
    void this.#load(asked);
  }

  protected override render(): unknown {
    const { seat } = this.app.session.state;
    return html`<div class="stack">
      <div class="stack">
        <wr-button look="main" @click=${this.#next}>${words.next}</wr-button>
        ${seat === null ? nothing : html`<p class="soft">${words.nextSeat(nextSeat(seat))}</p>`}
      </div>
      <h3>${words.title}</h3>
      ${this.problem === '' ? nothing : html`<p class="refusal" role="alert">${this.problem}</p>`} ${this.#table()}
      <wr-evening-about .app=${this.app}></wr-evening-about>
    </div>`;
  }

  #table(): unknown {
    if (this.lines === null) return html`<p class="loading soft">${words.loading}</p>`;
    const totals = this.lines.at(-1)?.totals;
    return html`<table class="sums">
      <caption class="unseen">
        ${words.table}
      </caption>
      <thead>
        <tr>
          <th scope="col">${words.game}</th>
          ${CHAIRS.map((chair) => html`<th scope="col" class="amount">${this.#nameOf(chair)}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${this.lines.map(
          (line, place) =>
            html`<tr>
              <th scope="row">${words.gameNumber(place + 1)} <span class="unseen">${line.stage}</span></th>
              ${
                line.gains === null
                  ? html`<td colspan="4">${words.unknown}</td>`
                  : CHAIRS.map((chair) => html`<td class="amount">${signed(line.gains?.[chair] ?? 0)}</td>`)
              }
            </tr>`,
        )}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">${words.total}</th>
          ${CHAIRS.map((chair) => html`<td class="amount">${signed(totals?.[chair] ?? 0)}</td>`)}
        </tr>
      </tfoot>
    </table>`;
  }

  #nameOf(chair: Chair): string {
    const { state, players } = this.app.session;
    const own = state.seat;
    const seat = own === null ? undefined : SEATS.find((each) => chairOf(each, own) === chair);
    const name = seat === undefined || chair === 'you' ? '' : (players[seat] ?? '');
    return name === '' ? playWords.chair[chair] : name;
  }

  async #load(asked: string): Promise<void> {
    const { desk, session, analysis } = this.app;
    const { result } = session.state;
    const settled = result === null ? null : await analysis.settle(result);
    const payments = settled !== null && settled.ok ? settled.value : null;
    const lines = await eveningLines(desk, session, payments, stageOf(session.state));
    if (asked !== this.#loadedFor) return;
    this.problem = lines.ok ? '' : lines.problem.message;
    this.lines = lines.ok ? lines.value : [];
  }

  /** The same place, card and people; East passes on, so the user's seat does too. */
  #next(): void {
    const { session, preferences } = this.app;
    const evening = session.evening ?? session.id;
    if (session.evening === undefined) session.describe({ evening });
    const own = session.state.seat;
    const to = own === null ? null : nextSeat(own);
    const players = own === null || to === null ? {} : playersMoved(session.players, own, to);
    const named = Object.keys(players).length > 0;
    session.begin(session.card, false, {
      place: session.place,
      evening,
      ...(named ? { players } : {}),
    });
    if (to !== null) void preferences.change({ seat: to });
    emit(this, 'next-game', null);
  }
}

customElements.define('wr-evening-panel', WrEveningPanel);

declare global {
  interface HTMLElementTagNameMap {
    'wr-evening-panel': WrEveningPanel;
  }
}

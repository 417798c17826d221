import { html, LitElement, nothing } from 'lit';
import type { Result } from '../../../../core/base/result.ts';
import { handView } from '../../../../core/game/hand-view.ts';
import { codeOf, JOKER, type Kind } from '../../../../core/tiles/kinds.ts';
import { nameOf } from '../../../../core/tiles/names.ts';
import { formatTileList } from '../../../../core/tiles/text.ts';
import { announce } from '../../../parts/announcer.ts';
import { emit } from '../../../parts/emit.ts';
import '../../../parts/tile/wr-tile.ts';
import { namedTiles } from '../../../parts/tile/named-tiles.ts';
import '../../../parts/wr-button.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { playWords } from '../../../words/play.ts';
import type { AdvisedView, AdviceView, WinView } from '../../../worker/calls.ts';
import { failed } from '../failed.ts';
import { handName } from '../hand-name.ts';
import { panelStyles } from '../panel-styles.ts';
import { adviceStyles } from './advice-styles.ts';
import { advisedCost, callSentence } from './advised-row.ts';
import type { ResultDraft } from './result-draft.ts';
import { seatName } from './seat-names.ts';
import './wr-target-line.ts';

const words = playWords.advice;

/** Choices that are shown before more are asked for. */
const FIRST_CHOICES = 3;
/** Groups that are offered to be laid open. */
const FIRST_CALLS = 2;

/** What `result-wanted` carries: what of the result is known already. */
export type ResultWanted = Partial<ResultDraft>;

/**
 * What the reading says to do now: which discards cost least, whether a call helps, when to change
 * the target. Sends `advice-taken` and `result-wanted`.
 */
export class WrAdvicePanel extends LitElement {
  static override properties = {
    app: { attribute: false },
    more: { state: true },
    refusal: { state: true },
  };

  declare app: AppContext;
  declare protected more: boolean;
  declare protected refusal: string;

  static override styles = [sharedStyles, panelStyles, adviceStyles];

  constructor() {
    super();
    this.more = false;
    this.refusal = '';
    new StoreController(this, () => [this.app.session, this.app.analysis]);
  }

  protected override render(): unknown {
    const { status } = this.app.analysis.advice;
    return html`<section class="advice" aria-label=${words.title} aria-busy=${status === 'pending'}>
      <div class="now">${this.#now()}</div>
      <p class="refusal" role="alert">${this.refusal}</p>
      <wr-target-line .app=${this.app}></wr-target-line>
    </section>`;
  }

  #now(): unknown {
    const { status, value, message } = this.app.analysis.advice;
    if (status === 'failed') return failed(words.failed, message, () => this.app.analysis.again());
    if (status === 'pending') return html`<p class="soft">${words.pending}</p>`;
    if (value === null) return html`<p class="soft">${words.quiet}</p>`;
    return html`${this.#win(value)} ${this.#discards(value)} ${this.#call(value)}`;
  }

  #win({ wins: [win], call }: AdviceView): unknown {
    if (win === undefined) return nothing;
    const name = handName(win);
    const sentence =
      call === null ? words.complete14(name, win.points) : words.completeWith(nameOf(call.kind), name, win.points);
    return html`<div class="row">
      <strong>${sentence}</strong>
      <wr-button look="main" @click=${() => this.#enterWin(win, call)}>${words.win}</wr-button>
    </div>`;
  }

  #discards({ discards }: AdviceView): unknown {
    if (discards.length === 0) return nothing;
    const shown = this.more ? discards : discards.slice(0, FIRST_CHOICES);
    return html`<div class="row spread">
        <h3>${words.discard}</h3>
        ${
          discards.length > FIRST_CHOICES
            ? html`<wr-button look="quiet" @click=${() => (this.more = !this.more)}
                >${this.more ? words.fewer : words.more}</wr-button
              >`
            : nothing
        }
      </div>
      <ol>
        ${shown.map((choice) => this.#discard(choice))}
      </ol>`;
  }

  #discard(choice: AdvisedView): unknown {
    const [kind] = choice.tiles;
    if (kind === undefined) return nothing;
    return html`<li>
      <span class="tiles"><wr-tile .kind=${kind}></wr-tile></span>
      ${advisedCost(choice)}
      <wr-button label=${words.discardLabel(nameOf(kind))} @click=${() => this.#throw(kind)}
        >${playWords.discard}</wr-button
      >
    </li>`;
  }

  #call({ call }: AdviceView): unknown {
    if (call === null) return nothing;
    const groups = call.choices.filter(({ tiles }) => tiles.length > 0);
    return html`<p>
        <strong>${words.call(nameOf(call.kind), seatName(this.app.session, call.from))}</strong>
        ${callSentence(call.choices)}
      </p>
      <ol>
        ${groups.slice(0, FIRST_CALLS).map((choice) => this.#group(choice, call.kind))}
      </ol>`;
  }

  #group(choice: AdvisedView, called: Kind): unknown {
    const names = choice.tiles.map(nameOf).join(', ');
    return html`<li>
      ${namedTiles(choice.tiles, names)} ${advisedCost(choice)}
      <wr-button label=${words.openLabel(names)} @click=${() => this.#open(choice.tiles, called)}
        >${words.open}</wr-button
      >
    </li>`;
  }

  #throw(kind: Kind): void {
    const { session } = this.app;
    if (session.state.seat === null) return;
    const done = session.apply({ type: 'discarded', seat: session.state.seat, tile: codeOf(kind) });
    this.#done(done, playWords.discarded(playWords.chair.you, nameOf(kind)));
  }

  #open(tiles: readonly Kind[], called: Kind): void {
    const { session } = this.app;
    if (session.state.seat === null) return;
    const group = formatTileList(tiles);
    const done = session.apply({ type: 'called', seat: session.state.seat, tile: codeOf(called), group });
    this.#done(done, playWords.opened(playWords.chair.you, tiles.map(nameOf).join(', ')));
  }

  /** The choices go with what was chosen; whoever holds this panel moves the focus on. */
  #done(done: Result<null>, said: string): void {
    this.refusal = done.ok ? '' : done.problem.message;
    if (!done.ok) return;
    announce(said);
    emit(this, 'advice-taken', null);
  }

  #enterWin({ line }: WinView, call: AdviceView['call']): void {
    const { state } = this.app.session;
    const by = call === null ? ('draw' as const) : ('discard' as const);
    emit<ResultWanted>(this, 'result-wanted', {
      result: 'won',
      winner: state.seat,
      by,
      from: call?.from ?? null,
      lineId: line,
      jokerless: handView(state).hand.count(JOKER) === 0,
    });
  }
}

customElements.define('wr-advice-panel', WrAdvicePanel);

declare global {
  interface HTMLElementTagNameMap {
    'wr-advice-panel': WrAdvicePanel;
  }
}

import { css, html, nothing, type PropertyValues } from 'lit';
import { legalEvents } from '../../../core/game/legal.ts';
import type { RaceResult, Standing } from '../../../core/plan/race-run.ts';
import type { PassChoice } from '../../../core/future/rivals.ts';
import { data, element } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-explain.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { lookWords } from '../../words/look.ts';
import { counted, differenceInGames, inWords, percent } from '../../words/numbers.ts';
import { failed } from './work-part.ts';
import { choicePart } from './look-row.ts';
import { panelStyles } from './panel-styles.ts';
import { figureStyles } from './figure-styles.ts';

const words = lookWords.played;

const Base = element({
  app: data<AppContext>(),
});

/** Whole games with the choices that the look ahead could not tell apart: asked for, followed, stopped, shown. */
export class WrPlayed extends Base {
  static override styles = [
    sharedStyles,
    panelStyles,
    figureStyles,
    css`
      ul {
        margin-top: var(--space-2);
      }

      .ended {
        --explain-wrap: normal;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.app.lookAhead]);
  }

  /** Whether the focus was on a part of this before it is drawn anew; a part that goes must not take it along. */
  #held = false;

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    this.#held = Boolean(this.shadowRoot?.activeElement);
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    if (!this.#held || this.shadowRoot?.activeElement) return;
    this.renderRoot.querySelector<HTMLElement>('wr-button, .ended')?.focus();
  }

  protected override render(): unknown {
    const { look, played, open } = this.app.lookAhead;
    const { status, value } = played;
    if (status === 'none') return look.status === 'done' && open.length > 1 ? this.#offer() : nothing;
    return html`<h4>${words.title}</h4>
      ${status === 'failed' ? failed(words.failed, '', () => void this.app.lookAhead.playOut()) : nothing}
      ${
        status === 'pending'
          ? html`<p class="soft" role="status">${words.pending}</p>
              <wr-button @click=${() => this.app.lookAhead.stopPlaying()}>${words.stop}</wr-button>`
          : nothing
      }
      ${value === null || value.result === null ? nothing : this.#list(value.choices, value.result)}`;
  }

  #offer(): unknown {
    return html`<p class="soft">${words.beginWords}</p>
      <wr-button @click=${() => void this.app.lookAhead.playOut()}>${words.begin}</wr-button>`;
  }

  #list(choices: readonly PassChoice[], result: RaceResult): unknown {
    const mayBeBlind = (legalEvents(this.app.session.state).give?.blindUpTo ?? 0) > 0;
    return html`<ul>
        ${result.standings.map((standing) => {
          const choice = choices[standing.candidate];
          if (choice === undefined) return nothing;
          return html`<li>${choicePart(choice, mayBeBlind)} ${row(standing)}</li>`;
        })}
      </ul>
      <wr-explain class="ended" value=${words.done(counted(result.samples))} heading=${lookWords.doneHeading}>
        ${endWords(result).map((sentence) => html`<p>${sentence}</p>`)}
      </wr-explain>`;
  }
}

function row({ verdict, samples, deciding: { value, loss } }: Standing): unknown {
  const gap = differenceInGames((loss.high - loss.low) / 2);
  const verdictWords = {
    best: words.bestWords,
    'as good': words.asGoodWords,
    costs: words.costsWords(differenceInGames(loss.mean), gap),
  };
  const half = differenceInGames((value.high - value.low) / 2);
  return html`<wr-explain class="ahead" value=${words.won(percent(value.mean))} heading=${words.title}>
    <p>${verdictWords[verdict]}</p>
    ${verdict === 'as good' ? html`<p>${lookWords.gap(differenceInGames(loss.mean), gap)}</p>` : nothing}
    <p>${words.share(percent(value.mean), inWords(value.mean), half)}</p>
    <p>${words.anyHand}</p>
    <p>${words.games(counted(samples))}</p>
  </wr-explain>`;
}

function endWords({ rule, halfWidth, ended }: RaceResult): string[] {
  const most = counted((rule.looks.at(-1) ?? 0) * rule.blockSize);
  const ending = ended === 'decided' ? lookWords.decided : words.far(differenceInGames(halfWidth));
  return [lookWords.sameLuck, words.rule(differenceInGames(rule.halfWidth), most), ending, lookWords.errorRate];
}

customElements.define('wr-played', WrPlayed);

import { css, html, nothing } from 'lit';
import type { AdviceDocument, AdvisedDocument } from '../../../../core/engine/documents.ts';
import { isRight } from '../../../../core/review/decision.ts';
import { nameOf } from '../../../../core/tiles/names.ts';
import { data, element, state } from '../../../parts/element.ts';
import { tileRow } from '../../../parts/tile/tile-row.ts';
import '../../../parts/wr-button.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { lastDiscard } from '../../../session/play-advice.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { answerWords } from '../../../words/answer.ts';
import { othersWords } from '../../../words/others.ts';
import { playWords } from '../../../words/play.ts';
import { isAdviceAfterwards, isAdviceWelcome, isOwnDead, isReadingWelcome } from '../aids.ts';
import { bandStyles } from '../band-styles.ts';
import { chancePart } from '../chance-part.ts';
import { panelStyles } from '../panel-styles.ts';
import { failed } from '../work-part.ts';
import {
  actionWords,
  afterwardsOf,
  buttonOf,
  handSentence,
  isPlayedSafe,
  isWin,
  riskSentence,
  takeAdvice,
  winSentence,
} from './advised.ts';
import { isDiscardDue } from './moves.ts';
import { seatName } from './seat-names.ts';

const words = playWords.advice;
/** Keeps the room of a line. */
const NO_WORDS = '\u00a0';

const Base = element({
  app: data<AppContext>(),
  refusal: state(''),
});

/** What to do now in play: the question, and the first choice with its button. Sends what `takeAdvice` sends. */
export class WrAdvicePanel extends Base {
  static override styles = [
    sharedStyles,
    panelStyles,
    bandStyles,
    css`
      .tiles {
        display: inline-flex;
        flex-wrap: wrap;
        gap: 4px;
      }

      .said .win {
        font-size: var(--text-title);
        line-height: 1.2;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.app.session, this.app.analysis]);
  }

  protected override render(): unknown {
    const { status, value } = this.app.analysis.advice;
    const first = this.#first;
    return html`<section class="band" aria-label=${words.title} aria-busy=${status === 'pending'}>
      <div class="head">
        <h2>${this.#question(value)}</h2>
        ${isReadingWelcome(this.app) ? chancePart(this.app, first?.chance ?? null) : nothing}
      </div>
      <div class="answer" aria-live="polite">${this.#answer()}</div>
      <p class="refusal" role="alert">${this.refusal}</p>
    </section>`;
  }

  /** The recommended choice, once it is settled; a win is at once. */
  get #first(): AdvisedDocument | null {
    const { status, value } = this.app.analysis.advice;
    const first = isAdviceWelcome(this.app) ? (value?.choices[0] ?? null) : null;
    const isSettled = status === 'done' && !this.app.analysis.waits;
    return isSettled || first?.action === 'win' ? first : null;
  }

  #question(advice: AdviceDocument | null): string {
    const { session } = this.app;
    if (isDiscardDue(session)) return words.title;
    const offered = advice === null || advice.choices.length === 0 ? null : advice.offered;
    return offered === null ? words.title : words.call(nameOf(offered.kind), seatName(session, offered.seat));
  }

  #answer(): unknown {
    if (isOwnDead(this.app)) return this.#dead();
    if (isAdviceAfterwards(this.app)) return this.#afterwards();
    if (!isAdviceWelcome(this.app)) return html`<p class="soft">${answerWords.later}</p>`;
    const { status, value, message } = this.app.analysis.advice;
    if (status === 'failed') return failed(words.failed, message, () => this.app.analysis.again());
    if (status === 'none') return html`<p class="soft">${words.quiet}</p>`;
    const first = this.#first;
    if (first !== null && value !== null) return this.#choice(first, value);
    if (this.app.analysis.waits) return this.#weigh();
    return html`<p class="soft">${status === 'pending' ? words.pending : words.useless}</p>`;
  }

  /** A dead hand has nothing left but to give nothing away: the coldest tile, which stands first in the list, too. */
  #dead(): unknown {
    const [tile] = this.#first?.action === 'discard' ? this.#first.tiles : [];
    return html`<div class="said">
      <strong>${playWords.dead.own}</strong>
      <p>${playWords.dead.follows}</p>
      <p>${tile === undefined ? NO_WORDS : playWords.dead.coldest(nameOf(tile))}</p>
    </div>`;
  }

  /** Where games are played only when the person asks. */
  #weigh(): unknown {
    return html`<span></span
      ><wr-button look="main" @click=${() => this.app.analysis.weigh()}>${answerWords.weighPlay}</wr-button>
      <div class="said"><p class="soft">${answerWords.waits}</p></div>`;
  }

  /** Where the player chooses before she sees advice: what her last discard gave up, until the next one is due. */
  #afterwards(): unknown {
    const { session, analysis } = this.app;
    const { status, value, message } = analysis.judged;
    if (status === 'failed') return failed(words.failed, message, () => analysis.again());
    if (status === 'pending') return html`<p>${words.afterwards.pending}</p>`;
    const last = lastDiscard(session);
    const said = value === null || last === null ? '' : afterwardsOf(session, value, last.discard);
    return html`<p>${said || words.chooseFirst}</p>`;
  }

  #choice(choice: AdvisedDocument, { choices, offered, provisional }: AdviceDocument): unknown {
    const [name, label] = buttonOf(this.app.session, choice);
    const what = actionWords(this.app.session, choice);
    const others = choices.filter(({ verdict }) => verdict !== null && isRight(verdict)).length - 1;
    const headline = isWin(choice)
      ? winSentence(choice, offered)
      : [what, others > 0 ? answerWords.alike(others) : answerWords.best].filter(Boolean).join('. ');
    return html`${choice.tiles.length === 0 ? html`<span></span>` : tileRow(choice.tiles)}
      ${
        name === ''
          ? html`<span></span>`
          : html`<wr-button look="main" label=${label} @click=${() => this.#take(choice, offered)}>${name}</wr-button>`
      }
      <div class="said">
        <strong class=${isWin(choice) ? 'win' : ''}>${headline}</strong>
        ${isWin(choice) ? nothing : html`<p>${isPlayedSafe(choice) ? othersWords.playSafe : ''} ${handSentence(choice)} ${riskSentence(choice)}</p>`}
        ${choice.action === 'call' ? html`<p class="soft">${words.narrow}</p>` : nothing}
        ${provisional ? html`<p class="soft">${words.provisional}</p>` : nothing}
      </div>`;
  }

  #take(choice: AdvisedDocument, offered: AdviceDocument['offered']): void {
    this.refusal = takeAdvice(this.app.session, this, choice, offered);
  }
}

customElements.define('wr-advice-panel', WrAdvicePanel);

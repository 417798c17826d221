import { css, html, nothing } from 'lit';
import { PASS_SIZE, PASS_SIZES } from '../../../core/exchange/steps.ts';
import { kindsOf } from '../../../core/tiles/text.ts';
import { blindNow, mayStop } from '../../../core/warmup/warm-up.ts';
import { data, element } from '../../parts/element.ts';
import { tileRow } from '../../parts/tile/tile-row.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-slots.ts';
import type { SlotsReturned } from '../../parts/wr-slots.ts';
import { takeBack } from '../../session/layout.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { differenceAlone } from '../../words/numbers.ts';
import { practiceWords } from '../../words/practice.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { PracticeRoom } from './practice-room.ts';
import type { ShownAnswer, WarmUpRun } from './warm-up-run.ts';
import { warmUpStyles } from './warm-up-styles.ts';
import './wr-run-foot.ts';

const words = practiceWords.page;
const answerWords = practiceWords.answer;

const Base = element({
  room: data<PracticeRoom>(),
  run: data<WarmUpRun>(),
  /** Where tiles of the tray may be dropped to be taken back. */
  returnTo: data<Element | null>(null),
});

/** The band over the rack: the question with the tray and the one main button; then the verdict, and how it goes on. */
export class WrPracticeBand extends Base {
  static override styles = [
    sharedStyles,
    warmUpStyles,
    css`
      :host {
        display: block;
        container-type: inline-size;
        --tile-width: clamp(48px, min(100cqi / 7 - 8px, 9vh), 60px);
      }

      .asked {
        flex: none;
        max-width: 100%;
      }

      .asked:focus {
        outline: none;
      }

      .ask {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 var(--space-4);
      }

      .line {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-1) var(--space-4);
      }

      /* In the middle of the tray, whatever is said below it. */
      .line > wr-button[look='main'] {
        align-self: start;
        margin-block-start: calc((var(--tile-width) * 4 / 3 + 26px - var(--target-main)) / 2);
      }

      .verdict {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 var(--space-4);
        margin-bottom: var(--space-1);
        padding-inline-start: var(--space-3);
        border-inline-start: 8px solid var(--edge);
      }

      .verdict.best,
      .verdict.equal {
        border-inline-start-color: var(--good);
      }

      .verdict.slip {
        border-inline-start-color: var(--warn);
        border-inline-start-style: double;
      }

      .verdict.costly {
        border-inline-start-color: var(--bad);
        border-inline-start-style: dashed;
      }

      .bad:empty {
        display: none;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  /** Where tiles may be dropped to be given. */
  get tray(): Element | null {
    return this.renderRoot.querySelector('wr-slots');
  }

  focusHeading(): void {
    this.renderRoot.querySelector<HTMLElement>('.asked')?.focus({ preventScroll: true });
    scrollToTop(this);
  }

  protected override render(): unknown {
    return this.run.isAnswered ? this.#answered() : this.#asking();
  }

  #asking(): unknown {
    const { run, room } = this;
    const courtesy = run.step === 'courtesy';
    const due = PASS_SIZE - run.draft.blind;
    const missing = courtesy ? 0 : due - run.layout.tray.length;
    return html`<div class="ask">
        <h2 class="asked" tabindex="-1">${courtesy ? words.questionCourtesy : words.question}</h2>
        <div class="line">
          <wr-slots
            label=${words.tray}
            .tiles=${run.layout.tray}
            .places=${PASS_SIZE}
            .blind=${run.draft.blind}
            .returnTo=${this.returnTo}
            @slots-returned=${({ detail }: CustomEvent<SlotsReturned>) => run.lay(takeBack(run.layout, detail.ids))}
          ></wr-slots>
          <wr-button look="main" reason=${missing > 0 ? words.missing(missing) : ''} @click=${() => run.show()}
            >${words.show}</wr-button
          >
          ${mayStop(run.warmUp) ? html`<wr-button @click=${() => run.show(true)}>${words.stop}</wr-button>` : nothing}
          ${this.#blindChoice()}
          <div class="row">
            ${room.canGoBack ? html`<wr-button look="quiet" @click=${() => room.back()}>${words.back}</wr-button>` : nothing}
            ${run.about.isExchange === true ? nothing : html`<wr-button look="quiet" @click=${() => room.next()}>${words.skip}</wr-button>`}
          </div>
        </div>
      </div>
      <p class="bad" role="alert">${run.refusal}</p>`;
  }

  #blindChoice(): unknown {
    const { run } = this;
    if (blindNow(run.warmUp) === 0) return nothing;
    return html`<wr-choice
      label=${words.blind}
      .options=${PASS_SIZES.map((blind) => ({ value: `${blind}`, label: blind === 0 ? words.blindNone : `${blind}` }))}
      .value=${String(run.draft.blind)}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => this.#blindChosen(Number(detail.value))}
    ></wr-choice>`;
  }

  #blindChosen(blind: number): void {
    const { run } = this;
    const over = run.layout.tray.slice(PASS_SIZE - blind).map(({ id }) => id);
    run.mark({ blind });
    if (over.length > 0) run.lay(takeBack(run.layout, over));
  }

  #answered(): unknown {
    const { run, room } = this;
    const { shown, refusal, working } = run;
    if (shown === null) {
      return html`<h2 class="asked" tabindex="-1">${words.working}</h2>
        ${
          refusal === ''
            ? html`<progress aria-label=${words.working} max="1" .value=${working ?? 0}></progress>`
            : html`<p class="bad" role="alert">${refusal}</p>
                <wr-button @click=${() => run.again()}>${words.again}</wr-button>`
        }`;
    }
    return html`<div class="verdict ${shown.ahead.chosen.verdict}" data-ahead>
        <h2 class="asked" tabindex="-1" aria-live="polite">${verdictWords(shown)}</h2>
        <div class="line">${this.#own(run)} <span>${withinWords(shown)}</span></div>
      </div>
      <wr-run-foot .room=${room} .run=${run}></wr-run-foot>`;
  }

  #own({ warmUp: { attempt } }: WarmUpRun): unknown {
    if (attempt === null) return nothing;
    if (attempt.stops) return html`<span>${answerWords.stopped}</span>`;
    const { give, blind } = attempt;
    return html`<span
      >${tileRow(kindsOf(give))} <span class="soft">${blind > 0 ? warmUpWords.answer.blindNote(blind) : ''}</span></span
    >`;
  }
}

/** A new problem, and its answer, begin at the top of all that scrolls around them. */
function scrollToTop(element: Element): void {
  for (let node: Node | null = element; node !== null;) {
    if (node instanceof Element && node.scrollTop > 0) node.scrollTop = 0;
    node = node instanceof ShadowRoot ? node.host : node.parentNode;
  }
}

/** The verdict in one sentence: what the choice gives up by the end of the exchange. */
export function verdictWords({ ahead: { chosen } }: Pick<ShownAnswer, 'ahead'>): string {
  if (chosen.verdict === 'best') return answerWords.best;
  return chosen.verdict === 'equal' ? answerWords.equal : answerWords.costs(chosen.loss);
}

/** How sure that is; nothing to say of the best. */
function withinWords({ ahead: { chosen } }: Pick<ShownAnswer, 'ahead'>): string {
  if (chosen.verdict === 'best' || chosen.halfWidth === 0) return '';
  return chosen.verdict === 'equal' ? '' : answerWords.within(differenceAlone(chosen.halfWidth));
}

customElements.define('wr-practice-band', WrPracticeBand);

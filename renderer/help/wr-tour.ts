import { css, html, nothing, type PropertyValues } from 'lit';
import { data, element, flag, reflected, state } from '../parts/element.ts';
import { emit } from '../parts/emit.ts';
import '../parts/wr-button.ts';
import type { WrButton } from '../parts/wr-button.ts';
import { beginExample } from '../session/example-deal.ts';
import type { AppContext } from '../shell/app-context.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { tourWords as words } from '../words/help.ts';
import { findTarget, TOUR_TARGETS } from './tour-targets.ts';

const LAST = words.steps.length - 1;
/** The steps that speak of the Table. */
const AT_TABLE = 2;
/** Below this width the card lies at the bottom, so that what it shows goes to the top; in px. */
const NARROW = 900;
/** How far the ring stands off what it shows, in px. */
const GAP = 4;

const Base = element({
  app: data<AppContext>(),
  open: reflected(flag()),
  step: state(0),
  /** Where the shown part of the window lies; null while it is not there. */
  shown: state<DOMRect | null>(null),
});

/**
 * The tour: a card beside the window itself, which rings each part that it speaks of, on an example deal where no game
 * has begun. The window stays usable. Left, it goes on at the same step. Sends `tour-closed`.
 */
export class WrTour extends Base {
  static override styles = [
    sharedStyles,
    css`
      .over {
        position: fixed;
        inset: 0;
        width: auto;
        height: auto;
        margin: 0;
        padding: 0;
        border: 0;
        background: none;
        color: var(--ink);
        overflow: visible;
        pointer-events: none;
      }

      .ring {
        position: absolute;
        box-sizing: border-box;
        max-width: 100vw;
        max-height: 100dvh;
        border: 4px solid var(--accent);
        border-radius: var(--round);
        box-shadow: 0 0 0 3px var(--sheet);
      }

      .card {
        position: absolute;
        inset: 5rem 1rem auto auto;
        display: flex;
        flex-direction: column;
        gap: var(--space-2);
        width: min(27rem, 100vw - 2rem);
        max-height: calc(100dvh - 6rem);
        overflow: auto;
        padding: var(--space-4);
        border: 3px solid var(--accent);
        border-radius: var(--round-large);
        background: var(--sheet);
        box-shadow: 0 6px 24px rgb(0 0 0 / 35%);
        pointer-events: auto;
      }

      @media (width < 900px) {
        .card {
          inset: auto 0.5rem 0.5rem auto;
          width: calc(100vw - 1rem);
          max-height: 60dvh;
        }

        .actions [look='main'] {
          min-width: 5rem;
        }
      }

      h2 {
        margin: 0;
        font-size: var(--text-lead);
      }

      p {
        margin: 0 0 var(--space-2);
      }

      /* The buttons keep their place from step to step. */
      .text {
        min-height: 10em;
      }

      .actions {
        display: flex;
        flex-wrap: wrap;
        justify-content: end;
        gap: var(--space-2);
      }

      .actions :first-child {
        margin-inline-end: auto;
        --room: 0px;
      }

      /* "Done" takes as much room as "Next". */
      [look='main'] {
        min-width: 6rem;
      }
    `,
  ];

  /** Whether what the step shows was brought into view. */
  #scrolled = false;
  #frame = 0;
  #before: HTMLElement | null = null;

  readonly #onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || event.defaultPrevented) return;
    event.preventDefault();
    this.#leave();
  };

  override disconnectedCallback(): void {
    this.#stop();
    super.disconnectedCallback();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    if (!changed.has('open') || !this.open) return;
    // Where tiles are dealt there is no deal to be entered.
    const least = this.app.session.untouched ? 0 : 1;
    this.step = Math.min(LAST, Math.max(least, this.app.preferences.values.tourStep));
  }

  protected override render(): unknown {
    if (!this.open) return nothing;
    const step = words.steps[this.step];
    const heading = words.heading(this.step + 1, words.steps.length, step?.title ?? '');
    return html`<div class="over" popover="manual">
      <div class="ring" ?hidden=${this.shown === null}></div>
      <section class="card" role="dialog" aria-label=${heading}>
        <h2>${heading}</h2>
        <div class="text" aria-live="polite">
          ${step?.text.map((sentence) => html`<p>${sentence}</p>`)}
          ${this.step === LAST ? html`<p>${words.again}</p>` : nothing}
        </div>
        <div class="actions">
          <wr-button look="quiet" @click=${this.#leave}>${words.leave}</wr-button>
          <wr-button ?disabled=${this.step === 0} @click=${() => this.#go(-1)}>${words.back}</wr-button>
          <wr-button look="main" @click=${() => this.#go(1)}>${this.step === LAST ? words.done : words.next}</wr-button>
        </div>
      </section>
    </div>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    const ring = this.renderRoot.querySelector<HTMLElement>('.ring');
    if (ring !== null && this.shown !== null) surround(ring, this.shown);
    if (changed.has('open')) {
      if (this.open) void this.#begin();
      else if (changed.get('open') === true) this.#stop();
    }
    if (this.open && (changed.has('open') || changed.has('step'))) this.#enter();
  }

  async #begin(): Promise<void> {
    this.#before = focused();
    this.renderRoot.querySelector<HTMLElement>('.over')?.showPopover();
    window.addEventListener('keydown', this.#onKey);
    this.#follow();
    const next = this.renderRoot.querySelector<WrButton>('wr-button[look=main]');
    await next?.updateComplete;
    next?.focus();
  }

  #stop(): void {
    window.removeEventListener('keydown', this.#onKey);
    cancelAnimationFrame(this.#frame);
    this.shown = null;
    this.#before?.focus();
    this.#before = null;
  }

  /** Goes to where the step is, with an example deal where there is no deal yet. */
  #enter(): void {
    const { app, step } = this;
    if (step <= AT_TABLE) app.go('table');
    if (step > 0 && app.session.untouched) beginExample(app.session, app.preferences.values.seat);
    if (app.preferences.values.tourStep !== step) void app.preferences.change({ tourStep: step });
    this.#scrolled = false;
  }

  /** Keeps the ring around what it shows, which may come late and move. */
  #follow(): void {
    const target = findTarget(TOUR_TARGETS[this.step] ?? [], document.querySelector('wr-shell'));
    if (target !== null && !this.#scrolled) {
      this.#scrolled = true;
      target.scrollIntoView({ block: window.innerWidth < NARROW ? 'start' : 'nearest' });
    }
    const box = target?.getBoundingClientRect() ?? null;
    const now = box !== null && isInWindow(box) ? box : null;
    const isSame = now?.x === this.shown?.x && now?.y === this.shown?.y && now?.width === this.shown?.width;
    if (!isSame || now?.height !== this.shown?.height) this.shown = now;
    this.#frame = requestAnimationFrame(() => this.#follow());
  }

  #go(by: -1 | 1): void {
    if (this.step + by > LAST) {
      void this.app.preferences.change({ tourStep: 0 });
      emit(this, 'tour-closed', null);
    } else this.step = Math.max(0, this.step + by);
  }

  #leave(): void {
    emit(this, 'tour-closed', null);
  }
}

function isInWindow({ left, right, top, bottom }: DOMRect): boolean {
  return right > 0 && bottom > 0 && left < window.innerWidth && top < window.innerHeight;
}

/** Puts the ring around a part of the window, as far as that is seen. */
function surround(ring: HTMLElement, { x, y, width, height }: DOMRect): void {
  const top = Math.max(0, y - GAP);
  const left = Math.max(0, x - GAP);
  ring.style.top = `${top}px`;
  ring.style.left = `${left}px`;
  ring.style.width = `${Math.min(window.innerWidth, x + width + GAP) - left}px`;
  ring.style.height = `${Math.min(window.innerHeight, y + height + GAP) - top}px`;
}

/** The element that has the focus, however deep it lies. */
function focused(): HTMLElement | null {
  let active = document.activeElement;
  while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
  return active instanceof HTMLElement ? active : null;
}

customElements.define('wr-tour', WrTour);

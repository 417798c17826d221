import { css, html, type PropertyValues } from 'lit';
import { data, element, flag, reflected, state, text } from '../parts/element.ts';
import { emit } from '../parts/emit.ts';
import '../parts/wr-button.ts';
import '../parts/wr-dialog.ts';
import '../parts/wr-tabs.ts';
import type { TabChosen } from '../parts/wr-tabs.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { helpWords as words } from '../words/help.ts';
import { CHAPTERS, helpStyles, topicOf } from './parts.ts';
import { printHelp } from './wr-help-paper.ts';

const CHAPTER_IDS = Object.keys(words.tabs) as (keyof typeof words.tabs)[];
const TABS = CHAPTER_IDS.map((id) => ({ id, label: words.tabs[id] }));

export type HelpPart = keyof typeof words.tabs;

const Base = element({
  open: reflected(flag()),
  about: text(),
  /** The part to begin with where `about` is empty. */
  opensAt: data<HelpPart>(() => 'steps'),
  /** Whether the tour was left before its end. */
  begun: flag(),
  tab: state('steps'),
});

/**
 * The help over the page. Sends `help-closed`, and `tour-wanted` when the person asks for the tour;
 * `about` is the heading of a number to begin with, or empty; then it begins with `opensAt`.
 */
export class WrHelp extends Base {
  static override styles = [
    sharedStyles,
    helpStyles,
    css`
      /* Room for all tabs in two rows. */
      wr-dialog {
        --dialog-width: 48rem;
        --dialog-least: 100dvh;
      }

      wr-tabs {
        min-height: min(32rem, 60dvh);
      }
    `,
  ];

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    if (changed.has('open') && this.open) this.tab = this.about === '' ? this.opensAt : 'numbers';
  }

  protected override render(): unknown {
    return html`<wr-dialog heading=${words.title} ?open=${this.open} @dialog-closed=${this.#closed}>
      <wr-tabs .tabs=${TABS} current=${this.tab} label=${words.parts} @tab-chosen=${this.#chosen}>
        ${CHAPTER_IDS.map((id) => html`<div slot=${id}>${id === 'steps' ? this.#steps() : CHAPTERS[id]()}</div>`)}
      </wr-tabs>
      <wr-button slot="actions" @click=${() => void printHelp()}>${words.print}</wr-button>
    </wr-dialog>`;
  }

  #steps(): unknown {
    return html`<p>${words.stepsLead}</p>
      ${CHAPTERS.steps()}
      <wr-button @click=${() => emit(this, 'tour-wanted', null)}
        >${this.begun ? words.resumeTour : words.startTour}</wr-button
      >`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (this.open && changed.has('open') && this.about !== '') void this.#goToTopic();
  }

  async #goToTopic(): Promise<void> {
    const tabs = this.renderRoot.querySelector('wr-tabs');
    await this.renderRoot.querySelector('wr-dialog')?.updateComplete;
    await tabs?.updateComplete;
    const heading = this.renderRoot.querySelector<HTMLElement>(`#topic-${topicOf(this.about) ?? 0}`);
    heading?.scrollIntoView({ block: 'start' });
    heading?.focus({ preventScroll: true });
  }

  #chosen({ detail }: CustomEvent<TabChosen>): void {
    this.tab = detail.id;
  }

  #closed(): void {
    emit(this, 'help-closed', null);
  }
}

customElements.define('wr-help', WrHelp);

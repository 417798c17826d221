import { css, html, type PropertyValues } from 'lit';
import { data, element, flag, reflected, state, text } from '../parts/element.ts';
import { emit } from '../parts/emit.ts';
import '../parts/wr-button.ts';
import '../parts/wr-dialog.ts';
import '../parts/wr-tabs.ts';
import type { TabChosen } from '../parts/wr-tabs.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { helpWords as words } from '../words/help.ts';
import {
  cautions,
  checkingCard,
  enteringCard,
  exchangeRules,
  firstSteps,
  helpStyles,
  keyTables,
  numberTopics,
  studyingCard,
  topicOf,
} from './parts.ts';
import { printHelp } from './wr-help-paper.ts';

const TABS = Object.entries(words.tabs).map(([id, label]) => ({ id, label }));

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
        <div slot="steps">
          <p>${words.stepsLead}</p>
          ${firstSteps()}
          <wr-button @click=${() => emit(this, 'tour-wanted', null)}
            >${this.begun ? words.resumeTour : words.startTour}</wr-button
          >
        </div>
        <div slot="keys">${keyTables()}</div>
        <div slot="exchange">${exchangeRules()}</div>
        <div slot="numbers">${numberTopics()}</div>
        <div slot="card">${enteringCard()}</div>
        <div slot="check">${checkingCard()}</div>
        <div slot="study">${studyingCard()}</div>
        <div slot="cautions">${cautions()}</div>
      </wr-tabs>
      <wr-button slot="actions" @click=${() => void printHelp()}>${words.print}</wr-button>
    </wr-dialog>`;
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

import { html, nothing, render } from 'lit';
import '../parts/wr-button.ts';

/** A page in the place of the whole window: what happened, and the one thing to do. */
export interface InsteadPage {
  readonly title: string;
  readonly text: string;
  /** Left out where what is to be done is not done in this page. */
  readonly button?: { readonly words: string; readonly act: () => void };
}

/** Shows it in the place of everything else, and puts the focus on its heading. */
export function showInstead(page: HTMLElement, { title, text, button }: InsteadPage): void {
  render(
    html`<main class="instead">
      <h1 tabindex="-1">${title}</h1>
      <p>${text}</p>
      ${button === undefined ? nothing : html`<wr-button look="main" @click=${button.act}>${button.words}</wr-button>`}
    </main>`,
    page,
  );
  page.querySelector<HTMLElement>('.instead h1')?.focus();
}

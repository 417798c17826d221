import { html, type TemplateResult } from 'lit';

/** What is being worked on, in words at once; how far it has come, 0 to 1, is seen once it takes long. Goes with `panelStyles`. */
export function workPart(words: string, share: number): TemplateResult {
  return html`<p class="soft" role="status">${words}</p>
    <progress aria-label=${words} max="1" .value=${share}></progress>`;
}

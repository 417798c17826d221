import { html, type TemplateResult } from 'lit';
import { cardWords } from '../../words/card.ts';

/** What may be typed, with an example of each. */
export function typingHelp(): TemplateResult {
  return html`<details>
    <summary>${cardWords.line.typedHelp}</summary>
    <dl>
      ${cardWords.typing.legend.map(
        ([text, meaning]) =>
          html`<dt>${text}</dt>
            <dd>${meaning}</dd>`,
      )}
    </dl>
  </details>`;
}

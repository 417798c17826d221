import { html, type TemplateResult } from 'lit';
import '../../parts/wr-advice-choice.ts';
import type { AdviceChosen } from '../../parts/wr-advice-choice.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { adviceWords as words } from '../../words/advice.ts';

/** When advice is welcome in the game on the table, in a line that opens. */
export function adviceSwitch({ session }: Pick<AppContext, 'session'>): TemplateResult {
  return html`<details>
    <summary>${words.label}: ${words.names[session.advice]}</summary>
    <wr-advice-choice
      brief
      .value=${session.advice}
      @advice-chosen=${({ detail }: CustomEvent<AdviceChosen>) => session.describe({ advice: detail.advice })}
    ></wr-advice-choice>
  </details>`;
}

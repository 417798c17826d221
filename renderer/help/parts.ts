import { css, html, nothing, type TemplateResult } from 'lit';
import rulesPage from '../../core/RULES.md?raw';
import { helpWords as words, keyNames, lineExamples, shortForms, tourWords } from '../words/help.ts';
import { settingsWords } from '../words/settings.ts';
import numbersPage from './NUMBERS.md?raw';
import { type KeyLine, keyList, type KeyPhrase } from './keys.ts';
import cardPage from './CARD.md?raw';
import { readChapters, readRules, readTopics, type Topic } from './page.ts';

/** The rules of the exchange, from the page that the tests quote. */
const EXCHANGE_RULES: readonly string[] = readRules(rulesPage, 'EX');

/** The explanations of the numbers, from their page. */
const NUMBER_TOPICS: readonly Topic[] = readTopics(numbersPage);

/** The chapters on the card, from their page. */
const [CARD_TOPICS = [], CHECK_TOPICS = [], STUDY_TOPICS = []] = readChapters(cardPage);

/** The place of the topic that explains what stands under this heading in the window; null when none does. */
export function topicOf(heading: string): number | null {
  const found = NUMBER_TOPICS.findIndex(({ shownAs }) => shownAs.includes(heading));
  return found === -1 ? null : found;
}

/** How the parts of the help look, in the window and on paper. */
export const helpStyles = css`
  h3,
  h4 {
    margin: 0 0 var(--space-2);
    line-height: 1.25;
  }

  h3 {
    font-size: var(--text-lead);
  }

  p {
    max-width: 65ch;
    margin: 0 0 var(--space-3);
  }

  ol,
  ul {
    max-width: 65ch;
    margin: 0 0 var(--space-4);
    padding-inline-start: 1.8em;
  }

  li + li {
    margin-top: var(--space-2);
  }

  section + section {
    margin-top: var(--space-5);
  }

  dl {
    margin: 0;
  }

  dl > div {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-1) var(--space-4);
    padding-block: var(--space-2);
    border-bottom: 1px solid var(--hairline);
  }

  dt {
    flex: 1 1 12rem;
  }

  dd {
    flex: 0 1 auto;
    margin: 0;
  }

  dl.example > div {
    display: block;
    padding-block: var(--space-1);
    border: 0;
  }

  @media (min-width: 40em) {
    dl.example > div {
      display: grid;
      grid-template-columns: 9rem minmax(0, 1fr);
    }
  }

  dl.example {
    max-width: 65ch;
    padding-block: var(--space-2);
    border-bottom: 1px solid var(--hairline);
    break-inside: avoid;
  }

  .example dt,
  .example .or {
    color: var(--ink-soft);
  }

  .code {
    font-family: var(--font-code);
    overflow-wrap: anywhere;
  }

  kbd {
    display: inline-block;
    padding: 0 0.4em;
    border: var(--stroke) solid var(--edge);
    border-radius: var(--round-small);
    background: var(--paper);
    font: inherit;
    font-size: var(--text-small);
    white-space: nowrap;
  }
`;

/** The steps of the tour as a list to read. */
function firstSteps(): TemplateResult {
  return html`<ol>
    ${tourWords.steps.map(({ title, text }) => html`<li><strong>${title}.</strong> ${text.join(' ')}</li>`)}
  </ol>`;
}

/** The keys, a table for each place. */
function keyTables(): TemplateResult {
  return html`<p>${words.keysLead}</p>
    ${keyList().map(
      ({ title, lines }) =>
        html`<section>
          <h3>${title}</h3>
          <dl>${lines.map(keyRow)}</dl>
        </section>`,
    )}`;
}

function keyRow({ does, keys }: KeyLine): TemplateResult {
  const all = keys.map((phrase, at) => html`${at === 0 ? '' : ` ${words.or} `}${keyPhrase(phrase)}`);
  return html`<div>
    <dt>${does}</dt>
    <dd>${all}</dd>
  </div>`;
}

function keyPhrase(phrase: KeyPhrase): TemplateResult[] {
  const keys = phrase === '+' ? ['+'] : phrase.split('+');
  return keys.map((key, at) => html`${at === 0 ? '' : ' + '}<kbd>${keyNames[key] ?? key.toUpperCase()}</kbd>`);
}

/** The rules of the exchange on one page. */
function exchangeRules(): TemplateResult {
  return html`<p>${words.exchangeLead}</p>
    <ol>
      ${EXCHANGE_RULES.map((rule) => html`<li>${rule}</li>`)}
    </ol>`;
}

/** What every number means; each topic can be gone to by its place. */
function numberTopics(): TemplateResult {
  return html`${NUMBER_TOPICS.map(topicSection)}`;
}

function topicSection({ title, paragraphs }: Topic, place: number): TemplateResult {
  return html`<section>
    <h3 id="topic-${place}" tabindex="-1">${title}</h3>
    ${paragraphs.map((paragraph) => html`<p>${paragraph}</p>`)}
  </section>`;
}

/** How a card is entered, with whole lines printed and typed side by side. */
function enteringCard(): TemplateResult {
  return html`${CARD_TOPICS.map(chapterSection)}
    <section>
      <h3>${words.examples}</h3>
      <p>${words.examplesLead}</p>
      ${lineExamples.map(exampleRows)}
    </section>
    <section>
      <h3>${shortForms.title}</h3>
      <p>${shortForms.lead}</p>
      <ul>
        ${shortForms.forms.map(
          ([typed, becomes]) =>
            html`<li><span class="code">${typed}</span> → <span class="code">${becomes}</span></li>`,
        )}
      </ul>
    </section>`;
}

/** How a card is looked through and compared. */
function checkingCard(): TemplateResult {
  return html`${CHECK_TOPICS.map(chapterSection)}`;
}

/** How a card is learnt. */
function studyingCard(): TemplateResult {
  return html`${STUDY_TOPICS.map(chapterSection)}`;
}

function chapterSection({ title, paragraphs }: Topic, place: number): TemplateResult {
  return html`<section>
    ${place === 0 ? nothing : html`<h3>${title}</h3>`} ${paragraphs.map((paragraph) => html`<p>${paragraph}</p>`)}
  </section>`;
}

function exampleRows({ printed, typed, or, moves, means }: (typeof lineExamples)[number]): TemplateResult {
  const { exampleHeads: heads } = words;
  return html`<dl class="example">
    <div>
      <dt>${heads.printed}</dt>
      <dd>${printed}</dd>
    </div>
    <div>
      <dt>${heads.typed}</dt>
      <dd class="code">${typed} ${or === '' ? nothing : html`<br /><span class="or">${words.or}</span> ${or}`}</dd>
    </div>
    <div>
      <dt>${heads.moves}</dt>
      <dd class="code">${moves}</dd>
    </div>
    <div>
      <dt>${heads.means}</dt>
      <dd>${means}</dd>
    </div>
  </dl>`;
}

/** What to keep in mind. */
function cautions(): TemplateResult {
  return html`<ul>
    ${settingsWords.cautionList.map((caution) => html`<li>${caution}</li>`)}
  </ul>`;
}

/** What each chapter of the help says, in the window and on paper alike. */
export const CHAPTERS: Readonly<Record<keyof typeof words.tabs, () => TemplateResult>> = {
  steps: firstSteps,
  keys: keyTables,
  exchange: exchangeRules,
  numbers: numberTopics,
  card: enteringCard,
  check: checkingCard,
  study: studyingCard,
  cautions,
};

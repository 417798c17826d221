import type { Sheet } from '../../core/warmup/sheet.ts';
import type { AnswerFor } from './answer-for.ts';
import './wr-sheet-print.ts';

/** While a sheet is printed nothing else of the page is; on the screen the sheet is not seen. */
const PAGE_RULES = `
  @media print {
    body > :not(wr-sheet-print) { display: none !important; }
    html, body { background: white !important; color: black !important; }
  }
  @media screen {
    wr-sheet-print { display: none; }
  }
`;

/** The page itself: its size, room at the edges, and its number below. */
function pageRules({ paper }: Sheet): string {
  const size = paper === 'letter' ? 'letter' : 'A4';
  return `@page {
    size: ${size} portrait;
    margin: 15mm 16mm 18mm;
    @bottom-right {
      content: counter(page) ' / ' counter(pages);
      font: 14pt sans-serif;
    }
  }`;
}

/**
 * Prints a sheet, or saves it as PDF where the person chooses that: the problems, then the answers
 * on pages of their own. What was made for it goes when printing is over.
 */
export async function printSheet(sheet: Sheet, answerFor: AnswerFor): Promise<void> {
  const rules = new CSSStyleSheet();
  rules.replaceSync(PAGE_RULES + pageRules(sheet));
  const page = document.createElement('wr-sheet-print');
  page.sheet = sheet;
  page.answerFor = answerFor;
  const before = document.title;
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, rules];
  document.body.append(page);
  document.title = sheet.title;
  await page.drawn();
  const tidy = (): void => {
    page.remove();
    document.title = before;
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((each) => each !== rules);
  };
  window.addEventListener('afterprint', tidy, { once: true });
  window.print();
}

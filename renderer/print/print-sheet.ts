import type { Sheet } from '../../core/warmup/sheet.ts';
import type { AnswerFor } from './judged.ts';
import { printAlone } from './print-alone.ts';
import './wr-sheet-print.ts';
import type { WrSheetProject } from './wr-sheet-project.ts';
import './wr-sheet-project.ts';

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

/** Prints a sheet, or saves it as PDF: the problems, then the answers on pages of their own. */
export async function printSheet(sheet: Sheet, answerFor: AnswerFor): Promise<void> {
  const element = document.createElement('wr-sheet-print');
  element.sheet = sheet;
  element.answerFor = answerFor;
  await printAlone({ element, title: sheet.title, pageRules: pageRules(sheet), drawn: () => element.drawn() });
}

/** Shows a sheet over the whole window, for a projector, until it is closed; then the focus is back where it was. */
export async function projectSheet(sheet: Sheet, answerFor: AnswerFor): Promise<WrSheetProject> {
  const screen = document.createElement('wr-sheet-project');
  screen.sheet = sheet;
  screen.answerFor = answerFor;
  screen.addEventListener('project-closed', () => screen.remove(), { once: true });
  document.body.append(screen);
  await screen.updateComplete;
  screen.show();
  return screen;
}

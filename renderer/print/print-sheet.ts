import type { Sheet } from '../../core/warmup/sheet.ts';
import type { AnswerFor } from './judged.ts';
import { printAlone } from './print-alone.ts';
import './wr-sheet-print.ts';
import type { SheetParts } from './wr-sheet-print.ts';
import type { WrSheetProject } from './wr-sheet-project.ts';
import './wr-sheet-project.ts';

/** The page itself: its size. Its edges, its head and its foot are drawn with it. */
function pageRules({ paper }: Sheet): string {
  return `@page { size: ${paper === 'letter' ? 'letter' : 'A4'} portrait; margin: 0; } body { margin: 0; }`;
}

/** Prints of a sheet what was chosen, or saves it as PDF: the problems, the answers, or both on pages apart. */
export async function printSheet(sheet: Sheet, answerFor: AnswerFor, parts: SheetParts): Promise<void> {
  const element = document.createElement('wr-sheet-print');
  element.sheet = sheet;
  element.paper = sheet.paper;
  element.answerFor = answerFor;
  element.parts = parts;
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

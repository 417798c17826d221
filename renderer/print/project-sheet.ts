import type { Sheet } from '../../core/warmup/sheet.ts';
import type { AnswerFor } from './answer-for.ts';
import './wr-sheet-project.ts';

/** Shows a sheet over the whole window, for a projector, until it is closed; then the focus is back where it was. */
export async function projectSheet(sheet: Sheet, answerFor: AnswerFor): Promise<void> {
  const screen = document.createElement('wr-sheet-project');
  screen.sheet = sheet;
  screen.answerFor = answerFor;
  screen.addEventListener('project-closed', () => screen.remove(), { once: true });
  document.body.append(screen);
  await screen.updateComplete;
  screen.show();
}

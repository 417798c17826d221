import type { WarmUpItem } from '../../../core/warmup/item.ts';
import { problemOf } from '../../../core/warmup/sheet.ts';
import { classWords } from '../../words/class.ts';
import type { RoomHost } from './room-parts.ts';
import { SheetAnswers } from './sheet-answers.ts';
import { newSheet } from './sheet-book.ts';

/**
 * Shows one problem on a screen, on a sheet of its own that is kept nowhere; its answer comes once it is worked out.
 * `closed` is called when the screen is closed.
 */
export async function showProblem(
  room: RoomHost,
  item: WarmUpItem,
  appVersion: string,
  closed: () => void,
): Promise<void> {
  const sheet = {
    ...newSheet({ title: classWords.make.shown, paper: 'a4', card: room.card.document, appVersion }),
    problems: [problemOf(item)],
  };
  const answers = new SheetAnswers(room, () => undefined);
  const { projectSheet } = await import('../../print/print-sheet.ts');
  const screen = await projectSheet(sheet, (problem) => answers.to(sheet, problem));
  screen.addEventListener(
    'project-closed',
    () => {
      answers.stop();
      closed();
    },
    { once: true },
  );
  await answers.all(sheet);
  screen.answerFor = (problem) => answers.to(sheet, problem);
}

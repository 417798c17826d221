import { partWords } from '../words/parts.ts';
import { announce } from './announcer.ts';

/** One step back, or the last one done again. */
export type UndoStep = 'undo' | 'redo';

/** What keeps the steps of a game, a card or a sheet. */
interface Undoable {
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  undo(): void;
  redo(): void;
}

/** What a key says of the last step: Control or Command with Z takes it back; with Shift too, or with Y, does it again. */
export function undoKey(event: KeyboardEvent): UndoStep | null {
  if (!event.ctrlKey && !event.metaKey) return null;
  const key = event.key.toLowerCase();
  if (key === 'y') return 'redo';
  if (key !== 'z') return null;
  return event.shiftKey ? 'redo' : 'undo';
}

/** Takes a step back or does it again, and says so to those who listen; `name` says what it was, asked when it is done. */
export function takeStep(steps: Undoable, step: UndoStep, name: () => string = () => partWords.steps.change): void {
  if (step === 'undo' ? !steps.canUndo : !steps.canRedo) return;
  steps[step]();
  announce(partWords.steps[step](name()));
}

/** Keeps keys from the Table's own: in a field of words, undo means the words. */
export function keepKeys(event: KeyboardEvent): void {
  event.stopPropagation();
}

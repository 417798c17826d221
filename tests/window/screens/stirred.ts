import type { Page } from '@playwright/test';
import { stillness } from './stillness.ts';

/** What a press or a key does at once is drawn within so many frames; what moves later moves by itself. */
const AT_ONCE = 3;
/** The most that may shift by itself on a screen: what web.dev calls good for a whole visit (Cumulative Layout Shift). */
const MOST_SHIFT = 0.1;

/** Main buttons that another button moves, by screen, with the reason. */
const MAY_MOVE: Readonly<Record<string, RegExp>> = {
  // The offer of the tour above goes with its answer, and with the first deal.
  'the exchange: a pass to give': /That is my deal/,
  'the tour and the help: the tour, 1 of 5': /That is my deal/,
  // The courtesy asks for two numbers before its tiles.
  'the exchange: the courtesy': /Give 3 tiles/,
};

/** How far controls may move by themselves, in CSS px, by screen, with the reason. */
const MAY_GROW: Readonly<Record<string, number>> = {
  // The choice that is shown tells what the look ahead found: its room is kept but for a line or two.
  'the Journal: a look-back': 60,
  // A deal that was asked for comes above the sheets as soon as it is made, which takes a slow computer a few frames.
  'the Warm-up: a problem': 900,
  // And so does a sheet that was opened.
  'the Warm-up: a sheet with answers of a class': 900,
  // What became of a file is told in its row once the desk has settled it.
  'the Settings: the two files settled': 60,
};

/** What moved by itself on the way to a screen, and main buttons that moved at all. */
export async function stirred(page: Page, here: string): Promise<unknown[]> {
  const { controls, shifts } = await stillness(page);
  const allowed = MAY_MOVE[here];
  const moved = controls.filter(
    ({ what, by, frames, isMain }) =>
      (frames > AT_ONCE && by > (MAY_GROW[here] ?? 0)) || (isMain && !(allowed?.test(what) ?? false)),
  );
  return shifts < MOST_SHIFT ? moved : [...moved, { shifts }];
}

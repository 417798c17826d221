import { cp, mkdir } from 'node:fs/promises';
import { resolve } from 'node:path';
import { expectValue } from '../../core/base/result.ts';
import type { Desk } from '../../main/desk/desk.ts';
import { cardText, EVENTS, gameRecord, MISS, sheetText } from '../main/support/desks.ts';
import { Windrow } from './windrow.ts';

/** A whole folder as an earlier version wrote it. */
const GOLDEN = resolve('tests/golden/0.1.0/desk');

/** The game that is being changed in such a folder: its log lies in `open`. */
export const OPEN_GAME = 'g-open';
export const CARD = 'mine';

/** Makes a folder with something of every kind in it, by a Windrow that is killed: a lock and a log are left. */
export async function liveIn(folder: string): Promise<void> {
  await mkdir(folder, { recursive: true });
  await cp(GOLDEN, folder, { recursive: true });
  // A card's copy is taken at its first change in a session, so there are two.
  for (const live of [begin, goOn]) {
    const windrow = await Windrow.start(folder);
    await live(windrow.desk);
    await windrow.kill();
  }
}

async function begin(desk: Desk): Promise<void> {
  expectValue(await desk.saveCard(CARD, cardText('Mine')));
}

/** Saves something of every kind. */
async function goOn(desk: Desk): Promise<void> {
  expectValue(await desk.saveCard(CARD, cardText('Mine, mended')));
  expectValue(await desk.saveCardProgress(CARD, { confirmed: ['a'], answers: [] }));
  expectValue(await desk.changePreferences({ textSize: 24, seat: 'West' }));
  expectValue(await desk.keepSheet(sheetText('Thursday')));
  expectValue(await desk.notePractice([MISS, { ...MISS, id: 'm2' }]));
  expectValue(await desk.startGame(gameRecord('g-done', { players: { North: 'the host' } })));
  for (const [place, event] of EVENTS.entries()) expectValue(await desk.appendEvent('g-done', place, event));
  expectValue(await desk.startGame(gameRecord('g-gone')));
  expectValue(await desk.removeGame('g-gone'));
  expectValue(await desk.startGame(gameRecord(OPEN_GAME)));
  for (const [place, event] of EVENTS.entries()) expectValue(await desk.appendEvent(OPEN_GAME, place, event));
  expectValue(await desk.keepDraft(gameRecord('g-draft', { arrangement: 'FF 13b' })));
}

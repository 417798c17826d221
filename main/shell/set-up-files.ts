import { basename, resolve } from 'node:path';
import type { BrowserWindow } from 'electron';
import { failure, type Result, success } from '../../core/base/result.ts';
import { GAME_FILE_LIMITS, readGameFile } from '../../core/game/file/read-game-file.ts';
import type { Desk } from '../desk/desk.ts';
import { nodeFiles } from '../files/node-files.ts';
import { orTrouble } from '../files/trouble.ts';
import { BROUGHT_IN } from './channels.ts';
import type { ElectronParts } from './electron.ts';

/** Bytes in the largest card that is taken in; most have some 60,000. */
const LARGEST_CARD = 900_000;
/** And in the largest game: a letter takes up to three bytes. */
const LARGEST_GAME = 3 * GAME_FILE_LIMITS.letters;
/** What the files of ours that a person double-clicks are called at their end. */
const OURS = /\.(?:card|windrow-game)\.json$/;

/** Where files are taken in. */
interface OpenDesk {
  readonly desk: Desk;
  readonly window: BrowserWindow;
}

/**
 * Takes in the card and game files that Windrow is opened with: at its start, while it runs, and as
 * macOS does it, which may name a file before the app is ready. Those wait until the answer is called.
 */
export function setUpFiles({ app, dialog }: ElectronParts, argv: readonly string[]): (opened: OpenDesk) => void {
  const waiting: string[] = [];
  let open = (path: string): void => void waiting.push(path);
  const openOurs = (path: string): void => {
    if (OURS.test(path)) open(path);
  };
  for (const path of argv) openOurs(resolve(path));
  app.on('second-instance', (_event, given, folder) => given.forEach((path) => openOurs(resolve(folder, path))));
  app.on('open-file', (event, path) => {
    event.preventDefault();
    openOurs(path);
  });
  return ({ desk, window }) => {
    const show = async (path: string): Promise<void> => {
      const taken = await takeIn(desk, path);
      if (!taken.ok) {
        dialog.showErrorBox('Windrow', taken.problem.message);
        return;
      }
      if (window.isDestroyed()) return;
      window.webContents.send(BROUGHT_IN);
      await dialog.showMessageBox(window, { title: 'Windrow', message: taken.value, buttons: ['OK'] });
    };
    open = (path) => void show(path);
    waiting.forEach(open);
  };
}

/** Puts a card or a game beside what is kept, and over nothing. Answers what became of it, in a sentence. */
export async function takeIn(desk: Desk, path: string): Promise<Result<string>> {
  const isCard = path.endsWith('.card.json');
  const largest = isCard ? LARGEST_CARD : LARGEST_GAME;
  const text = await orTrouble('read', basename(path), () => readSmall(path, largest));
  if (!text.ok) return text;
  return isCard ? await takeCard(desk, text.value) : await takeGame(desk, text.value);
}

async function readSmall(path: string, largest: number): Promise<Result<string>> {
  const { size } = await nodeFiles.info(path);
  if (size > largest) return failure('too-large', 'This file is far larger than any card or game. It was left alone.');
  return success(new TextDecoder().decode(await nodeFiles.read(path)));
}

async function takeCard(desk: Desk, text: string): Promise<Result<string>> {
  const cards = await desk.listCards();
  if (!cards.ok) return cards;
  for (const { id, title } of cards.value) {
    const card = await desk.openCard(id);
    if (card.ok && card.value.text === text) return success(`The card "${title}" is among your cards already.`);
  }
  const saved = await desk.saveCard(null, text);
  return saved.ok
    ? success(`The card "${saved.value.title}" is now among your cards. The file itself stays as it is.`)
    : saved;
}

async function takeGame(desk: Desk, text: string): Promise<Result<string>> {
  const read = readGameFile(text);
  if (!read.ok) return read;
  if (read.value.damage !== null) return { ok: false, problem: read.value.damage };
  const brought = await desk.importGames([read.value.record]);
  if (!brought.ok) return brought;
  const { added, copied } = brought.value;
  if (added + copied === 0) return success('This game is in your journal already.');
  return success(
    copied > 0 ? 'Two versions of this game are now in your journal.' : 'The game is now in your journal.',
  );
}

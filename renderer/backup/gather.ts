import { failure, type Result, success } from '../../core/base/result.ts';
import type { GameRecord } from '../../core/game/record.ts';
import {
  type CollectedOthers,
  type CollectedProgress,
  type CollectedCard,
  writeCollection,
} from '../../core/journal/collection.ts';
import type { Desk } from '../../main/desk/desk.ts';

/** Is called with how many of all are done. */
export type Report = (done: number, of: number) => void;

/** Everything that the desk keeps as the text of one file; removed games and copies of cards are left out. */
export async function gatherEverything(desk: Desk, appVersion: string, report: Report): Promise<Result<string>> {
  const games = await gatherGames(desk, report);
  if (!games.ok) return games;
  const cards = await gatherCards(desk);
  if (!cards.ok) return cards;
  const others = await gatherOthers(desk, cards.value);
  if (!others.ok) return others;
  const savedAt = new Date().toISOString();
  return success(
    writeCollection({ appVersion, savedAt, games: games.value, cards: cards.value, others: others.value }),
  );
}

/** The name that such a file is offered under. */
export function backupName(day = new Date().toISOString().slice(0, 10)): string {
  return `windrow-${day}.windrow.json`;
}

/** A person's own cards, with their texts. */
export async function gatherCards(desk: Desk): Promise<Result<CollectedCard[]>> {
  const list = await desk.listCards();
  if (!list.ok) return list;
  const cards: CollectedCard[] = [];
  for (const { id, fixed } of list.value) {
    if (fixed) continue;
    const card = await desk.openCard(id);
    if (!card.ok) return card;
    cards.push({ id, text: card.value.text });
  }
  return success(cards);
}

/** All sheets as the texts of their files, by their ids. */
export async function gatherSheets(desk: Desk): Promise<Result<Map<string, string>>> {
  const list = await desk.listSheets();
  if (!list.ok) return list;
  const sheets = new Map<string, string>();
  for (const { id } of list.value) {
    const sheet = await desk.openSheet(id);
    if (!sheet.ok) return sheet;
    sheets.set(id, sheet.value);
  }
  return success(sheets);
}

async function gatherGames(desk: Desk, report: Report): Promise<Result<GameRecord[]>> {
  const list = await desk.listGames();
  if (!list.ok) return list;
  const games: GameRecord[] = [];
  for (const { id } of list.value) {
    const game = await desk.openGame(id);
    if (!game.ok) return game;
    games.push(game.value);
    report(games.length, list.value.length);
  }
  return success(games);
}

async function gatherOthers(desk: Desk, cards: readonly CollectedCard[]): Promise<Result<CollectedOthers>> {
  const sheets = await gatherSheets(desk);
  if (!sheets.ok) return sheets;
  const practice = await desk.practiceHistory();
  if (!practice.ok) return practice;
  const progress = await gatherProgress(desk, ['demo', ...cards.map(({ id }) => id)]);
  if (!progress.ok) return progress;
  const preferences = await desk.readPreferences();
  if (!preferences.ok) return failure(preferences.problem.code, preferences.problem.message);
  return success({
    sheets: [...sheets.value.values()],
    practice: practice.value,
    progress: progress.value,
    preferences: { ...preferences.value },
  });
}

async function gatherProgress(desk: Desk, ids: readonly string[]): Promise<Result<CollectedProgress[]>> {
  const all: CollectedProgress[] = [];
  for (const cardId of ids) {
    const read = await desk.readCardProgress(cardId);
    if (!read.ok) return read;
    const { confirmed, answers, meant = [] } = read.value;
    if (confirmed.length + answers.length + meant.length === 0) continue;
    all.push({ cardId, confirmed, answers, ...(meant.length === 0 ? {} : { meant: [...meant] }) });
  }
  return success(all);
}

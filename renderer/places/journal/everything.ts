import { type Result, success } from '../../../core/base/result.ts';
import type { GameRecord } from '../../../core/game/record.ts';
import { type CollectedCard, type ReadCollection, writeCollection } from '../../../core/journal/collection.ts';
import type { Desk, ImportedGames } from '../../../main/desk/desk.ts';
import { sendGames } from './send-games.ts';

/** Hears how many of all are done. */
export type Told = (done: number, of: number) => void;

/** All games and cards of the desk as the text of one file. */
export async function gatherEverything(desk: Desk, appVersion: string, told: Told): Promise<Result<string>> {
  const list = await desk.listGames();
  if (!list.ok) return list;
  const games: GameRecord[] = [];
  for (const { id } of list.value) {
    const game = await desk.openGame(id);
    if (!game.ok) return game;
    games.push(game.value);
    told(games.length, list.value.length);
  }
  const cards = await gatherCards(desk);
  if (!cards.ok) return cards;
  return success(writeCollection({ appVersion, savedAt: new Date().toISOString(), games, cards: cards.value }));
}

async function gatherCards(desk: Desk): Promise<Result<CollectedCard[]>> {
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

/** What bringing a file in came to. */
export interface Brought extends ImportedGames {
  readonly cards: number;
}

/** Puts what a file holds beside what is here: games merged by id, cards that differ kept as new ones. */
export async function bringIn(desk: Desk, { games, cards }: ReadCollection, told: Told): Promise<Result<Brought>> {
  const sent = await sendGames(desk, games, (done) => told(done, games.length));
  if (!sent.ok) return sent;
  const here = await gatherCards(desk);
  if (!here.ok) return here;
  const known = new Set(here.value.map(({ text }) => text));
  const ids = new Set(here.value.map(({ id }) => id));
  let added = 0;
  for (const { id, text } of cards) {
    if (known.has(text)) continue;
    const saved = await desk.saveCard(ids.has(id) ? null : id, text);
    if (!saved.ok) return saved;
    added += 1;
  }
  return success({ ...sent.value, cards: added });
}

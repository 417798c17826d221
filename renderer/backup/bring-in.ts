import { fingerprint } from '../../core/base/fingerprint.ts';
import { type Result, success } from '../../core/base/result.ts';
import type {
  CollectedOthers,
  CollectedProgress,
  CollectedCard,
  ReadCollection,
} from '../../core/journal/collection.ts';
import { readSheetFile, writeSheetFile } from '../../core/warmup/sheet-file.ts';
import type { CardEntry, Desk, ImportedGames } from '../../main/desk/desk.ts';
import type { PreferenceStore } from '../session/preference-store.ts';
import { gatherCards, gatherSheets, type Report } from './gather.ts';
import { sendGames } from './send-games.ts';

/** The result of bringing a file in. */
export interface Brought extends ImportedGames {
  readonly cards: number;
  readonly sheets: number;
  /** Whether the settings of the file hold now: only where nothing was kept before. */
  readonly settings: boolean;
}

/** So many entries of the practice history in one call. */
const ENTRIES_AT_ONCE = 100;
/** As many answers of card study as the desk keeps of a card. */
const MOST_ANSWERS = 6000;

/**
 * Puts what a file holds beside what is here, and writes over nothing: games are merged by id,
 * cards and sheets that differ are kept as new ones, practice and progress are added up. The
 * settings are adopted only where no game and no card was kept before.
 */
export async function bringIn(
  { desk, preferences }: { readonly desk: Desk; readonly preferences: PreferenceStore },
  collection: ReadCollection,
  report: Report,
): Promise<Result<Brought>> {
  const { games, others } = collection;
  const fresh = await isFresh(desk);
  if (!fresh.ok) return fresh;
  const sent = await sendGames(desk, games, (done) => report(done, games.length));
  if (!sent.ok) return sent;
  const cards = await bringCards(desk, collection.cards);
  if (!cards.ok) return cards;
  const { added, ids } = cards.value;
  const sheets = others === undefined ? success(0) : await bringOthers(desk, others, ids);
  if (!sheets.ok) return sheets;
  const settings = fresh.value && others !== undefined && (await bringSettings({ desk, preferences }, others, ids));
  return success({ ...sent.value, cards: added, sheets: sheets.value, settings });
}

/** Settings that the desk does not understand stay as they are. */
async function bringSettings(
  { desk, preferences }: { readonly desk: Desk; readonly preferences: PreferenceStore },
  { preferences: theirs }: CollectedOthers,
  cardIds: ReadonlyMap<string, string>,
): Promise<boolean> {
  const known = Object.entries(theirs).filter(([name]) => Object.hasOwn(preferences.values, name));
  const cardId = cardIds.get(String(theirs['cardId'])) ?? 'demo';
  const changed = await desk.changePreferences({ ...Object.fromEntries(known), cardId });
  if (changed.ok) preferences.adopt(changed.value);
  return changed.ok;
}

async function isFresh(desk: Desk): Promise<Result<boolean>> {
  const games = await desk.listGames();
  if (!games.ok) return games;
  const cards = await desk.listCards();
  if (!cards.ok) return cards;
  return success(games.value.length === 0 && cards.value.every(({ fixed }) => fixed));
}

interface BroughtCards {
  readonly added: number;
  /** The id here of each card of the file, and of the demo card. */
  readonly ids: ReadonlyMap<string, string>;
}

async function bringCards(desk: Desk, cards: readonly CollectedCard[]): Promise<Result<BroughtCards>> {
  const here = await gatherCards(desk);
  if (!here.ok) return here;
  const known = new Map(here.value.map(({ id, text }) => [text, id]));
  const taken = new Set(here.value.map(({ id }) => id));
  const ids = new Map([['demo', 'demo']]);
  let added = 0;
  for (const { id, text } of cards) {
    const same = known.get(text);
    const saved = same === undefined ? await saveUnder(desk, taken.has(id) ? null : id, text) : null;
    if (saved?.ok === false) return saved;
    ids.set(id, same ?? saved?.value.id ?? id);
    added += saved === null ? 0 : 1;
  }
  return success({ added, ids });
}

/** Keeps a card under its id; where no file may have that name, under a new one. */
async function saveUnder(desk: Desk, id: string | null, text: string): Promise<Result<CardEntry>> {
  const saved = await desk.saveCard(id, text);
  return saved.ok || saved.problem.code !== 'bad-name' ? saved : await desk.saveCard(null, text);
}

/** Answers how many sheets were added. */
async function bringOthers(
  desk: Desk,
  { sheets, practice, progress }: CollectedOthers,
  cardIds: ReadonlyMap<string, string>,
): Promise<Result<number>> {
  for (let at = 0; at < practice.length; at += ENTRIES_AT_ONCE) {
    const noted = await desk.notePractice(practice.slice(at, at + ENTRIES_AT_ONCE));
    if (!noted.ok) return noted;
  }
  for (const one of progress) {
    const cardId = cardIds.get(one.cardId);
    const brought = cardId === undefined ? null : await bringProgress(desk, cardId, one);
    if (brought?.ok === false) return brought;
  }
  return await bringSheets(desk, sheets);
}

/** What was confirmed on either side is; answers of both count once each. */
async function bringProgress(desk: Desk, cardId: string, theirs: CollectedProgress): Promise<Result<null>> {
  const mine = await desk.readCardProgress(cardId);
  if (!mine.ok) return mine;
  const confirmed = [...new Set([...mine.value.confirmed, ...theirs.confirmed])];
  const known = new Set(mine.value.answers.map((answer) => JSON.stringify(answer)));
  const fresh = theirs.answers.filter((answer) => !known.has(JSON.stringify(answer)));
  const answers = [...mine.value.answers, ...fresh].sort((one, other) => one.day - other.day).slice(-MOST_ANSWERS);
  const ours = mine.value.meant ?? [];
  const meant = [...new Set([...ours, ...(theirs.meant ?? [])])];
  const isKnown = confirmed.length === mine.value.confirmed.length && meant.length === ours.length;
  if (fresh.length === 0 && isKnown) return success(null);
  return await desk.saveCardProgress(cardId, { confirmed, answers, ...(meant.length === 0 ? {} : { meant }) });
}

/** A sheet whose id another one has is kept under an id of its own, the same each time. */
async function bringSheets(desk: Desk, texts: readonly string[]): Promise<Result<number>> {
  const here = await gatherSheets(desk);
  if (!here.ok) return here;
  let added = 0;
  for (const text of texts) {
    const sheet = readSheetFile(text);
    if (!sheet.ok || here.value.get(sheet.value.id) === text) continue;
    const copy = `${sheet.value.id.slice(0, 40)}-${fingerprint(text)}`;
    if (here.value.has(copy)) continue;
    const kept = here.value.has(sheet.value.id) ? writeSheetFile({ ...sheet.value, id: copy }) : text;
    const saved = await desk.keepSheet(kept);
    if (!saved.ok) return saved;
    added += 1;
  }
  return success(added);
}

import type { AppContext } from '../shell/app-context.ts';

/** Makes a card the one for new games. A Table where nothing is entered yet has it before this is told. */
export async function useCard(app: Pick<AppContext, 'cards' | 'preferences' | 'session'>, id: string): Promise<void> {
  await giveToTable(app, id);
  await app.preferences.change({ cardId: id });
}

/** Gives a card, as it now is, to a Table where nothing is entered yet. */
export async function giveToTable(
  { cards, session }: Pick<AppContext, 'cards' | 'session'>,
  id: string,
): Promise<void> {
  if (!session.untouched) return;
  const card = await cards.open(id, true);
  if (card.ok && session.untouched) session.begin(card.value);
}

import type { AppContext } from '../shell/app-context.ts';

/** How often a card was chosen: of several chosen in haste the last one counts, whichever is read first. */
let choices = 0;

/** Makes a card the one for new games. A Table where nothing is entered yet has it before this is told. */
export async function useCard(app: Pick<AppContext, 'cards' | 'preferences' | 'session'>, id: string): Promise<void> {
  choices += 1;
  const own = choices;
  await giveToTable(app, id, () => own === choices);
  if (own === choices) await app.preferences.change({ cardId: id });
}

/** Gives a card, as it now is, to a Table where nothing is entered yet, if it is still wanted once it is read. */
export async function giveToTable(
  { cards, session }: Pick<AppContext, 'cards' | 'session'>,
  id: string,
  isWanted: () => boolean = () => true,
): Promise<void> {
  if (!session.untouched) return;
  const card = await cards.open(id, true);
  if (card.ok && session.untouched && isWanted()) session.begin(card.value);
}

import { failure, type Result } from '../../../core/base/result.ts';
import type { ImportedGames } from '../../../main/desk/desk.ts';
import { DEMO_CARD } from '../../session/card-shelf.ts';
import type { AppContext } from '../../shell/app-context.ts';
import type { JournalStore } from './journal-store.ts';
import { sendGames } from '../../backup/send-games.ts';

/** Invents the example season in the worker and puts it into the journal; `told` hears the part done, 0 to 1. */
export async function addSeason(
  { desk, about }: AppContext,
  store: JournalStore,
  told: (done: number) => void,
): Promise<Result<ImportedGames>> {
  const card = await desk.openCard(DEMO_CARD);
  if (!card.ok) return card;
  const request = { card: card.value.text, appVersion: about.appVersion };
  const made = await store.worker.ask('season', request, { onProgress: told });
  if (made.status !== 'done') return failure('not-made', made.status === 'failed' ? made.message : '');
  if (!made.value.ok) return failure('not-made', made.value.message);
  const sent = await sendGames(desk, made.value.value, () => undefined);
  await store.load();
  return sent;
}

import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { expectValue } from '../../core/base/result.ts';
import { gameRecord } from '../main/support/desks.ts';
import { fileTroubles } from './content.ts';
import { wordTroubles } from './sentences.ts';
import type { Attack, Troubles } from './table.ts';
import { Refused, Windrow } from './windrow.ts';

const AT_ONCE = 5;

/** Five starts at once on a lock that a crash left: one opens, the others say why not, and what it saves is there. */
export const RACES: Attack = {
  name: 'races of 5 starts on an old lock',
  share: 2,
  run: async (trials, base) => {
    const folder = join(base, 'desk');
    await trials.again('a race', async () => {
      await rm(folder, { recursive: true, force: true });
      const before = await Windrow.start(folder);
      expectValue(await before.desk.startGame(gameRecord('g-1')));
      await before.kill();
      return await race(folder);
    });
  },
};

async function race(folder: string): Promise<Troubles> {
  const starts = await Promise.allSettled(Array.from({ length: AT_ONCE }, async () => await Windrow.start(folder)));
  const opened = starts.flatMap((start) => (start.status === 'fulfilled' ? [start.value] : []));
  const refusals = starts.flatMap((start) => (start.status === 'rejected' ? [start.reason as unknown] : []));
  const troubles = opened.length === 1 ? [] : [`${opened.length} of ${AT_ONCE} opened`];
  for (const refusal of refusals) {
    if (!(refusal instanceof Refused)) throw refusal;
    troubles.push(...wordTroubles(refusal.message), ...(refusal.code === 1 ? [] : [`one ended with ${refusal.code}`]));
  }
  let acknowledged = 1;
  for (const [place, windrow] of opened.entries()) {
    const saved = await windrow.desk.startGame(gameRecord(`g-new-${place}`));
    if (saved.ok) acknowledged += 1;
    else troubles.push(`the one that opened does not save: ${saved.problem.message}`);
    await windrow.kill();
  }
  const again = await Windrow.start(folder);
  const games = expectValue(await again.desk.listGames()).length;
  await again.kill();
  if (games !== acknowledged) troubles.push(`${acknowledged} games were acknowledged, ${games} are there`);
  return [...troubles, ...(await fileTroubles(folder))];
}

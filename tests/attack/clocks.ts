import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expectValue } from '../../core/base/result.ts';
import type { Desk } from '../../main/desk/desk.ts';
import { cardText, gameRecord } from '../main/support/desks.ts';
import { contentOf, differences, fileTroubles } from './content.ts';
import { note } from './person.ts';
import { takenTroubles } from './sentences.ts';
import type { Attack, Trials, Troubles } from './table.ts';
import { Windrow } from './windrow.ts';

const DAY = 86_400_000;
/** By so much a clock may be wrong, in milliseconds: an empty battery, a wrong year, summer time, a second. */
const WRONG = [-400 * DAY, -DAY, -1000, 45 * DAY, 4 * 365 * DAY, -20_000 * DAY];
/** Copies of a card that are kept. */
const BACKUPS = 10;

/** Clocks that are wrong at a start, are set back between starts, and jump while Windrow runs. */
export const CLOCKS: Attack = {
  name: 'wrong clocks',
  share: 3,
  run: async (trials, base) => {
    let number = 0;
    const fresh = (): string => join(base, `desk-${(number += 1)}`);
    await trials.try('that the preload sets a clock', async () => await differs(fresh(), -400 * DAY));
    const words = (clock: number): string => `${clock / DAY} days`;
    const isMute = process.platform === 'win32';
    if (isMute) trials.skip('jumps', 'no signal reaches a program here');
    const jump = async (clock: number): Promise<Troubles> => await jumps(trials, fresh(), clock);
    await trials.all([
      {
        name: 'a card changed and removed, with ten copies from the future',
        attempt: async () => await cards(fresh()),
      },
      ...WRONG.map((clock) => ({
        name: `a removed game, ${words(clock)}`,
        attempt: async () => await removed(fresh(), clock),
      })),
      ...(isMute ? [] : WRONG).map((clock) => ({
        name: `a jump, ${words(clock)}`,
        attempt: async () => await jump(clock),
      })),
    ]);
  },
};

/** The attack would be none if the clock were the same. */
async function differs(folder: string, clock: number): Promise<Troubles> {
  const windrow = await Windrow.start(folder, { clock });
  const { savedAt } = expectValue(await windrow.desk.saveCard('mine', cardText('Mine')));
  await windrow.kill();
  const off = Date.parse(savedAt) - Date.now();
  // A file's time is the disk's; the time in a backup's name is the program's.
  const again = await Windrow.start(folder, { clock });
  expectValue(await again.desk.saveCard('mine', cardText('Mine, again')));
  const [backup] = expectValue(await again.desk.listBackups('mine'));
  await again.kill();
  const apart = Date.parse(backup?.savedAt ?? '') - Date.now();
  return Math.abs(apart - clock) < DAY ? [] : [`the clock is off by ${apart} (a file's by ${off}), not by ${clock}`];
}

/** Ten copies were made while the clock was ahead; what a change or a removal replaces now is the newest copy all the same. */
async function cards(folder: string): Promise<Troubles> {
  const backups = join(folder, 'cards', 'backups', 'mine');
  const first = await Windrow.start(folder);
  expectValue(await first.desk.saveCard('mine', cardText('First')));
  await first.kill();
  await mkdir(backups, { recursive: true });
  for (let day = 1; day <= BACKUPS; day += 1) {
    const stamp = new Date(Date.now() + day * DAY).toISOString().slice(0, 19).replaceAll(':', '-');
    await writeFile(join(backups, `${stamp}Z.card.json`), cardText(`Future ${day}`));
  }
  const windrow = await Windrow.start(folder, { clock: -400 * DAY });
  const troubles = [...takenTroubles(await windrow.desk.saveCard('mine', cardText('Second')))];
  troubles.push(...(await newestBackupTroubles(windrow.desk, cardText('First'))));
  troubles.push(...takenTroubles(await windrow.desk.saveCard('mine', cardText('Third'))));
  troubles.push(...takenTroubles(await windrow.desk.removeCard('mine')));
  troubles.push(...(await newestBackupTroubles(windrow.desk, cardText('Third'))));
  await windrow.kill();
  return [...troubles, ...(await fileTroubles(folder))];
}

/** Restores the newest backup and looks at it. */
async function newestBackupTroubles(desk: Desk, wanted: string): Promise<Troubles> {
  const [newest] = expectValue(await desk.listBackups('mine'));
  const restored = await desk.restoreCard('mine', newest?.name ?? '');
  if (!restored.ok) return [`no copy could be restored: ${restored.problem.message}`];
  const found = expectValue(await desk.openCard('mine')).text;
  return found === wanted ? [] : [`the newest copy is ${found.slice(40, 80)}, not ${wanted.slice(40, 80)}`];
}

/**
 * A removed game lives through some starts with a wrong clock, if that is so wrong that nobody could believe it; within
 * the thirty days it does in any case. Between them a clock that is ahead can't be told from one that is right.
 */
async function removed(folder: string, clock: number): Promise<Troubles> {
  const first = await Windrow.start(folder);
  expectValue(await first.desk.startGame(gameRecord('g-1')));
  expectValue(await first.desk.removeGame('g-1'));
  await first.kill();
  for (const off of [clock, 0]) await (await Windrow.start(folder, { clock: off })).kill();
  const again = await Windrow.start(folder);
  const restored = await again.desk.restoreGame('g-1');
  await again.kill();
  const mayGo = clock > 30 * DAY && clock < 365 * DAY;
  return mayGo && !restored.ok && restored.problem.code === 'not-found' ? [] : takenTroubles(restored);
}

/** The clock jumps while steps are saved; all of them are there at the next start, with the right clock. */
async function jumps({ random }: Trials, folder: string, clock: number): Promise<Troubles> {
  const windrow = await Windrow.start(folder, { clock });
  const troubles = [...takenTroubles(await windrow.desk.startGame(gameRecord('g-1')))];
  const jumpAt = random.below(8);
  for (let place = 0; place < 8; place += 1) {
    if (place === jumpAt) windrow.signal('SIGUSR2');
    troubles.push(...takenTroubles(await windrow.desk.appendEvent('g-1', place, note(`note ${place}`))));
    troubles.push(...takenTroubles(await windrow.desk.changeGame('g-1', { tags: [`tag ${place}`] })));
  }
  const before = await contentOf(windrow.desk);
  await windrow.kill();
  const again = await Windrow.start(folder);
  troubles.push(...differences(before, await contentOf(again.desk)), ...expectValue(await again.desk.notices()));
  await again.kill();
  return [...troubles, ...(await fileTroubles(folder))];
}

import { spawnSync } from 'node:child_process';
import { cp, mkdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { contentIn, contentOf, differences, filesIn } from './content.ts';
import { liveIn } from './lived-in.ts';
import { NOT_TRIED, type Save, SAVES, SKIPPED } from './saves.ts';
import { refusalTroubles, takenTroubles, wordTroubles } from './sentences.ts';
import { canMount, mountDisk, setReadOnly, unmount } from './small-disk.ts';
import type { Attack, Troubles } from './table.ts';
import { Refused, Windrow } from './windrow.ts';

/** How a disk takes nothing more, and how a refusal for that is named. */
interface Way {
  readonly name: string;
  readonly code: string;
  readonly close: (disk: string) => Promise<void>;
  readonly open: (disk: string) => Promise<void>;
}

const WAYS: readonly Way[] = [
  {
    name: 'full',
    code: 'disk-full',
    close: async (disk) => {
      spawnSync('dd', ['if=/dev/zero', `of=${join(disk, 'other.bin')}`, 'bs=1024'], { stdio: 'ignore' });
    },
    open: async (disk) => await rm(join(disk, 'other.bin')),
  },
  {
    name: 'read-only',
    code: 'not-allowed',
    close: async (disk) => setReadOnly(disk, true),
    open: async (disk) => setReadOnly(disk, false),
  },
];

/** Every kind of saving call, and a start, on a real disk that is full or may only be read. */
export const DISKS: Attack = {
  name: 'full and read-only disks',
  share: 5,
  run: async (trials, base) => {
    if (NOT_TRIED.length > 0)
      await trials.try('the list of saving calls', async () => [`no ${NOT_TRIED.join(', no ')}`]);
    trials.skip(SKIPPED, 'it takes a folder with a game in two files, which is not made here');
    const why = canMount(base);
    if (why !== '') return trials.skip('all disks', why);
    const model = join(base, 'model');
    await liveIn(model);
    const [disk, folder] = [join(base, 'disk'), join(base, 'disk', 'desk')];
    const onDisk = async (attempt: () => Promise<Troubles>): Promise<Troubles> => {
      await mkdir(disk, { recursive: true });
      mountDisk(disk, '2m');
      await cp(model, folder, { recursive: true });
      return await attempt().finally(() => unmount(disk));
    };
    const forms = WAYS.flatMap((way) => [...SAVES, undefined].map((save) => ({ way, save })));
    await trials.each(
      forms,
      ({ way, save }) => `${save?.name ?? 'a start'} on a ${way.name} disk`,
      async ({ way, save }) =>
        await onDisk(async () =>
          save === undefined ? await start(disk, folder, way) : await whileRunning(disk, folder, way, save),
        ),
    );
  },
};

/** A call that is refused changes nothing, one that is taken is on the disk; with room again, all goes on. */
async function whileRunning(disk: string, folder: string, way: Way, { make, freely }: Save): Promise<Troubles> {
  const windrow = await Windrow.start(folder);
  try {
    const before = await contentOf(windrow.desk);
    await way.close(disk);
    const result = await make(windrow.desk);
    // A full disk still lets go of files, and takes what lies within their last block.
    const troubles = [...(result.ok && way.name === 'full' ? [] : refusalTroubles(result, [way.code]))];
    const live = await contentOf(windrow.desk);
    if (!result.ok) troubles.push(...differences(before, live));
    troubles.push(...differences(live, await contentIn(folder)));
    const leftovers = [...(await filesIn(folder)).keys()].filter((path) => path.endsWith('.unfinished'));
    await way.open(disk);
    if (!result.ok) troubles.push(...leftovers.map((path) => `${path} was left behind`));
    if (!result.ok) troubles.push(...takenTroubles(await make(windrow.desk)));
    const after = await contentOf(windrow.desk);
    if (!freely && differences(before, after).length === 0) troubles.push('with room again nothing was saved');
    return [...troubles, ...differences(after, await contentIn(folder))];
  } finally {
    await windrow.kill();
  }
}

/** A start is one sentence or goes well; all that was there is there afterwards. */
async function start(disk: string, folder: string, way: Way): Promise<Troubles> {
  const before = await contentIn(folder);
  await way.close(disk);
  const troubles: string[] = [];
  try {
    const windrow = await Windrow.start(folder);
    troubles.push(...differences(before, await contentOf(windrow.desk)));
    await windrow.kill();
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    troubles.push(...wordTroubles(error.message));
    if (error.code !== 1) troubles.push(`it ended with ${error.code}`);
  }
  await way.open(disk);
  const again = await Windrow.start(folder);
  troubles.push(...differences(before, await contentOf(again.desk)));
  await again.kill();
  return troubles;
}

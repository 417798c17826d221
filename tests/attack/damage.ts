import { cp, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { type Random, shuffle } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { spoiled } from '../main/support/spoil.ts';
import { type Content, contentIn, contentOf, differences, filesIn } from './content.ts';
import { liveIn, OPEN_GAME } from './lived-in.ts';
import { wordTroubles } from './sentences.ts';
import type { Attack, Trials, Troubles } from './table.ts';
import { startAfterKill, Windrow } from './windrow.ts';

/** Logs that are torn at once. */
const LOGS = 6;
/** At most so many files of a folder are damaged at once. */
const MOST = 4;
/** Within so many milliseconds a start is over. */
const START = 900;

/** Torn and damaged files before a start, and a kill -9 while it mends them. */
export const DAMAGE: Attack = {
  name: 'damaged files, kill -9 while mending',
  share: 3,
  run: async (trials, base) => {
    const model = join(base, 'model');
    await liveIn(model);
    const whole = await contentIn(model);
    const folder = join(base, 'desk');
    await trials.again('damage', async (turn) => {
      await rm(folder, { recursive: true, force: true });
      await cp(model, folder, { recursive: true });
      return turn % 2 === 1 ? await tornLogs(trials, folder) : await damagedFiles(trials, folder, whole);
    });
  },
};

/** Opens a folder, half of the times only after a start that was killed. */
async function opened(random: Random, folder: string): Promise<Windrow> {
  return random.below(2) === 0 ? await startAfterKill(folder, random.below(START)) : await Windrow.start(folder);
}

/** Logs cut off anywhere: every game stands at the last step that is whole. */
async function tornLogs(trials: Trials, folder: string): Promise<Troubles> {
  const path = (id: string): string => join(folder, 'open', `${id}.jsonl`);
  const log = await readFile(path(OPEN_GAME), 'utf8');
  const steps = new Map<string, number>();
  for (let number = 0; number < LOGS; number += 1) {
    const id = `torn-${number}`;
    const bytes = Buffer.from(log.replaceAll(`"id":"${OPEN_GAME}"`, `"id":"${id}"`));
    const first = bytes.indexOf(10) + 1;
    const torn = bytes.subarray(0, first + trials.random.below(bytes.length - first + 1));
    await writeFile(path(id), torn);
    // A log begins with the game as it stood after its first step.
    const [start = '', ...lines] = torn.toString('utf8').split('\n');
    const begun = (JSON.parse(start) as { record: { events: unknown[] } }).record.events.length;
    steps.set(id, begun + lines.length - 1);
  }
  const windrow = await opened(trials.random, folder);
  const troubles = [...expectValue(await windrow.desk.notices())];
  for (const [id, wanted] of steps) {
    const game = await windrow.desk.openGame(id);
    const found = game.ok ? game.value.events.length : game.problem.message;
    if (found !== wanted) troubles.push(`${id} was at step ${wanted}, is at ${found}`);
  }
  await windrow.kill();
  return troubles;
}

/** Any files damaged: nothing of them is written over, and nothing else is touched. */
async function damagedFiles({ random }: Trials, folder: string, whole: Content): Promise<Troubles> {
  const paths = [...(await filesIn(folder)).keys()].filter((path) => path !== 'in-use.json');
  const damaged = new Map<string, Uint8Array>();
  for (const path of shuffle(paths, random).slice(0, 1 + random.below(MOST))) {
    const bytes = spoiled(await readFile(join(folder, path)), random);
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), bytes);
    damaged.set(path, bytes);
  }
  const windrow = await opened(random, folder);
  const content = await contentOf(windrow.desk);
  const notices = expectValue(await windrow.desk.notices());
  const troubles = [...notices.flatMap(wordTroubles), ...(await notKept(folder, damaged, notices))];
  const touched = new Set([...damaged.keys()].map(thingIn));
  troubles.push(...differences(whole, content, (name) => touched.has(name)));
  await windrow.kill();
  return troubles.map((trouble) => `${trouble} (damaged: ${[...damaged.keys()].join(', ')})`);
}

/** What may be made anew: it holds nothing that a person entered. */
const REMAKABLE = /^(index\.jsonl|about-these-files\.txt|findings\/.*)$/;

async function notKept(
  folder: string,
  damaged: ReadonlyMap<string, Uint8Array>,
  notices: readonly string[],
): Promise<Troubles> {
  const there = [...(await filesIn(folder)).values()];
  const isKept = (bytes: Uint8Array): boolean => there.some((other) => other.equals(bytes));
  const lost = [...damaged].filter(([path, bytes]) => !REMAKABLE.test(path) && !isKept(bytes));
  // A log that can be read goes into its game.
  const isTold = (path: string): boolean => notices.some((words) => words.includes(idIn(path)));
  return lost.filter(([path]) => !path.startsWith('open/') || isTold(path)).map(([path]) => `${path} was written over`);
}

function idIn(path: string): string {
  return /([^/]+?)(\.card|\.sheet)?\.jsonl?$/.exec(path)?.[1] ?? path;
}

/** The name, in the content, of what a file holds. */
function thingIn(path: string): string {
  const kinds: readonly (readonly [RegExp, string])[] = [
    [/^(games|open)\//, `game ${idIn(path)}`],
    [/^cards\/progress\//, `progress ${idIn(path)}`],
    [/^cards\/[^/]+$/, `card ${idIn(path)}`],
    [/^practice\/sheets\//, `sheet ${idIn(path)}`],
    [/^practice\//, 'practice'],
    [/^preferences/, 'settings'],
  ];
  return kinds.find(([pattern]) => pattern.test(path))?.[1] ?? idIn(path);
}

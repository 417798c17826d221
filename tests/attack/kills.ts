import { join } from 'node:path';
import { expectValue } from '../../core/base/result.ts';
import { fileTroubles } from './content.ts';
import { Person } from './person.ts';
import type { Attack, Trials } from './table.ts';
import { startAfterKill, Windrow } from './windrow.ts';

/** How many use Windrow at once. */
const PERSONS = 3;
/** One turn in so many, one saves alone. */
const ALONE = 3;
/** One kill in so many comes during a start. */
const AT_A_START = 6;
/** A start takes some hundred milliseconds, a step a few. */
const [START, STEPS] = [900, 400];

/** kill -9 at moments by chance, while three clients save all kinds of things: what was acknowledged is there. */
export const KILLS: Attack = {
  name: 'kill -9 while 3 clients save',
  share: 5,
  run: async (trials, base) => {
    const folder = join(base, 'desk');
    const persons = Array.from({ length: PERSONS }, (_, number) => new Person(number, trials.random));
    let windrow = await Windrow.start(folder);
    let checks = 0;
    await trials.again('kill -9', async () => {
      // Where several save, logs are begun and folded at each step; one alone goes on with its log.
      const saving = trials.random.below(ALONE) === 0 ? persons.slice(0, 1) : persons;
      const busy = saving.map(async (person) => await person.work(windrow.desk));
      await pause(trials.random.below(STEPS));
      await windrow.kill();
      const refused = (await Promise.all(busy)).flat();
      windrow = await startedAgain(trials, folder);
      const lost = [];
      for (const person of persons) lost.push(...(await person.lossesIn(windrow.desk)));
      checks += persons.reduce((sum, { things }) => sum + things, 0);
      return [...refused, ...lost, ...expectValue(await windrow.desk.notices()), ...(await fileTroubles(folder))];
    });
    await windrow.kill();
    const calls = persons.reduce((sum, { acknowledged }) => sum + acknowledged, 0);
    trials.note(`${calls} acknowledged calls, ${checks} things looked at after restarts`);
    if (calls === 0) await trials.try('the clients', async () => ['no call was acknowledged']);
  },
};

/** Started again, some of the times only after it was killed while it did so. */
async function startedAgain({ random }: Trials, folder: string): Promise<Windrow> {
  if (random.below(AT_A_START) === 0) return await startAfterKill(folder, random.below(START));
  return await Windrow.start(folder);
}

async function pause(milliseconds: number): Promise<void> {
  await new Promise((done) => setTimeout(done, milliseconds));
}

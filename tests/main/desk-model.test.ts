import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import type { Random } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import type { DeskService } from '../../main/desk/service.ts';
import { cardText, event, gameRecord, MISS, openOn } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

vi.setConfig({ testTimeout: 180_000 });

/** What a person has put in, kept in the plainest way there is. */
interface Model {
  readonly games: Map<string, { place: string; notes: string[] }>;
  readonly removed: Map<string, { place: string; notes: string[] }>;
  readonly cards: Map<string, string>;
  textSize: number;
  readonly practised: string[];
}

class Real {
  disk = new MemoryDisk();
  desk: DeskService;

  constructor(disk: MemoryDisk, desk: DeskService) {
    this.disk = disk;
    this.desk = desk;
  }
}

/** Takes from a crash all that was not flushed. */
const NOTHING_SURVIVES: Random = { below: () => 0 } as unknown as Random;

type Act = (model: Model, real: Real) => Promise<void>;

/** A command of a person; `check` says whether it can be given now. */
class Command implements fc.AsyncCommand<Model, Real> {
  readonly #name: string;
  readonly #can: (model: Model) => boolean;
  readonly #act: Act;

  constructor(name: string, can: (model: Model) => boolean, act: Act) {
    this.#name = name;
    this.#can = can;
    this.#act = act;
  }

  check(model: Readonly<Model>): boolean {
    return this.#can(model);
  }

  async run(model: Model, real: Real): Promise<void> {
    real.disk.now += 1000;
    await this.#act(model, real);
    expect(await seen(real.desk)).toEqual(expected(model));
  }

  toString(): string {
    return this.#name;
  }
}

function expected({ games, cards, textSize, practised }: Model): unknown {
  return { games: Object.fromEntries(games), cards: Object.fromEntries(cards), textSize, practised };
}

async function seen(desk: DeskService): Promise<unknown> {
  const games: Record<string, unknown> = {};
  for (const { id, place, events } of expectValue(await desk.listGames())) {
    const record = expectValue(await desk.openGame(id));
    const notes = record.events.map((each) => ('text' in each ? each.text : ''));
    expect([record.place, notes.length]).toEqual([place, events]);
    games[id] = { place, notes };
  }
  const cards: Record<string, string> = {};
  for (const { id, fixed } of expectValue(await desk.listCards())) {
    if (!fixed) cards[id] = expectValue(await desk.openCard(id)).text;
  }
  const { textSize } = expectValue(await desk.readPreferences());
  const practised = expectValue(await desk.practiceHistory()).map(({ id }) => id);
  return { games, cards, textSize, practised };
}

const id = fc.constantFrom('g-1', 'g-2', 'g-3');
const word = fc.string({ maxLength: 8 });
const note = word.map((text) => `note ${text}`);
const always = (): boolean => true;
const game = (model: Model, name: string): { place: string; notes: string[] } =>
  model.games.get(name) ?? { place: '', notes: [] };

const commands = [
  fc.tuple(id, word).map(
    ([name, place]) =>
      new Command(`start ${name}`, always, async (model, { desk }) => {
        const isNew = !model.games.has(name);
        expect((await desk.startGame(gameRecord(name, { place }))).ok).toBe(isNew);
        if (isNew) model.games.set(name, { place, notes: [] });
      }),
  ),
  fc.tuple(id, note).map(
    ([name, text]) =>
      new Command(
        `note in ${name}`,
        ({ games }) => games.has(name),
        async (model, { desk }) => {
          const { notes } = game(model, name);
          expectValue(await desk.appendEvent(name, notes.length, { type: 'noted', text, at: event(0).at }));
          notes.push(text);
        },
      ),
  ),
  fc.tuple(id, note, fc.nat(20)).map(
    ([name, text, pick]) =>
      new Command(
        `correct a note in ${name}`,
        (model) => game(model, name).notes.length > 0,
        async (model, { desk }) => {
          const { notes } = game(model, name);
          const place = pick % notes.length;
          expectValue(
            await desk.changeGame(name, { corrected: { place, event: { type: 'noted', text, at: event(0).at } } }),
          );
          notes[place] = text;
        },
      ),
  ),
  id.map(
    (name) =>
      new Command(
        `undo in ${name}`,
        (model) => game(model, name).notes.length > 0,
        async (model, { desk }) => {
          const { notes } = game(model, name);
          expectValue(await desk.dropEvent(name, notes.length - 1));
          notes.pop();
        },
      ),
  ),
  fc.tuple(id, word).map(
    ([name, place]) =>
      new Command(
        `move ${name}`,
        ({ games }) => games.has(name),
        async (model, { desk }) => {
          expectValue(await desk.changeGame(name, { place }));
          game(model, name).place = place;
        },
      ),
  ),
  id.map(
    (name) =>
      new Command(
        `remove ${name}`,
        ({ games }) => games.has(name),
        async (model, { desk }) => {
          expectValue(await desk.removeGame(name));
          model.removed.set(name, game(model, name));
          model.games.delete(name);
        },
      ),
  ),
  id.map(
    (name) =>
      new Command(`restore ${name}`, always, async (model, { desk }) => {
        const removed = model.games.has(name) ? undefined : model.removed.get(name);
        expect((await desk.restoreGame(name)).ok).toBe(removed !== undefined);
        if (removed === undefined) return;
        model.games.set(name, removed);
        model.removed.delete(name);
      }),
  ),
  fc.tuple(fc.constantFrom('one', 'two'), word).map(
    ([name, title]) =>
      new Command(`save card ${name}`, always, async ({ cards }, { desk }) => {
        expectValue(await desk.saveCard(name, cardText(title)));
        cards.set(name, cardText(title));
      }),
  ),
  fc.constantFrom('one', 'two').map(
    (name) =>
      new Command(
        `remove card ${name} and bring it back`,
        ({ cards }) => cards.has(name),
        async (_model, { desk }) => {
          expectValue(await desk.removeCard(name));
          const [newest] = expectValue(await desk.listBackups(name));
          expectValue(await desk.restoreCard(name, newest?.name ?? ''));
        },
      ),
  ),
  fc.integer({ min: 16, max: 32 }).map(
    (textSize) =>
      new Command(`text of ${textSize}`, always, async (model, { desk }) => {
        expectValue(await desk.changePreferences({ textSize }));
        model.textSize = textSize;
      }),
  ),
  fc.constantFrom('m1', 'm2', 'm3', 'm4').map(
    (name) =>
      new Command(`practise ${name}`, always, async ({ practised }, { desk }) => {
        expectValue(await desk.notePractice([{ ...MISS, id: name }]));
        if (!practised.includes(name)) practised.push(name);
      }),
  ),
  fc.constant(
    new Command('quit and start', always, async (_model, real) => {
      await real.desk.close();
      real.desk = await openOn(real.disk);
    }),
  ),
  fc.constant(
    new Command('pull the plug and start', always, async (_model, real) => {
      real.disk = real.disk.crashed(NOTHING_SURVIVES);
      real.disk.now += 10_000;
      real.desk = await openOn(real.disk);
      expect(expectValue(await real.desk.notices())).toEqual([]);
    }),
  ),
];

test('CR-D5: 300 random lives of a desk, with restarts and pulled plugs, hold what a plain model holds', async () => {
  await fc.assert(
    fc.asyncProperty(fc.commands(commands, { maxCommands: 40 }), async (life) => {
      const disk = new MemoryDisk();
      const real = new Real(disk, await openOn(disk));
      const model: Model = { games: new Map(), removed: new Map(), cards: new Map(), textSize: 18, practised: [] };
      await fc.asyncModelRun(() => ({ model, real }), life);
    }),
    { numRuns: 300, seed: 5 },
  );
});

import type { Random } from '../../core/base/random.ts';
import type { Result } from '../../core/base/result.ts';
import type { TimedEvent } from '../../core/game/events.ts';
import type { Desk } from '../../main/desk/desk.ts';
import { DEFAULT_PREFERENCES } from '../../main/desk/preferences.ts';
import { cardText, gameRecord, MISS, sheetText } from '../main/support/desks.ts';
import type { Troubles } from './table.ts';

/** One call that saves, and what the thing is once it was acknowledged. */
interface Deed {
  readonly thing: string;
  readonly becomes: string;
  readonly make: (desk: Desk) => Promise<Result<unknown>>;
}

/** A thing as it was acknowledged, and as it is if the call went through that was never answered. */
interface Known {
  readonly is: string;
  readonly perhaps: string;
}

/** A game in so far as it is changed here. */
interface Game {
  readonly notes: readonly string[];
  readonly tags: readonly string[];
}

const NONE = 'none';
const REMOVED = 'removed ';
/** After so many notes another game is begun. */
const LONG = 30;

export function note(text: string): TimedEvent {
  return { type: 'noted', text, at: '2026-11-25T18:00:01Z' };
}

/** Somebody who saves things of their own, one after the other, and remembers what was acknowledged. */
export class Person {
  acknowledged = 0;
  readonly #name: string;
  readonly #random: Random;
  readonly #known = new Map<string, Known>();
  #games = 1;
  #count = 0;

  constructor(number: number, random: Random) {
    this.#name = `p${number}`;
    // Clients run at once: each has chances of its own.
    this.#random = Array.from({ length: number }).reduce<Random>((stream) => stream.jumped(), random.longJumped());
  }

  /** How many things there are to be looked at. */
  get things(): number {
    return this.#known.size;
  }

  /** Saves until nobody answers any more; answers what was refused. */
  async work(desk: Desk): Promise<Troubles> {
    for (;;) {
      const { thing, becomes, make } = this.#deed();
      const is = this.#is(thing);
      this.#known.set(thing, { is, perhaps: becomes });
      const result = await make(desk);
      if (!result.ok && result.problem.code === 'gone') return [];
      if (!result.ok) return [`${thing} was refused: ${result.problem.message}`];
      this.#known.set(thing, { is: becomes, perhaps: becomes });
      this.acknowledged += 1;
    }
  }

  /** What is neither as acknowledged nor as it would be after the call that was cut off. */
  async lossesIn(desk: Desk): Promise<Troubles> {
    const losses: string[] = [];
    for (const [thing, { is, perhaps }] of this.#known) {
      const found = await contentOfThing(desk, thing);
      // What a removed thing holds is seen once it is restored.
      const fits = (wanted: string): boolean => found === wanted || (found === NONE && wanted.startsWith(REMOVED));
      const settled = [perhaps, is].find(fits);
      if (settled === undefined) losses.push(`${thing} is ${found.slice(-200)}, not ${is.slice(-200)}`);
      this.#known.set(thing, { is: settled ?? found, perhaps: settled ?? found });
    }
    return losses;
  }

  #is(thing: string): string {
    return this.#known.get(thing)?.is ?? String(Reflect.get(DEFAULT_PREFERENCES, thing) ?? NONE);
  }

  #deed(): Deed {
    this.#count += 1;
    const name = this.#name;
    const stamp = `${name} ${this.#count}`;
    switch (this.#random.below(12)) {
      case 0:
        return this.#cardDeed(stamp);
      case 1: {
        const textSize = 16 + this.#random.below(17);
        const becomes = String(textSize);
        // One setting each, so that nobody writes over another's.
        if (name === 'p0') return { thing: 'textSize', becomes, make: (desk) => desk.changePreferences({ textSize }) };
        const tourStep = textSize % 10;
        if (name === 'p1')
          return { thing: 'tourStep', becomes: String(tourStep), make: (desk) => desk.changePreferences({ tourStep }) };
        const rackTiers = textSize % 2 === 0 ? 1 : 2;
        return {
          thing: 'rackTiers',
          becomes: String(rackTiers),
          make: (desk) => desk.changePreferences({ rackTiers }),
        };
      }
      case 2: {
        const thing = `practice ${name}`;
        const before = this.#is(thing);
        const entry = { ...MISS, id: `${name}-${this.#count}` };
        const becomes = String(before === NONE ? 1 : Number(before) + 1);
        return { thing, becomes, make: (desk) => desk.notePractice([entry]) };
      }
      case 3:
        if (name === 'p0') {
          const progress = { confirmed: [stamp], answers: [] };
          return { thing: 'progress', becomes: stamp, make: (desk) => desk.saveCardProgress('demo', progress) };
        }
        if (name === 'p1') {
          const draft = gameRecord('drafted', { place: stamp });
          return { thing: 'draft', becomes: stamp, make: (desk) => desk.keepDraft(draft) };
        }
        return { thing: 'sheet', becomes: stamp, make: (desk) => desk.keepSheet(sheetText(stamp)) };
      default:
        return this.#gameDeed(stamp);
    }
  }

  #cardDeed(title: string): Deed {
    const id = `card of ${this.#name}`;
    const thing = `card ${id}`;
    return this.#is(thing) !== NONE && this.#random.below(4) === 0
      ? { thing, becomes: NONE, make: (desk) => desk.removeCard(id) }
      : { thing, becomes: title, make: (desk) => desk.saveCard(id, cardText(title)) };
  }

  #gameDeed(stamp: string): Deed {
    const id = `${this.#name}-${this.#games}`;
    const thing = `game ${id}`;
    const is = this.#is(thing);
    if (is === NONE) {
      return { thing, becomes: textOf({ notes: [], tags: [] }), make: (desk) => desk.startGame(gameRecord(id)) };
    }
    if (is.startsWith(REMOVED)) {
      return { thing, becomes: is.slice(REMOVED.length), make: (desk) => desk.restoreGame(id) };
    }
    const { notes, tags } = JSON.parse(is) as Game;
    const chance = this.#random.below(10);
    if (chance === 0) return { thing, becomes: REMOVED + is, make: (desk) => desk.removeGame(id) };
    if (chance === 1) {
      const becomes = textOf({ notes, tags: [stamp] });
      return { thing, becomes, make: (desk) => desk.changeGame(id, { tags: [stamp] }) };
    }
    if (chance < 4 && notes.length > 0) {
      const place = notes.length - 1;
      return { thing, becomes: textOf({ notes: notes.slice(0, -1), tags }), make: (desk) => desk.dropEvent(id, place) };
    }
    if (notes.length >= LONG) this.#games += 1;
    const becomes = textOf({ notes: [...notes, stamp], tags });
    return { thing, becomes, make: (desk) => desk.appendEvent(id, notes.length, note(stamp)) };
  }
}

function textOf({ notes, tags }: Game): string {
  return JSON.stringify({ notes, tags });
}

/** What a thing is now, in the words in which it is remembered. */
async function contentOfThing(desk: Desk, thing: string): Promise<string> {
  const [kind = '', ...rest] = thing.split(' ');
  const id = rest.join(' ');
  const readers: Readonly<Record<string, () => Promise<string>>> = {
    game: async () =>
      textOfResult(await desk.openGame(id), ({ events, tags }) => {
        const notes = events.map((event) => (event.type === 'noted' ? event.text : event.type));
        return textOf({ notes, tags });
      }),
    card: async () => textOfResult(await desk.openCard(id), ({ entry }) => entry.title),
    practice: async () =>
      textOfResult(await desk.practiceHistory(), (all) => {
        const own = all.filter((entry) => entry.id.startsWith(`${id}-`));
        if (new Set(own.map((entry) => entry.id)).size < own.length) return 'an entry twice';
        return own.length === 0 ? NONE : String(own.length);
      }),
    progress: async () => textOfResult(await desk.readCardProgress('demo'), ({ confirmed }) => confirmed[0] ?? NONE),
    draft: async () => textOfResult(await desk.readDraft(), (draft) => draft?.place ?? NONE),
    sheet: async () => textOfResult(await desk.listSheets(), (sheets) => sheets[0]?.title ?? NONE),
  };
  const setting = async (): Promise<string> =>
    textOfResult(await desk.readPreferences(), (all) => String(Reflect.get(all, kind)));
  return await (readers[kind] ?? setting)();
}

function textOfResult<Value>(result: Result<Value>, read: (value: Value) => string): string {
  if (result.ok) return read(result.value);
  return result.problem.code === 'not-found' ? NONE : `refused: ${result.problem.message}`;
}

import { type Random, shuffle } from '../../core/base/random.ts';

/** One kind of attack on a running Windrow. */
export interface Attack {
  readonly name: string;
  /** How much of the time is its own, measured against the shares of the others. */
  readonly share: number;
  /** `folder` is its own and empty. */
  readonly run: (trials: Trials, folder: string) => Promise<void>;
}

/** What came of one kind of attack. */
export interface Tally {
  readonly name: string;
  readonly tried: number;
  /** What went wrong, one text a failed trial. */
  readonly failures: readonly string[];
  /** What could not be tried here, with the reason. */
  readonly skipped: readonly string[];
  readonly notes: readonly string[];
}

/** What is wrong after a trial, in words; empty where it was withstood. */
export type Troubles = readonly string[];

/** One trial to be made. */
interface Form {
  readonly name: string;
  readonly attempt: () => Promise<Troubles>;
}

/** So long one trial may take, in milliseconds: what hangs has failed. */
const PATIENCE = 60_000;

/** Counts the trials of one kind, as long as its time lasts. */
export class Trials {
  readonly random: Random;
  readonly #name: string;
  readonly #endsAt: number;
  readonly #failures: string[] = [];
  readonly #skipped: string[] = [];
  readonly #notes: string[] = [];
  #tried = 0;

  /** `milliseconds`: after so many, no further trial is begun. */
  constructor(name: string, random: Random, milliseconds: number) {
    this.#name = name;
    this.random = random;
    this.#endsAt = performance.now() + milliseconds;
  }

  get tally(): Tally {
    const [name, tried] = [this.#name, this.#tried];
    return { name, tried, failures: this.#failures, skipped: this.#skipped, notes: this.#notes };
  }

  timeIsUp(): boolean {
    return performance.now() >= this.#endsAt;
  }

  /** One trial; one that throws or hangs has failed. Answers whether it was withstood. */
  async try(what: string, attempt: () => Promise<Troubles>): Promise<boolean> {
    this.#tried += 1;
    const troubles = await patiently(attempt()).catch((error: unknown) => [wordsOf(error)]);
    if (troubles.length === 0) return true;
    this.#failures.push(`${what}: ${troubles.slice(0, 4).join('; ')}`);
    return false;
  }

  /** Trials of different makes, in an order by chance; says so where the time did not last for all. */
  async all(forms: readonly Form[]): Promise<void> {
    let tried = 0;
    for (const { name, attempt } of shuffle([...forms], this.random)) {
      if (tried > 0 && this.timeIsUp()) break;
      await this.try(name, attempt);
      tried += 1;
    }
    if (tried < forms.length)
      this.note(`${tried} of ${forms.length} forms, then its time was up: give it more minutes`);
  }

  /** A trial of one make for each item. */
  async each<Item>(items: readonly Item[], name: (item: Item) => string, attempt: (item: Item) => Promise<Troubles>) {
    await this.all(items.map((item) => ({ name: name(item), attempt: async () => await attempt(item) })));
  }

  /** Trials until the time is up, at least one; stops at the third that fails, as each takes long. */
  async again(what: string, attempt: (turn: number) => Promise<Troubles>): Promise<void> {
    let [turn, failed] = [0, 0];
    do {
      turn += 1;
      const now = turn;
      if (!(await this.try(`${what}, turn ${now}`, async () => await attempt(now)))) failed += 1;
    } while (failed < 3 && !this.timeIsUp());
  }

  /** What can't be tried here is told, and counts neither as tried nor as withstood. */
  skip(what: string, why: string): void {
    this.#skipped.push(`${what}: ${why}`);
  }

  note(words: string): void {
    this.#notes.push(words);
  }
}

async function patiently(attempt: Promise<Troubles>): Promise<Troubles> {
  let timer: NodeJS.Timeout | undefined;
  const over = new Promise<Troubles>((resolve) => {
    timer = setTimeout(() => resolve([`it did not end within ${PATIENCE / 1000} s`]), PATIENCE);
  });
  return await Promise.race([attempt, over]).finally(() => clearTimeout(timer));
}

function wordsOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** Makes an attack; one that breaks off counts as one more trial that failed. */
export async function tallyOf(attack: Attack, trials: Trials, folder: string): Promise<Tally> {
  try {
    await attack.run(trials, folder);
  } catch (error) {
    await trials.try('the attack broke off', async () => [wordsOf(error)]);
  }
  return trials.tally;
}

/** 1 when anything failed, when a kind tried nothing and does not say why, and when no kind tried anything. */
export function exitCode(tallies: readonly Tally[]): 0 | 1 {
  const isWell = ({ tried, failures, skipped }: Tally): boolean =>
    failures.length === 0 && (tried > 0 || skipped.length > 0);
  return tallies.every(isWell) && tallies.some(({ tried }) => tried > 0) ? 0 : 1;
}

/** So many failures of a kind are told, with so many letters each. */
const [TOLD, LONG] = [12, 500];

/** The table, with what was noted, skipped and failed below it. */
export function tableText(tallies: readonly Tally[]): string {
  const rows = tallies.map(({ name, tried, failures }) => [name, String(tried), String(failures.length)] as const);
  const wide = Math.max(...rows.map(([name]) => name.length), 'attack'.length);
  const line = ([name, tried, failed]: readonly [string, string, string]): string =>
    `${name.padEnd(wide)} | ${tried.padStart(5)} | ${failed.padStart(6)}`;
  const below = tallies.flatMap(({ name, tried, failures, skipped, notes }) => [
    ...notes.map((words) => `${name}: ${words}.`),
    ...skipped.map((words) => `Skipped in "${name}": ${words}.`),
    ...(tried === 0 && skipped.length === 0 ? [`FAILED: "${name}" tried nothing.`] : []),
    ...failures.slice(0, TOLD).map((words) => `FAILED in "${name}": ${words.replaceAll(/\s+/g, ' ').slice(0, LONG)}`),
    ...(failures.length > TOLD ? [`FAILED in "${name}": and ${failures.length - TOLD} more`] : []),
  ]);
  const total = (count: (tally: Tally) => number): number => tallies.reduce((sum, tally) => sum + count(tally), 0);
  const [tried, failed] = [total((tally) => tally.tried), total((tally) => tally.failures.length)];
  const skipped = total((tally) => tally.skipped.length);
  const head = line(['attack', 'tried', 'failed']);
  return [head, ...rows.map(line), ...below, `${tried} tried, ${failed} failed, ${skipped} skipped`].join('\n');
}

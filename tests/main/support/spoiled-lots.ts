import { expect } from 'vitest';
import { type Random, randomFromSeed } from '../../../core/base/random.ts';
import { expectValue, type Result } from '../../../core/base/result.ts';
import { createDeskService, type DeskService } from '../../../main/desk/service.ts';
import { FOLDER, openOn, optionsOn } from './desks.ts';
import { MemoryDisk } from './memory-disk.ts';
import { spoiled } from './spoil.ts';

/** Files of one kind, and what a person does with them. */
export interface Lot {
  readonly name: string;
  /** How many of 100,000 files are of this kind. */
  readonly share: number;
  /** How many lie in one folder. */
  readonly together: number;
  /** The file's path in the desk's folder. */
  readonly path: (number: number) => string;
  /** A whole file of that kind. */
  readonly whole: (number: number) => string;
  /** Other files that lie beside it. */
  readonly beside?: (number: number) => Readonly<Record<string, string>>;
  readonly look: (desk: DeskService, number: number) => Promise<readonly Result<unknown>[]>;
  /** True for a file that is changed though nobody looked at it before. */
  readonly unseen?: (number: number) => boolean;
  /** Changes what is in the file, as a person would who knows of no damage. */
  readonly change: (desk: DeskService, number: number) => Promise<Result<unknown>>;
  /** True where a look alone may do away with a file that nothing is told of: a log goes into its game, a lock goes. */
  readonly mayGo?: boolean;
  /** True where the desk may refuse to open for a moment. */
  readonly mayRefuse?: boolean;
}

/**
 * Processor time that one folder of spoiled files may take, in milliseconds. A folder takes some 200; a hang never ends,
 * and what grows with the square of a file's length takes minutes.
 */
const LIMIT = 10_000;

/** Spoils `count` files of a lot, folder by folder, and checks each folder; answers how many differed from whole ones. */
export async function spoilLot(lot: Lot, count: number, seed: number): Promise<number> {
  const random = randomFromSeed(seed);
  let tried = 0;
  for (let first = 0; first < count; first += lot.together) {
    tried += await spoilFolder(lot, Math.min(lot.together, count - first), random);
  }
  return tried;
}

async function spoilFolder(lot: Lot, count: number, random: Random): Promise<number> {
  const disk = new MemoryDisk();
  const put = putSpoiled(disk, lot, count, random);
  const before = process.cpuUsage();
  const complaints = new Complaints();
  for (const change of [false, true]) {
    const desk = await openPatiently(disk, lot);
    for (let number = 0; number < count; number += 1) {
      if (!change) complaints.hear(number, await lot.look(desk, number));
      // What was read without a word may be changed: nothing is to be learned from that.
      else if (lot.unseen?.(number) === true || complaints.about(number)) {
        complaints.hear(number, [await lot.change(desk, number)]);
      }
    }
    complaints.note(expectValue(await desk.notices()));
    await desk.close();
    const mayGo = (number: number): boolean => (change || lot.mayGo === true) && !complaints.about(number);
    expectKept(disk, lot, put, mayGo);
  }
  expect(process.cpuUsage(before).user / 1000, `${lot.name}: no hang`).toBeLessThan(LIMIT);
  return put.size;
}

/** Puts spoiled files on the disk; answers their bytes, a letter each, by number, where they differ from whole ones. */
function putSpoiled(disk: MemoryDisk, lot: Lot, count: number, random: Random): ReadonlyMap<number, string> {
  const put = new Map<number, string>();
  for (let number = 0; number < count; number += 1) {
    for (const [path, text] of Object.entries(lot.beside?.(number) ?? {})) disk.put(`${FOLDER}/${path}`, text);
    const whole = Buffer.from(lot.whole(number));
    const bytes = spoiled(whole, random);
    disk.put(`${FOLDER}/${lot.path(number)}`, bytes);
    if (!whole.equals(bytes)) put.set(number, Buffer.from(bytes).toString('latin1'));
  }
  return put;
}

async function openPatiently(disk: MemoryDisk, { mayRefuse }: Lot): Promise<DeskService> {
  const opened = await createDeskService(optionsOn(disk));
  if (opened.ok) return opened.value;
  expectWords(opened.problem.message);
  expect(mayRefuse, opened.problem.message).toBe(true);
  disk.now += 100_000;
  return await openOn(disk);
}

/** What was told of the files: answers that refused, and notices, which name a file by its number. */
class Complaints {
  readonly #numbers = new Set<number>();

  hear(number: number, results: readonly Result<unknown>[]): void {
    for (const result of results) {
      if (result.ok) continue;
      expectWords(result.problem.message);
      this.#numbers.add(number);
    }
  }

  note(notices: readonly string[]): void {
    for (const words of notices) {
      expectWords(words);
      for (const [, number] of words.matchAll(/\b[gcs]-(\d+)\b/g)) this.#numbers.add(Number(number));
      if (/settings|history/.test(words)) this.#numbers.add(0);
    }
  }

  about(number: number): boolean {
    return this.#numbers.has(number);
  }
}

/** Plain sentences, nothing of our insides. */
function expectWords(words: string): void {
  expect(words).toMatch(/^[A-Z"][^]*[.]$/);
  expect(words.length).toBeLessThan(600);
  expect(words).not.toMatch(/undefined|\[object|TypeError|SyntaxError|JSON|\bat position\b/);
}

/** Every spoiled file's bytes are still somewhere, as they were. */
function expectKept(
  disk: MemoryDisk,
  lot: Lot,
  put: ReadonlyMap<number, string>,
  mayGo: (number: number) => boolean,
): void {
  const there = new Set(disk.bytes());
  for (const [number, bytes] of put) {
    if (there.has(bytes) || mayGo(number)) continue;
    expect.fail(`${lot.name}: ${lot.path(number)} was written over: ${JSON.stringify(bytes.slice(0, 3000))}`);
  }
}

import { randomInt } from 'node:crypto';
import { once } from 'node:events';
import { createReadStream } from 'node:fs';
import type { Readable, Writable } from 'node:stream';
import { printable } from '../../core/base/printable.ts';
import { failure, type Result, success } from '../../core/base/result.ts';
import { errorCode } from '../files/files.ts';
import { type Answers, type CommandWorld, NO_FILE } from './answer.ts';
import { runCommand } from './run.ts';

/** The streams of a program. */
export interface Streams {
  readonly input: Readable;
  readonly output: Writable;
  readonly errors: Writable;
}

const EXIT_TROUBLE = 2;
/** Seeds that nobody chose stay short enough to be read aloud. */
const SEEDS = 1_000_000_000;
/** Bytes of the longest text that is read: what comes from a device may have no end. */
const LARGEST_TEXT = 50_000_000;

/** Runs a command line, without the program's own name, to its end; the exit code, 0 or 2. */
export async function runCommandLine(
  args: readonly string[],
  { input, output, errors }: Streams,
): Promise<0 | typeof EXIT_TROUBLE> {
  const world: CommandWorld = {
    readFile: readNamedFile,
    readInput: async () => await textOf(input, 'What came in'),
    anySeed: () => randomInt(SEEDS),
    seconds: () => performance.now() / 1000,
  };
  const complain = (sentence: string): void => void errors.write(oneLine(sentence));
  const outcome = await runCommand(args, world);
  if (!outcome.ok) {
    complain(outcome.problem.message);
    return EXIT_TROUBLE;
  }
  await print(outcome.value, output);
  const { remark, trouble } = outcome.value;
  if (remark !== undefined) complain(remark);
  return trouble === true ? EXIT_TROUBLE : 0;
}

async function readNamedFile(path: string): Promise<Result<string>> {
  try {
    return await textOf(createReadStream(path), path);
  } catch (error) {
    const words: Readonly<Record<string, string>> = {
      ENOENT: 'there is no such file; check the name',
      EACCES: 'you may not read this file; check who may open it',
      EISDIR: 'this is a folder; name a file in it',
    };
    return failure(
      errorCode(error) === 'ENOENT' ? NO_FILE : 'unreadable',
      `${path}: ${words[errorCode(error)] ?? 'this file could not be read'}.`,
    );
  }
}

async function textOf(stream: Readable, name: string): Promise<Result<string>> {
  const parts: Buffer[] = [];
  let bytes = 0;
  for await (const part of stream as AsyncIterable<Buffer>) {
    bytes += part.length;
    if (bytes > LARGEST_TEXT) return failure('too-large', `${name} is far too large to be racks, a card or a game.`);
    parts.push(part);
  }
  return success(Buffer.concat(parts).toString('utf8'));
}

async function print({ answers, json }: Answers, output: Writable): Promise<void> {
  let first = true;
  for (const { document, text } of answers) {
    const written = json ? `${JSON.stringify(document)}\n` : `${first ? '' : '\n'}${printable(text())}\n`;
    first = false;
    if (!output.write(written)) await once(output, 'drain');
  }
}

/** One line, whatever the sentence holds. */
function oneLine(sentence: string): string {
  return `${printable(sentence.replaceAll(/\s+/g, ' ')).trim()}\n`;
}

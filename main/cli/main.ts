import { randomInt } from 'node:crypto';
import { once } from 'node:events';
import { createReadStream } from 'node:fs';
import type { Readable } from 'node:stream';
import { printable } from '../../core/base/printable.ts';
import { failure, type Result, success } from '../../core/base/result.ts';
import { errorCode } from '../files/files.ts';
import { type Answers, type CommandWorld, NO_FILE } from './answer.ts';
import { runCommand } from './run.ts';

const EXIT_TROUBLE = 2;
/** Seeds that nobody chose stay short enough to be read aloud. */
const SEEDS = 1_000_000_000;
/** Bytes of the longest text that is read: what comes from a device may have no end. */
const LARGEST_TEXT = 50_000_000;

const world: CommandWorld = {
  readFile: readNamedFile,
  readInput: async () => await textOf(process.stdin, 'What came in'),
  anySeed: () => randomInt(SEEDS),
  seconds: () => performance.now() / 1000,
};

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

async function print({ answers, json }: Answers): Promise<void> {
  let first = true;
  for (const { document, text } of answers) {
    const written = json ? `${JSON.stringify(document)}\n` : `${first ? '' : '\n'}${printable(text())}\n`;
    first = false;
    if (!process.stdout.write(written)) await once(process.stdout, 'drain');
  }
}

/** One line, whatever the sentence holds. */
function complain(sentence: string): void {
  process.stderr.write(`${printable(sentence.replaceAll(/\s+/g, ' ')).trim()}\n`);
}

// A reader that has seen enough, such as `head`, closes the pipe: that is no error.
process.stdout.on('error', (error) => process.exit(errorCode(error) === 'EPIPE' ? 0 : 1));

const outcome = await runCommand(process.argv.slice(2), world);
if (outcome.ok) {
  await print(outcome.value);
  if (outcome.value.remark !== undefined) complain(outcome.value.remark);
  if (outcome.value.trouble === true) process.exitCode = EXIT_TROUBLE;
} else {
  complain(outcome.problem.message);
  process.exitCode = EXIT_TROUBLE;
}

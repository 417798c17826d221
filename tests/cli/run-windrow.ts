import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { Readable, Writable } from 'node:stream';
import { freshBuild } from '../../main/build/build.mjs';
import { runCommandLine } from '../../main/cli/command-line.ts';

export interface Run {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs a command line as the program does, but in this process, which has learned to count fast already. */
export async function windrow(args: readonly string[], input = ''): Promise<Run> {
  const [output, errors] = [new Written(), new Written()];
  const code = await runCommandLine(args, { input: Readable.from([Buffer.from(input)]), output, errors });
  return { code, out: output.text, err: errors.text };
}

class Written extends Writable {
  text = '';
  override _write(part: Buffer, _encoding: BufferEncoding, done: () => void): void {
    this.text += part.toString('utf8');
    done();
  }
}

let built: Promise<string> | undefined;

/** Runs the built commands as a person would, in the project's folder, in a process of their own. */
export async function windrowAlone(args: readonly string[], input = ''): Promise<Run> {
  built ??= freshBuild(['cli']);
  const script = join(await built, 'cli/main.js');
  return await new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [script, ...args], { cwd: join(import.meta.dirname, '../..') });
    let out = '';
    let err = '';
    child.stdout.setEncoding('utf8').on('data', (part: string) => (out += part));
    child.stderr.setEncoding('utf8').on('data', (part: string) => (err += part));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out, err }));
    // A command that refuses its arguments does not wait for the input.
    child.stdin.on('error', () => undefined);
    child.stdin.end(input);
  });
}

/** One clear sentence on standard error, exit code 2, nothing on standard output. */
export function refusal(sentence: RegExp): object {
  return {
    code: 2,
    out: '',
    err: expectOneLine(sentence),
  };
}

function expectOneLine(sentence: RegExp): object {
  return {
    asymmetricMatch: (text: unknown) => typeof text === 'string' && /^[^\n]+\n$/.test(text) && sentence.test(text),
    toString: () => `one line like ${sentence}`,
    $$typeof: Symbol.for('jest.asymmetricMatcher'),
  };
}

import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { freshBuild } from '../../main/build/build.mjs';

export interface Run {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

let built: Promise<string> | undefined;

/** Runs the built commands as a person would, in the project's folder. */
export async function windrow(args: readonly string[], input = ''): Promise<Run> {
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

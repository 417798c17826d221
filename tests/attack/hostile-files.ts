import { spawn } from 'node:child_process';
import { mkdir, truncate, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { HOSTILE_CARDS, HOSTILE_GAMES, type HostileFile } from './hostile-texts.ts';
import { wordTroubles } from './sentences.ts';
import type { Attack, Troubles } from './table.ts';

const CLI = resolve('dist/cli/main.js');
const RACK = 'FF N 0 13b 4578c 22d1d';
/** Milliseconds of the processor and megabytes that a command may take for a hostile file. */
const [TIME, MEMORY] = [10_000, 400];
/** Tells on the last line of standard error what the process took. */
const TELL =
  'data:text/javascript,process.on("exit",()=>{const u=process.resourceUsage();console.error("%5Cn"+u.maxRSS+" "+u.userCPUTime)})';

interface Run {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
  readonly megabytes: number;
  readonly milliseconds: number;
}

/** A command on a file of somebody hostile. */
interface Form {
  readonly name: string;
  readonly args: readonly string[];
  readonly isReadable: boolean;
}

/** Hostile files by the commands: one sentence and exit code 2, or a clean answer; little time and memory. */
export const HOSTILE_FILES: Attack = {
  name: 'hostile files by the commands',
  share: 4,
  run: async (trials, base) => {
    const forms = [...(await written(base)), ...(await oddPlaces(base))];
    await trials.each(
      forms,
      ({ name, args }) => `${args[0]}: ${name}`,
      async ({ args, isReadable }) => runTroubles(await run(args), isReadable),
    );
  },
};

async function written(base: string): Promise<Form[]> {
  const forms: Form[] = [];
  const put = async (file: HostileFile, ending: string): Promise<string> => {
    const path = join(base, `${forms.length}${ending}`);
    await writeFile(path, file.bytes);
    return path;
  };
  for (const file of HOSTILE_CARDS) {
    const path = await put(file, '.card.json');
    for (const args of [
      ['card', path],
      ['read', '--rack', RACK, '--card', path],
    ])
      forms.push({ name: file.name, args, isReadable: file.isReadable === true });
  }
  for (const file of HOSTILE_GAMES) {
    const path = await put(file, file.ending ?? '.json');
    forms.push({ name: file.name, args: ['review', path], isReadable: file.isReadable === true });
  }
  return forms;
}

/** What is no file of ours at all. */
async function oddPlaces(base: string): Promise<Form[]> {
  const [folder, large] = [join(base, 'a folder'), join(base, 'large.json')];
  await mkdir(folder);
  await writeFile(large, '{');
  await truncate(large, 60_000_000);
  const below = join(large, 'below.json');
  const paths = {
    'a folder': folder,
    'no such file': join(base, 'none'),
    '60 MB of zeros': large,
    'below a file': below,
  };
  return Object.entries(paths).flatMap(([name, path]) =>
    ['card', 'review'].map((verb) => ({ name, args: [verb, path], isReadable: false })),
  );
}

function runTroubles({ code, out, err, megabytes, milliseconds }: Run, isReadable: boolean): Troubles {
  const troubles: string[] = [];
  if (milliseconds > TIME) troubles.push(`it took ${milliseconds} ms`);
  if (megabytes > MEMORY) troubles.push(`it held ${megabytes} MB`);
  if (/(?!\n)[\p{Cc}\p{Bidi_Control}]/u.test(out + err)) troubles.push('letters that change a terminal');
  if (code !== 2 && !(isReadable && code === 0)) return [...troubles, `exit code ${code}: ${err.slice(0, 200)}`];
  if (code === 0) return troubles;
  if (!isReadable && out !== '') troubles.push(`it printed ${out.slice(0, 100)}`);
  return /^[^\n]+\n$/.test(err)
    ? [...troubles, ...wordTroubles(err)]
    : [...troubles, `no one line: ${err.slice(0, 200)}`];
}

async function run(args: readonly string[]): Promise<Run> {
  return await new Promise((done, reject) => {
    const child = spawn(process.execPath, ['--max-semi-space-size=8', '--import', TELL, CLI, ...args], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    // One that hangs is ended, and told by its missing exit code.
    const timer = setTimeout(() => child.kill('SIGKILL'), 4 * TIME);
    let [out, err] = ['', ''];
    child.stdout.setEncoding('utf8').on('data', (part: string) => (out += part));
    child.stderr.setEncoding('utf8').on('data', (part: string) => (err += part));
    child.on('error', reject);
    child.on('close', (code) => {
      clearTimeout(timer);
      const [, said = err, kilobytes, microseconds] = /^([^]*?)\n(\d+) (\d+)\n$/.exec(err) ?? [];
      const megabytes = Math.round(Number(kilobytes ?? 0) / 1024);
      done({ code, out, err: said, megabytes, milliseconds: Math.round(Number(microseconds ?? 0) / 1000) });
    });
  });
}

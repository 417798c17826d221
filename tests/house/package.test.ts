import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { FuseV1Options, FuseVersion, getCurrentFuseWire } from '@electron/fuses';
import { afterAll, beforeAll, expect, test } from 'vitest';

/**
 * Packs the real app with a stand-in for Electron's program: a file that holds the marker before
 * the fuses, nine fuses all on (the ninth is one that we leave as it comes). Real installers need
 * the real program and each system's own tools; that is tried by hand at a release.
 */
const house = resolve(import.meta.dirname, '../..');
const FUSE_MARKER = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';
/** A fuse is one letter in the program: 1 is on, 0 is off. */
const FUSE_ON = '1'.charCodeAt(0);
let folder = '';
let program = '';

interface Entry {
  readonly files?: Readonly<Record<string, Entry>>;
  readonly offset?: string;
  readonly size?: number;
}

/** The archive: a header of lengths, a tree of names as JSON, then the files' bytes. */
function openArchive(): { names: readonly string[]; read: (name: string) => string } {
  const bytes = readFileSync(join(folder, 'out/linux-unpacked/resources/app.asar'));
  const start = 8 + bytes.readUInt32LE(4);
  const tree = JSON.parse(bytes.subarray(16, 16 + bytes.readUInt32LE(12)).toString('utf8')) as Entry;
  const files = new Map<string, Entry>();
  const walk = (path: string, entry: Entry): void => {
    if (entry.files === undefined) files.set(path.slice(1), entry);
    for (const [name, child] of Object.entries(entry.files ?? {})) walk(`${path}/${name}`, child);
  };
  walk('', tree);
  const read = (name: string): string => {
    const { offset = '0', size = 0 } = files.get(name) ?? {};
    return bytes.subarray(start + Number(offset), start + Number(offset) + size).toString('utf8');
  };
  return { names: [...files.keys()], read };
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'windrow-package-'));
  const stand = join(folder, 'stand-in');
  const script = `
    import { pack } from ${JSON.stringify(join(house, 'main/package/package.mjs'))};
    await pack({ system: 'linux', folderOnly: true, output: ${JSON.stringify(join(folder, 'out'))}, electronDist: ${JSON.stringify(stand)} });`;
  mkdirSync(stand);
  writeFileSync(
    join(stand, 'electron'),
    Buffer.concat([Buffer.from(`program ${FUSE_MARKER}`), Buffer.from([1, 9]), Buffer.from('111111111 end')]),
  );
  chmodSync(join(stand, 'electron'), 0o755);
  const run = spawnSync(process.execPath, ['--input-type=module', '--eval', script], { cwd: house, encoding: 'utf8' });
  expect(run.stderr + run.stdout, 'the packer ended well').toSatisfy(() => run.status === 0);
  program = join(folder, 'out/linux-unpacked/windrow');
}, 120_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('security item 19: the eight fuses read back as they are set', async () => {
  const wire = await getCurrentFuseWire(program);
  expect(wire.version).toBe(FuseVersion.V1);
  const states = Object.fromEntries(
    Object.values(FuseV1Options)
      .filter((option) => typeof option === 'number')
      .map((option) => [FuseV1Options[option], Number(wire[option]) === FUSE_ON]),
  );
  expect(states).toEqual({
    RunAsNode: false,
    EnableCookieEncryption: true,
    EnableNodeOptionsEnvironmentVariable: false,
    EnableNodeCliInspectArguments: false,
    EnableEmbeddedAsarIntegrityValidation: true,
    OnlyLoadAppFromAsar: true,
    LoadBrowserProcessSpecificV8Snapshot: false,
    GrantFileProtocolExtraPrivileges: false,
  });
});

test('the archive holds the entry, the preload and the window, and nothing else', () => {
  const { names } = openArchive();
  expect(names).toEqual(
    expect.arrayContaining(['main/entry.js', 'main/preload.cjs', 'package.json', 'renderer/index.html']),
  );
  const others = names.filter((name) => !/^(main\/(entry\.js|preload\.cjs)|package\.json|renderer\/.+)$/.test(name));
  expect(others).toEqual([]);
});

test('the packed app names its entry, needs no library from outside, and opens no port (L1)', () => {
  const { read } = openArchive();
  const about = JSON.parse(read('package.json')) as Record<string, unknown>;
  expect(about).toMatchObject({ name: 'windrow', type: 'module', main: 'main/entry.js' });
  expect(about).not.toHaveProperty('dependencies');
  const imports = [...read('main/entry.js').matchAll(/^import .*?["']([^"']+)["'];?$/gm)].map(
    (match) => match[1] ?? '',
  );
  expect(
    imports.filter((name) => name !== 'electron' && !name.startsWith('node:')).filter((name) => !isNodes(name)),
  ).toEqual([]);
  expect(read('main/entry.js')).not.toMatch(/node:http"|from "http"|from "net"|node:net"/);
});

/** Libraries written long ago import Node's own modules without the prefix. */
function isNodes(name: string): boolean {
  return ['fs', 'path', 'os', 'crypto', 'util', 'assert', 'events', 'process', 'url'].includes(
    name.split('/')[0] ?? '',
  );
}

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { FuseV1Options, FuseVersion, getCurrentFuseWire } from '@electron/fuses';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { FORMAT_PAGES } from '../../main/format-pages.ts';
import { makeStandIn, PACKED, type System } from './stand-in.ts';

/**
 * Packs the real app for each system with a stand-in for Electron's program. Real installers need
 * the real program and each system's own tools; that is tried by hand at a release.
 */
const house = resolve(import.meta.dirname, '../..');
/** A fuse is one letter in the program: 1 is on, 0 is off. */
const FUSE_ON = '1'.charCodeAt(0);

interface Entry {
  readonly files?: Readonly<Record<string, Entry>>;
  readonly offset?: string;
  readonly size?: number;
}

interface Archive {
  readonly names: readonly string[];
  readonly read: (name: string) => string;
}

/** The archive: a header of lengths, a tree of names as JSON, then the files' bytes. */
function openArchive(path: string): Archive {
  const bytes = readFileSync(path);
  const start = 8 + bytes.readUInt32LE(4);
  const tree = JSON.parse(bytes.subarray(16, 16 + bytes.readUInt32LE(12)).toString('utf8')) as Entry;
  const files = new Map<string, Entry>();
  const walk = (at: string, entry: Entry): void => {
    if (entry.files === undefined) files.set(at.slice(1), entry);
    for (const [name, child] of Object.entries(entry.files ?? {})) walk(`${at}/${name}`, child);
  };
  walk('', tree);
  const read = (name: string): string => {
    const { offset = '0', size = 0 } = files.get(name) ?? {};
    return bytes.subarray(start + Number(offset), start + Number(offset) + size).toString('utf8');
  };
  return { names: [...files.keys()], read };
}

describe.each<System>(['linux', 'windows', 'mac'])('the package for %s', (system) => {
  let folder = '';
  let archive: Archive = { names: [], read: () => '' };

  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'windrow-package-'));
    const stand = join(folder, 'stand-in');
    makeStandIn(system, stand);
    const wish = { system, folderOnly: true, bare: true, output: join(folder, 'out'), electronDist: stand };
    const script = `
      import { pack } from ${JSON.stringify(join(house, 'main/package/package.mjs'))};
      await pack(${JSON.stringify(wish)});`;
    const run = spawnSync(process.execPath, ['--input-type=module', '--eval', script], {
      cwd: house,
      encoding: 'utf8',
    });
    expect(run.stderr + run.stdout, 'the packer ended well').toSatisfy(() => run.status === 0);
    archive = openArchive(join(folder, 'out', PACKED[system].archive));
  }, 240_000);

  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  test('security item 19: the eight fuses read back as they are set; without cookies no keychain is asked for', async () => {
    const wire = await getCurrentFuseWire(join(folder, 'out', PACKED[system].program));
    expect(wire.version).toBe(FuseVersion.V1);
    const states = Object.fromEntries(
      Object.values(FuseV1Options)
        .filter((option) => typeof option === 'number')
        .map((option) => [FuseV1Options[option], Number(wire[option]) === FUSE_ON]),
    );
    expect(states).toEqual({
      RunAsNode: false,
      EnableCookieEncryption: false,
      EnableNodeOptionsEnvironmentVariable: false,
      EnableNodeCliInspectArguments: false,
      EnableEmbeddedAsarIntegrityValidation: true,
      OnlyLoadAppFromAsar: true,
      LoadBrowserProcessSpecificV8Snapshot: false,
      GrantFileProtocolExtraPrivileges: false,
    });
  });

  test('the archive holds the entry, the preload and the window, and nothing else', () => {
    const { names } = archive;
    expect(names).toEqual(
      expect.arrayContaining(['main/entry.js', 'main/preload.cjs', 'package.json', 'renderer/index.html']),
    );
    const others = names.filter((name) => !/^(main\/(entry\.js|preload\.cjs)|package\.json|renderer\/.+)$/.test(name));
    expect(others).toEqual([]);
  });

  test('the notices of all that is in it are beside the archive and in the window, with our own licence', () => {
    const beside = join(folder, 'out', PACKED[system].archive, '..', 'licences.txt');
    const text = readFileSync(beside, 'utf8');
    expect(archive.read('renderer/licences.txt')).toBe(text);
    expect(text).toContain(readFileSync(join(house, 'LICENSE'), 'utf8').trim());
    const { dependencies } = JSON.parse(readFileSync(join(house, 'package.json'), 'utf8'));
    for (const name of [...Object.keys(dependencies), 'electron']) expect(text).toContain(`\n\n${name} `);
  });

  test('CR-L1: the packed app names its entry, needs no library from outside, and opens no port', () => {
    const { read } = archive;
    const about = JSON.parse(read('package.json')) as Record<string, unknown>;
    expect(about).toMatchObject({ name: 'windrow', productName: 'Windrow', type: 'module', main: 'main/entry.js' });
    expect(about).not.toHaveProperty('dependencies');
    const imports = [...read('main/entry.js').matchAll(/^import .*?["']([^"']+)["'];?$/gm)].map(
      (match) => match[1] ?? '',
    );
    expect(imports.length).toBeGreaterThan(5);
    expect(
      imports.filter((name) => name !== 'electron' && !name.startsWith('node:')).filter((name) => !isNodes(name)),
    ).toEqual([]);
    const calls = /(?:from|import\(|require\()\s*["'](?:node:)?(?:http|https|http2|net|tls|dgram)["']|\.listen\(/.exec(
      read('main/entry.js'),
    );
    expect(calls?.[0]).toBeUndefined();
  });

  test('CR-P7: no polyfill is in it, and the pages of the file forms are (CR-V1)', () => {
    const { names, read } = archive;
    const scripts = names.filter((name) => name.endsWith('.js'));
    expect(scripts.length).toBeGreaterThan(5);
    expect(
      scripts.filter((name) => /core-js|regeneratorRuntime|relList\.supports|whatwg-fetch/.test(read(name))),
    ).toEqual([]);
    for (const page of FORMAT_PAGES) expect(read('main/entry.js')).toContain(page.split('\n')[0]);
  });
});

test('CR-E3: the packed app has no place to ask for updates, and no library that updates, reports or asks a network', () => {
  const config = readFileSync(join(house, 'main/package/config.mjs'), 'utf8');
  expect(config).toContain('publish: null');
  const { dependencies, devDependencies } = JSON.parse(readFileSync(join(house, 'package.json'), 'utf8'));
  const names = Object.keys({ ...dependencies, ...devDependencies });
  expect(names.length).toBeGreaterThan(20);
  expect(names.filter((name) => /updater|telemetry|analytics|sentry|crash|axios|got$|node-fetch/.test(name))).toEqual(
    [],
  );
});

/** Libraries written long ago import Node's own modules without the prefix. */
function isNodes(name: string): boolean {
  return ['fs', 'path', 'os', 'crypto', 'util', 'assert', 'events', 'process', 'url'].includes(
    name.split('/')[0] ?? '',
  );
}

import { createRequire } from 'node:module';
import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/**
 * Stand-ins for Electron's program on each system: files that can't run, but hold what packing
 * looks for and writes into: the marker before the fuses, nine fuses all on (the ninth is one that
 * we leave as it comes), a Windows program's headers, a Mac program's lists of properties.
 */
const FUSE_MARKER = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';
const PROGRAM = Buffer.concat([
  Buffer.from(`program ${FUSE_MARKER}`),
  Buffer.from([1, 9]),
  Buffer.from('111111111 end'),
]);

export type System = 'linux' | 'mac' | 'windows';

/** Makes the stand-in of a system in a folder. */
export function makeStandIn(system: System, folder: string): void {
  if (system === 'linux') write(join(folder, 'electron'), PROGRAM);
  else if (system === 'windows') write(join(folder, 'electron.exe'), windowsProgram());
  else makeMacApp(join(folder, 'Electron.app/Contents'));
}

/** Where the packed program lies, and the file in it that holds the fuses, below the folder of packages. */
export const PACKED: Readonly<Record<System, { readonly program: string; readonly archive: string }>> = {
  linux: { program: 'linux-unpacked/windrow', archive: 'linux-unpacked/resources/app.asar' },
  windows: { program: 'win-unpacked/Windrow.exe', archive: 'win-unpacked/resources/app.asar' },
  mac: { program: 'mac/Windrow.app', archive: 'mac/Windrow.app/Contents/Resources/app.asar' },
};

function write(path: string, bytes: Uint8Array | string): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, bytes, { mode: 0o755 });
}

/** An empty program of Windows with a version, made by the packer's own library, and ours behind it. */
function windowsProgram(): Buffer {
  const library = createRequire(createRequire(import.meta.url).resolve('electron-builder'))('resedit');
  const executable = library.NtExecutable.createEmpty(false, false);
  const resources = library.NtExecutableResource.from(executable);
  const version = library.Resource.VersionInfo.createEmpty();
  version.setStringValues({ lang: 1033, codepage: 1200 }, { ProductName: 'Electron' });
  version.outputToResourceEntries(resources.entries);
  resources.outputResource(executable);
  executable.setExtraData(PROGRAM);
  return Buffer.from(executable.generate());
}

function makeMacApp(contents: string): void {
  write(join(contents, 'MacOS/Electron'), 'program');
  write(join(contents, 'Info.plist'), properties('Electron'));
  const framework = join(contents, 'Frameworks/Electron Framework.framework');
  write(join(framework, 'Versions/A/Electron Framework'), PROGRAM);
  symlinkSync('A', join(framework, 'Versions/Current'));
  symlinkSync('Versions/Current/Electron Framework', join(framework, 'Electron Framework'));
  for (const kind of ['', ' (GPU)', ' (Plugin)', ' (Renderer)']) {
    const name = `Electron Helper${kind}`;
    write(join(contents, `Frameworks/${name}.app/Contents/MacOS/${name}`), 'program');
    write(join(contents, `Frameworks/${name}.app/Contents/Info.plist`), properties(name));
  }
}

function properties(name: string): string {
  const fields = ['CFBundleName', 'CFBundleExecutable', 'CFBundleIdentifier'];
  const entries = fields.map((field) => `<key>${field}</key><string>${name}</string>`).join('');
  return `<?xml version="1.0" encoding="UTF-8"?><plist version="1.0"><dict>${entries}</dict></plist>`;
}

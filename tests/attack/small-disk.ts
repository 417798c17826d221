import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';

const mounted = new Set<string>();
process.on('exit', () => {
  for (const place of mounted) spawnSync('umount', ['-l', place]);
});

/** Empty where small disks in memory can be had, else why not. */
export function canMount(base: string): string {
  if (process.platform !== 'linux' || process.getuid?.() !== 0) return 'it takes root on Linux to mount a small disk';
  const place = join(base, 'try');
  mkdirSync(place);
  if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=64k', 'tmpfs', place]).status !== 0)
    return 'this system lets nobody mount a disk';
  spawnSync('umount', [place]);
  return '';
}

/** A file system of its own in memory, of a size such as `2m`. */
export function mountDisk(place: string, size: string): void {
  done(spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${size}`, 'tmpfs', place], { encoding: 'utf8' }));
  mounted.add(place);
}

export function setReadOnly(place: string, isReadOnly: boolean): void {
  done(spawnSync('mount', ['-o', `remount,${isReadOnly ? 'ro' : 'rw'}`, place], { encoding: 'utf8' }));
}

export function unmount(place: string): void {
  done(spawnSync('umount', [place], { encoding: 'utf8' }));
  mounted.delete(place);
}

function done({ status, stderr }: { status: number | null; stderr: string }): void {
  if (status !== 0) throw new Error(`the disk could not be had: ${stderr.trim()}`);
}

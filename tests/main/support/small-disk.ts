import { spawnSync } from 'node:child_process';

/** Says why this system gives nobody a small disk of their own in memory; empty where it does. */
export function whyNoDisk(): string {
  if (process.platform !== 'linux' || process.getuid?.() !== 0) return 'it takes root on Linux to mount a small disk';
  const place = spawnSync('mktemp', ['-d'], { encoding: 'utf8' }).stdout.trim();
  const mounted = mount(place, '64k');
  if (mounted) unmount(place);
  spawnSync('rmdir', [place]);
  return mounted ? '' : 'this system lets nobody mount a disk';
}

/** Mounts a file system in memory, so large; answers whether it could. */
export function mount(place: string, size: string): boolean {
  return spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${size}`, 'tmpfs', place]).status === 0;
}

/** Lets a mounted disk be written (`rw`) or only read (`ro`); answers whether it could. */
export function remount(place: string, how: 'ro' | 'rw'): boolean {
  return spawnSync('mount', ['-o', `remount,${how}`, place]).status === 0;
}

export function unmount(place: string): void {
  spawnSync('umount', [place]);
}

/** Writes until there is no room for another byte. */
export function fill(path: string): void {
  spawnSync('dd', ['if=/dev/zero', `of=${path}`, 'bs=1024'], { stdio: 'ignore' });
}

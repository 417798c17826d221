import { fileError, type Watch } from './memory-disk.ts';

/** Errors of the system, and writes that take a part only: told, and with an error after it. */
export const FAULTS = ['ENOSPC', 'EIO', 'EACCES', 'EPERM', 'EBUSY', 'short write', 'half a write'] as const;
export type Fault = (typeof FAULTS)[number];

/** A disk's watch that lets one call fail, the one with number `at`; `failed` tells whether it came so far. */
export function faultAt(at: number, fault: Fault): { watch: Watch; failed: () => boolean } {
  let count = 0;
  let failed = false;
  const watch: Watch = (call, path) => {
    count += 1;
    if (count - 1 !== at) return undefined;
    failed = true;
    if (fault === 'short write') return call === 'write' ? 'lie' : undefined;
    if (fault === 'half a write') return call === 'write' ? 'half' : undefined;
    throw fileError(fault, path);
  };
  return { watch, failed: () => failed };
}

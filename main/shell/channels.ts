import type { DeskCall } from '../desk/calls.ts';

/** The channel of a desk call between preload and handlers. */
export function channelOf(call: DeskCall): string {
  return `desk:${call}`;
}

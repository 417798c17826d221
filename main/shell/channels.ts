import type { DeskCall } from '../desk/calls.ts';

/** The channel of a desk call between preload and handlers. */
export function channelOf(call: DeskCall): string {
  return `desk:${call}`;
}

/** Tells the window that files were taken in beside its back; also the name of the event that its page gets. */
export const BROUGHT_IN = 'windrow-brought-in';

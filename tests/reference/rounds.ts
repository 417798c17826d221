/** Whether tests run in full; while sources are changed to see whether tests notice, a tenth must do (`npm run mutate`). */
export const IN_FULL = process.env['WINDROW_MUTATE'] === undefined;

/** How often to repeat what is repeated `full` times in a full run. */
export function rounds(full: number): number {
  return IN_FULL ? full : Math.ceil(full / 10);
}

/** The longest stretch of work, in milliseconds, before the window draws and hears again. */
const STRETCH = 12;

/** Goes through the steps of a long work, piece by piece; a short one is done when this returns. Stops when the signal says so. */
export async function inPieces(steps: Iterator<unknown, unknown>, signal: AbortSignal): Promise<void> {
  let began = performance.now();
  while (!signal.aborted && steps.next().done !== true) {
    if (performance.now() - began < STRETCH) continue;
    await new Promise((resume) => setTimeout(resume));
    began = performance.now();
  }
}

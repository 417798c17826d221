/**
 * Which measures have become slower than at the baseline (CR-P9). What both sides do is timed in pairs, one
 * right after the other, on the same inputs and in the same process, so that a busy machine slows both.
 *
 * @typedef {{ name: string, candidate: () => unknown }} Work
 * @typedef {{ name: string, ratios: number[], gone?: boolean }} Paired  this tree's time by the baseline's, of each pair; none of one that is gone
 * @typedef {{ name: string, times: number, slower: boolean, gone?: boolean }} Change
 */

/** A tenth slower than the baseline is a regression. */
const MOST_LOSS = 0.1;

/**
 * One process's pairs of a measure. Each side goes first in every other pair; both are called equally
 * often, so that they meet the same inputs in the same order.
 * @param {Work} before
 * @param {Work} now
 * @param {{ pairs: number, roundMs: number, clock: () => number }} effort milliseconds
 * @returns {Promise<Paired>}
 */
export async function paired(before, now, { pairs, roundMs, clock }) {
  const once = Math.max(await timeOf(before, 1, clock), await timeOf(now, 1, clock));
  const calls = Math.max(1, Math.ceil(roundMs / Math.max(once, 1e-3)));
  /** @type {number[]} */
  const ratios = [];
  for (let pair = 0; pair < pairs; pair += 1) {
    const nowFirst = pair % 2 === 1 ? await timeOf(now, calls, clock) : undefined;
    const then = await timeOf(before, calls, clock);
    ratios.push((nowFirst ?? (await timeOf(now, calls, clock))) / then);
  }
  return { name: now.name, ratios };
}

/** @param {Work} work @param {number} calls @param {() => number} clock */
async function timeOf({ candidate }, calls, clock) {
  const start = clock();
  for (let call = 0; call < calls; call += 1) {
    const answer = candidate();
    // Only a promise is awaited: an await costs more than some of the work that is measured.
    if (answer instanceof Promise) await answer;
  }
  return clock() - start;
}

/**
 * Slower is a measure that lies more than a tenth over the baseline in the median of every process: one
 * disturbed process is no regression. One that the baseline has and this tree has not is gone, which is as bad.
 * @param {readonly (readonly Paired[])[]} turns what each process found
 * @returns {Change[]}
 */
export function changes(turns) {
  return (turns[0] ?? []).map(({ name, gone }) => {
    if (gone === true) return { name, times: Number.NaN, slower: true, gone };
    const each = turns.map((turn) => turn.find((found) => found.name === name)?.ratios ?? []);
    const slower = each.every((ratios) => median(ratios) > 1 + MOST_LOSS);
    return { name, times: median(each.flat()), slower };
  });
}

/** Not a number for no values, and so never above a limit. @param {readonly number[]} values */
function median(values) {
  const sorted = values.toSorted((one, other) => one - other);
  return ((sorted[(sorted.length - 1) >> 1] ?? Number.NaN) + (sorted[sorted.length >> 1] ?? Number.NaN)) / 2;
}

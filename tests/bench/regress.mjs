/**
 * Which measures have become slower than at the baseline (P9). Both ran in turn in the same job, on the
 * same machine, so that only their ratios against the plain reference are compared.
 *
 * @typedef {{ name: string, ratio: number }} Ratio
 * @typedef {{ name: string, before: number, now: number, slower: boolean }} Change
 */

/** A tenth slower than the baseline is a regression. */
export const MOST_LOSS = 0.1;

/**
 * Slower is a measure whose median over the turns lies more than a tenth below the baseline's, and
 * whose best turn does so too: one disturbed turn is no regression. Measures of one side only are left out.
 * @param {readonly (readonly Ratio[])[]} baseline the figures of each turn
 * @param {readonly (readonly Ratio[])[]} current
 * @returns {Change[]}
 */
export function changes(baseline, current) {
  const names = (current[0] ?? []).map(({ name }) => name);
  return names.flatMap((name) => {
    const [then, now] = [ratiosOf(baseline, name), ratiosOf(current, name)];
    if (then.length === 0 || now.length === 0) return [];
    const limit = median(then) * (1 - MOST_LOSS);
    const slower = median(now) < limit && Math.max(...now) < limit;
    return [{ name, before: median(then), now: median(now), slower }];
  });
}

/** @param {readonly (readonly Ratio[])[]} turns @param {string} name */
function ratiosOf(turns, name) {
  return turns.flatMap((turn) => turn.filter((figure) => figure.name === name).map(({ ratio }) => ratio));
}

/** @param {readonly number[]} values */
function median(values) {
  const sorted = values.toSorted((one, other) => one - other);
  return ((sorted[(sorted.length - 1) >> 1] ?? 0) + (sorted[sorted.length >> 1] ?? 0)) / 2;
}

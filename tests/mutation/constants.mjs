/**
 * The numbers that stand at the top of a source: in its constants, its lists and tables, and the shapes of its files.
 * Numbers inside functions and classes are no constants.
 *
 * @typedef {{ name: string, value: number, start: number, end: number, line: number }} Constant
 */
import { parseSync } from 'vite';

/** Larger numbers do not count things one by one: a letter more in a long text is nothing that anyone minds. */
const MOST_COUNTED = 100;
const FACTORS = [0.67, 1.5];
const OWN_SCOPE = /Function|ClassBody/;
/** Of what belongs to types, only these hold values. */
const HOLD_VALUES = new Set(['TSAsExpression', 'TSSatisfiesExpression', 'TSNonNullExpression']);

/** @param {string} file @param {string} source @returns {Constant[]} */
export function constantsOf(file, source) {
  const { program, errors } = parseSync(file, source);
  if (errors.length > 0) throw new Error(`${file} can't be read: ${errors[0]?.message}`);
  /** @type {Constant[]} */
  const found = [];
  visit(/** @type {any} */ (program), '');
  return found;

  /** @param {any} node @param {string} name */
  function visit(node, name) {
    if (typeof node?.type !== 'string' || OWN_SCOPE.test(node.type)) return;
    if (node.type.startsWith('TS') && !HOLD_VALUES.has(node.type)) return;
    if (node.type === 'Literal') {
      if (typeof node.value !== 'number') return;
      const { value, start, end } = node;
      found.push({ name, value, start, end, line: source.slice(0, start).split('\n').length });
    }
    if (node.type === 'VariableDeclarator') return visit(node.init, node.id.name ?? name);
    if (node.type === 'Property') return visit(node.value, `${name}.${node.key.name ?? node.key.value}`);
    if (node.type === 'ArrayExpression') {
      return node.elements.forEach((/** @type {any} */ each, /** @type {number} */ at) =>
        visit(each, `${name}[${at}]`),
      );
    }
    for (const child of Object.values(node).flat()) visit(child, name);
  }
}

/** What a number is changed to: a third less, half as much again, and one less and one more where it counts things. */
export function changesOf(/** @type {number} */ value) {
  const isWhole = Number.isInteger(value);
  const times = FACTORS.map((factor) =>
    isWhole ? Math.round(value * factor) : Number((value * factor).toPrecision(15)),
  );
  const steps = isWhole && value <= MOST_COUNTED ? [Math.max(value - 1, 0), value + 1] : [];
  return [...new Set([...times, ...steps])].filter((changed) => changed !== value);
}

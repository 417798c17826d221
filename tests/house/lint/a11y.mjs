// @ts-expect-error -- it brings no types
import plugin from 'eslint-plugin-lit-a11y';

/**
 * eslint-plugin-lit-a11y for oxlint. Its rules note what they know of a file on the source's parser
 * services, which are frozen here, so each rule gets an object of its own for its notes.
 *
 * @typedef {{ sourceCode: object, report: (finding: object) => void }} Context
 * @typedef {{ create: (context: Context) => object }} Rule
 */

/** @param {Rule} rule @returns {Rule} */
function withNotes(rule) {
  return {
    ...rule,
    create(context) {
      const sourceCode = Object.create(context.sourceCode, { parserServices: { value: {} } });
      return rule.create(
        Object.create(context, {
          sourceCode: { value: sourceCode },
          report: { value: (/** @type {object} */ finding) => context.report(finding) },
        }),
      );
    },
  };
}

const rules = Object.entries(plugin.rules).map(([name, rule]) => [name, withNotes(rule)]);

export default { meta: { name: 'lit-a11y' }, rules: Object.fromEntries(rules) };

/**
 * The house's own lint rules: what the style asks for and no ready rule covers.
 * Each is proved by a seeded violation in tests/house/lint.test.ts.
 *
 * @typedef {{ report: (finding: { node: object, message: string }) => void }} Context
 * @typedef {{ quasi: { quasis: { value: { raw: string } }[] } }} TaggedTemplate
 * @typedef {{ object: { type: string, name?: string }, property: { name?: string } }} Member
 */

const noEnum = {
  /** @param {Context} context */
  create: (context) => ({
    /** @param {object} node */
    TSEnumDeclaration: (node) =>
      context.report({ node, message: 'No enum: use a tuple `as const` and the union derived from it.' }),
  }),
};

const noDecorator = {
  /** @param {Context} context */
  create: (context) => ({
    /** @param {object} node */
    Decorator: (node) =>
      context.report({ node, message: 'No decorators: the bundler does not lower them. Use `static properties`.' }),
  }),
};

const noStyleBinding = {
  /** @param {Context} context */
  create: (context) => ({
    /** @param {TaggedTemplate} node */
    TaggedTemplateExpression: (node) => {
      const text = node.quasi.quasis.map((part) => part.value.raw).join('${}');
      if (/<[^>]*\sstyle\s*=/.test(text)) {
        context.report({
          node,
          message: 'No style attribute in a template: the content policy blocks it. Use a class.',
        });
      }
    },
  }),
};

const noChance = {
  /** @param {Context} context */
  create: (context) => ({
    /** @param {Member} node */
    MemberExpression: (node) => {
      if (node.object.type === 'Identifier' && node.object.name === 'Math' && node.property.name === 'random') {
        context.report({ node, message: 'No Math.random in core: randomness is passed in (core/base/random.ts).' });
      }
    },
  }),
};

export default {
  meta: { name: 'house' },
  rules: {
    'no-enum': noEnum,
    'no-decorator': noDecorator,
    'no-style-binding': noStyleBinding,
    'no-chance': noChance,
  },
};

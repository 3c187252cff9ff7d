/**
 * A lint rule for units in names: `exposureTime_s = duration_ms`, `width_m + height_mm` and `a_s < b_ms` are refused,
 * since the suffix is all that says what a number is in.
 */

/**
 * The unit at the end of a name: `exposureTime_s` → `s`, `FOOT_m` → `m`, `fNumber` → undefined.
 * @param {string} name
 * @returns {string | undefined}
 */
export function unitOfName(name) {
  const match = /^(?:[a-z][A-Za-z0-9]*|[A-Z][A-Z0-9_]*)_([a-zA-Z][A-Za-z0-9_]*)$/.exec(name);
  // A name all in capitals has no case to tell its unit by, and is left alone.
  return match && !/^[A-Z0-9_]+$/.test(name) ? match[1] : undefined;
}

/** @typedef {{ readonly type: string, readonly [key: string]: unknown }} Node */

/**
 * The name that says what an expression is in, if it has one.
 * @param {unknown} of
 * @returns {string | undefined}
 */
function nameOf(of) {
  const node = /** @type {Node | null | undefined} */ (of);
  if (node?.type === 'Identifier') return /** @type {string} */ (node['name']);
  if (node?.type === 'MemberExpression' && node['computed'] === false) return nameOf(node['property']);
  if (node?.type === 'CallExpression') return nameOf(node['callee']);
  if (node?.type === 'TSNonNullExpression' || node?.type === 'ChainExpression') return nameOf(node['expression']);
  if (node?.type === 'UnaryExpression' && node['operator'] === '-') return nameOf(node['argument']);
  if (node?.type === 'AssignmentPattern') return nameOf(node['left']);
  return undefined;
}

const SAME_UNIT = new Set(['+', '-', '<', '>', '<=', '>=', '===', '!==', '=', '+=', '-=', '%']);

/** @type {import('eslint').Rule.RuleModule} */
const noMixing = {
  meta: {
    type: 'problem',
    docs: { description: 'refuse to add, compare or assign numbers whose names end in different units' },
    messages: { mixed: '{{left}} is in {{leftUnit}}, {{right}} in {{rightUnit}}: convert one of them.' },
    schema: [],
  },
  create(context) {
    const compare = (/** @type {import('estree').Node} */ node, /** @type {unknown} */ a, /** @type {unknown} */ b) => {
      const left = nameOf(a);
      const right = nameOf(b);
      if (left === undefined || right === undefined) return;
      const leftUnit = unitOfName(left);
      const rightUnit = unitOfName(right);
      if (leftUnit === undefined || rightUnit === undefined || leftUnit === rightUnit) return;
      context.report({ node, messageId: 'mixed', data: { left, leftUnit, right, rightUnit } });
    };
    return {
      BinaryExpression: (node) => {
        if (SAME_UNIT.has(node.operator)) compare(node, node.left, node.right);
      },
      AssignmentExpression: (node) => {
        if (SAME_UNIT.has(node.operator)) compare(node, node.left, node.right);
      },
      VariableDeclarator: (node) => compare(node, node.id, node.init),
      Property: (node) => {
        if (!node.computed) compare(node, node.key, node.value);
      },
    };
  },
};

export const units = { rules: { 'no-mixing': noMixing } };

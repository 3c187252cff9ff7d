/**
 * The folders of src/ from the bottom up: which others each sees, and which packages it may use.
 * A folder sees only folders listed before it. A package is added in the commit that first uses it.
 */

/** @typedef {{ readonly sees: readonly string[], readonly packages: readonly string[] }} Layer */

/** @type {Readonly<Record<string, Layer>>} */
export const LAYERS = {
  base: { sees: [], packages: [] },
  laws: { sees: ['base'], packages: [] },
  measure: { sees: ['base', 'laws'], packages: [] },
  document: { sees: ['base'], packages: ['yaml'] },
  record: { sees: ['base'], packages: [] },
  plan: { sees: ['base', 'laws', 'document', 'record'], packages: [] },
  solve: { sees: ['base', 'laws', 'document', 'plan'], packages: ['highs'] },
  turnover: { sees: ['base', 'laws', 'measure', 'document', 'record', 'plan'], packages: ['zod'] },
  paper: { sees: ['base', 'turnover'], packages: ['pdfkit', '@fontsource/*', 'node:*'] },
  api: { sees: ['base', 'document', 'record'], packages: ['zod'] },
  media: { sees: ['base', 'laws', 'measure'], packages: ['node:*'] },
  copy: { sees: ['base', 'record'], packages: ['node:*'] },
  store: { sees: ['base', 'document', 'record'], packages: ['better-sqlite3', 'node:*'] },
  jobs: {
    sees: ['base', 'laws', 'measure', 'document', 'record', 'plan', 'solve', 'turnover', 'media', 'copy', 'store'],
    packages: ['node:*'],
  },
  server: {
    sees: ['base', 'document', 'record', 'plan', 'solve', 'turnover', 'paper', 'api', 'store', 'jobs'],
    packages: ['hono', '@hono/node-server', 'fflate', 'node:*'],
  },
  cli: {
    sees: [
      'base',
      'laws',
      'measure',
      'document',
      'record',
      'plan',
      'solve',
      'turnover',
      'paper',
      'api',
      'media',
      'copy',
      'store',
      'jobs',
      'server',
    ],
    packages: ['commander', 'picocolors', 'highs', 'node:*'],
  },
  web: {
    sees: ['base', 'laws', 'measure', 'document', 'record', 'plan', 'solve', 'turnover', 'api'],
    packages: [
      'react',
      'react-dom',
      '@tanstack/react-router',
      '@base-ui/react',
      '@fontsource-variable/*',
      'highs',
      'papaparse',
    ],
  },
};

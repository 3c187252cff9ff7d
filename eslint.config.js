import { defineConfig } from 'eslint/config';
import tseslint from 'typescript-eslint';
import { units } from './tools/eslintUnits.mjs';

const PURE = 'src/{base,laws,measure,document,record,plan,solve,turnover,api}/**/*.ts';
const TESTS = '**/*.test.{ts,tsx}';

const clock = 'Pure folders read no clock: take the time as an argument.';
const locale = 'Pure folders give the same text everywhere: print through base/quantity.ts.';

const noDefaultExport = { selector: 'ExportDefaultDeclaration', message: 'Export by name.' };
const noLocale = [
  { selector: 'MemberExpression[property.name=/^toLocale/]', message: locale },
  { selector: 'MemberExpression[property.name="localeCompare"]', message: locale },
];

export default defineConfig(
  { ignores: ['dist/', '.cache/', 'node_modules/'] },
  ...tseslint.configs.recommendedTypeChecked,
  {
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    plugins: { units },
    rules: {
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { ignoreRestSiblings: true }],
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
      eqeqeq: 'error',
      'no-var': 'error',
      'prefer-const': 'error',
      'units/no-mixing': 'error',
    },
  },
  {
    // A cast written as a comment is seen by the compiler but not by this rule.
    files: ['**/*.{js,mjs}'],
    rules: { '@typescript-eslint/no-unsafe-assignment': 'off' },
  },
  {
    files: ['{src,test,bench}/**/*.{ts,tsx}'],
    rules: { 'no-console': 'error', 'no-restricted-syntax': ['error', noDefaultExport] },
  },
  {
    files: [PURE],
    ignores: [TESTS],
    rules: {
      'no-restricted-globals': [
        'error',
        { name: 'Date', message: clock },
        { name: 'performance', message: clock },
        { name: 'Intl', message: locale },
        { name: 'globalThis', message: 'Pure folders reach for nothing outside themselves.' },
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'Draw from a stream seeded by shoot, shot and purpose.' },
      ],
      'no-restricted-syntax': ['error', noDefaultExport, ...noLocale],
    },
  },
);

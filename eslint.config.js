import { defineConfig, globalIgnores } from 'eslint/config';
import svelte from 'eslint-plugin-svelte';
import ts from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

const unused = [
  'error',
  { argsIgnorePattern: '^_', varsIgnorePattern: '^_', ignoreRestSiblings: true },
];

const noLib = {
  group: ['$lib', '$lib/*', '$app/stores'],
  message:
    'Import from #engine/, #server/ or #ui/ with the file extension; $app/state for page state.',
};

// The engine gives the same answer everywhere and always: what it needs of time, chance or a
// machine comes in as an argument.
const outside = (what, cure) => ({ name: what, message: `The engine is pure: ${cure}` });
const engineGlobals = [
  outside('console', 'return what there is to say as a value.'),
  outside('performance', 'take the time as an argument.'),
  outside('setTimeout', 'take a clock as an argument.'),
  outside('setInterval', 'take a clock as an argument.'),
  outside('fetch', 'take what was fetched as an argument.'),
  outside('crypto', 'take random bytes or a signer as an argument.'),
  outside('process', 'take the setting as an argument.'),
  outside('window', 'leave the page to src/ui.'),
  outside('document', 'leave the page to src/ui.'),
  outside('navigator', 'leave the browser to src/ui.'),
  outside('localStorage', 'leave keeping to src/ui or src/server.'),
];

export default defineConfig(
  globalIgnores([
    '.svelte-kit/',
    'build/',
    'data/',
    'playwright-report/',
    'test-results/',
    'src/ui/messages/generated/',
  ]),
  {
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    rules: {
      eqeqeq: 'error',
      'no-console': ['error', { allow: ['warn', 'error'] }],
      'no-restricted-imports': ['error', { patterns: [noLib] }],
      'object-shorthand': 'error',
      'prefer-const': 'error',
    },
  },
  {
    files: ['**/*.ts'],
    extends: [ts.configs.recommendedTypeChecked],
    languageOptions: { parserOptions: { projectService: true } },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    extends: [ts.configs.recommended, svelte.configs.recommended],
    languageOptions: {
      parserOptions: { parser: ts.parser, extraFileExtensions: ['.svelte'], svelteConfig },
    },
    rules: {
      // Addresses are written as they are: the app is always served from the root.
      'svelte/no-navigation-without-resolve': 'off',
      // What is assigned in markup (bind:) is not seen as such.
      'prefer-const': 'off',
    },
  },
  {
    files: ['**/*.ts', '**/*.svelte'],
    rules: {
      '@typescript-eslint/no-unused-vars': unused,
      '@typescript-eslint/consistent-type-imports': 'error',
    },
  },
  {
    files: ['tests/**/*.ts'],
    rules: { 'no-console': 'off' },
  },
  {
    files: ['src/engine/**/*.ts'],
    rules: {
      'no-console': 'off',
      'no-restricted-globals': ['error', ...engineGlobals],
      'no-restricted-properties': [
        'error',
        {
          object: 'Math',
          property: 'random',
          message: 'Take a generator from #engine/random.ts as an argument.',
        },
        { object: 'Date', property: 'now', message: 'Take the time as an argument.' },
      ],
      'no-restricted-syntax': [
        'error',
        {
          selector: "NewExpression[callee.name='Date'][arguments.length=0]",
          message: 'Take the time as an argument.',
        },
        {
          selector: "CallExpression[callee.name='Date']",
          message: 'Take the time as an argument.',
        },
        {
          selector: "MemberExpression[object.name='globalThis']",
          message: 'The engine is pure: take it as an argument.',
        },
      ],
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            noLib,
            { regex: '^\\.\\./', message: 'Another room is imported as #engine/room/file.ts.' },
          ],
        },
      ],
    },
  },
);

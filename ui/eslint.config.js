import js from '@eslint/js';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

export default ts.config(
  { ignores: ['node_modules', 'src/api/contract.ts'] },
  js.configs.recommended,
  ...ts.configs.strict,
  ...svelte.configs.recommended,
  { languageOptions: { globals: { ...globals.browser, ...globals.node } } },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser, svelteConfig, extraFileExtensions: ['.svelte'] } },
  },
  {
    rules: {
      'no-undef': 'off', // the type checker knows better
      'svelte/prefer-svelte-reactivity': 'off', // the maps and dates here are worked with, then dropped
      'svelte/no-navigation-without-resolve': 'off', // a rule for another router
      'max-lines': ['error', { max: 350, skipComments: true }],
    },
  },
  { files: ['src/words/*.ts'], rules: { 'max-lines': 'off' } },
);

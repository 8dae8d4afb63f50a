// Only what Biome cannot see: the inside of Lit templates and the contract of custom elements.
import lit from 'eslint-plugin-lit';
import litA11y from 'eslint-plugin-lit-a11y';
import wc from 'eslint-plugin-wc';
import { parser } from 'typescript-eslint';

export default [
  {
    files: ['src/views/**/*.ts'],
    languageOptions: { parser },
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    plugins: { lit, wc, 'lit-a11y': litA11y },
    settings: { wc: { elementBaseClasses: ['LitElement'] } },
    rules: {
      ...lit.configs['flat/all'].rules,
      ...wc.configs['flat/best-practice'].rules,
      ...litA11y.configs.recommended.rules,
      // Properties are passed as properties; attributes are the exception and name themselves.
      'lit/attribute-names': 'off',
      // A handler that binds a row is an arrow in the template; rows are drawn with map.
      'lit/no-template-arrow': 'off',
      'lit/no-template-map': 'off',
      'lit/no-native-attributes': 'off',
      'lit/prefer-query-decorators': 'off',
      // LitElement always has the callbacks that this rule wants to guard.
      'wc/guard-super-call': 'off',
    },
  },
];

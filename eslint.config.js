import tseslint from 'typescript-eslint';

const pureRooms = ['units', 'decay', 'capacity', 'forecast', 'season', 'storm', 'drawing', 'notify'];
const pass = 'pure rooms have no clock, no chance, no locale and no process: take it as an argument';
const named = (names) => names.map((name) => ({ name, message: pass }));

export default tseslint.config(
  { ignores: ['dist/**', 'coverage/**', '**/*.cjs', '**/*.mjs', '*.js'] },
  ...tseslint.configs.recommendedTypeChecked,
  {
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/require-await': 'off',
    },
  },
  {
    // scripts of the phone are plain JavaScript: a type in a comment does not count as one here, though the compiler checks it
    files: ['src/web/crew/phone/*.js'],
    rules: {
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
    },
  },
  {
    files: pureRooms.map((room) => `src/${room}/**`),
    rules: {
      'no-restricted-globals': [
        'error',
        ...named([
          'process',
          'Intl',
          'performance',
          'crypto',
          'globalThis',
          'console',
          'fetch',
          'setTimeout',
          'setInterval',
        ]),
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Date', property: 'now', message: pass },
        { object: 'Math', property: 'random', message: pass },
      ],
      'no-restricted-syntax': [
        'error',
        { selector: 'NewExpression[callee.name="Date"][arguments.length=0]', message: pass },
        { selector: 'CallExpression[callee.name="Date"]', message: pass },
        { selector: 'MemberExpression[property.name=/^(toLocale|localeCompare)/]', message: pass },
      ],
    },
  },
);

import js from '@eslint/js';
import globals from 'globals';
import tseslint from 'typescript-eslint';

const noClock = [
    { selector: 'NewExpression[callee.name="Date"][arguments.length=0]', message: 'Today is an input: pass it in.' },
    { selector: 'CallExpression[callee.object.name="Date"][callee.property.name="now"]', message: 'Today is an input: pass it in.' },
    { selector: 'MemberExpression[object.name="Temporal"][property.name="Now"]', message: 'Today is an input: pass it in.' },
    { selector: 'CallExpression[callee.object.name="Math"][callee.property.name="random"]', message: 'The same text always gives the same result.' }
];

export default tseslint.config(
    { ignores: ['**/node_modules/**', '.build/**', '.cache/**', '.ci-output/**', 'language/generated/**', 'extension/dist/**'] },
    js.configs.recommended,
    ...tseslint.configs.recommended,
    ...tseslint.configs.stylistic,
    {
        languageOptions: { globals: { ...globals.node } },
        rules: {
            '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
            '@typescript-eslint/consistent-type-imports': 'error',
            '@typescript-eslint/consistent-type-definitions': 'off',
            '@typescript-eslint/no-inferrable-types': 'error',
            eqeqeq: ['error', 'always'],
            'no-console': 'off',
            'max-lines': ['error', { max: 420, skipBlankLines: true, skipComments: true }]
        }
    },
    {
        // The core runs anywhere: no Node, no editor, no clock, no state of a module's own.
        files: ['language/**/*.ts', 'server/planning/**/*.ts', 'server/brief/**/*.{ts,tsx}', 'server/markdown/**/*.ts', 'server/exports/**/*.ts', 'server/importing/**/*.ts', 'server/plan-checks/**/*.ts', 'server/library.ts', 'server/library/**/*.ts'],
        rules: {
            'no-restricted-imports': ['error', { patterns: [{ group: ['node:*', 'vscode', 'vscode-languageserver/*'], message: 'The core runs anywhere.' }] }],
            'no-restricted-globals': ['error', 'process', 'Buffer', 'require', '__dirname', 'setTimeout', 'fetch'],
            'no-restricted-syntax': ['error', ...noClock, { selector: 'Program > VariableDeclaration[kind="let"]', message: 'A module keeps no state of its own.' }]
        }
    },
    {
        files: ['tests/**/*'],
        languageOptions: { globals: { ...globals.node, ...globals.browser } },
        rules: {
            '@typescript-eslint/consistent-type-imports': ['error', { disallowTypeAnnotations: false }],
            'max-lines': 'off', '@typescript-eslint/no-non-null-assertion': 'off' }
    }
);

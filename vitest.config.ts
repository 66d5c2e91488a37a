import { defineConfig } from 'vitest/config';

export default defineConfig({
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
    test: {
        include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
        exclude: ['tests/editor/**', '**/node_modules/**'],
        setupFiles: ['tests/setup.ts']
    }
});

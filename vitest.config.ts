import { defineConfig } from 'vitest/config';

export default defineConfig({
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
    test: {
        include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
        exclude: ['tests/editor/**', '**/node_modules/**'],
        maxWorkers: 2,
        testTimeout: 30_000,
        setupFiles: ['tests/setup.ts']
    }
});

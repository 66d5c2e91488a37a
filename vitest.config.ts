import { defineConfig } from 'vitest/config';

export default defineConfig({
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
    test: {
        include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
        exclude: ['tests/editor/**', '**/node_modules/**'],
        // More than there are cores: the tests of pages and of the server wait for a third of their time.
        maxWorkers: 4,
        // Modules keep no state of their own, so test files may share them; loading them anew for each takes a fifth of the time.
        isolate: false,
        testTimeout: 30_000,
        setupFiles: ['tests/setup.ts']
    }
});

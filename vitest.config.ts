import { defineConfig } from 'vitest/config';

/** What all tests but those of the editor have in common. */
export const common = {
    maxWorkers: 2,
    // Modules keep no state of their own, so test files may share them; loading them anew for each takes a fifth of the time.
    isolate: false,
    testTimeout: 30_000,
    hookTimeout: 30_000,
    setupFiles: ['tests/setup.ts']
};
export const jsx = { jsx: { runtime: 'automatic', importSource: 'preact' } } as const;

/** The tests that are run often. Those that need an editor, a package or pages laid out in Chromium have configurations of their own. */
export default defineConfig({
    oxc: jsx,
    test: {
        ...common,
        include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
        exclude: ['tests/{editor,package,other-editors}/**', 'tests/**/*.pages.test.ts', '**/node_modules/**']
    }
});

import { defineConfig } from 'vitest/config';

/** Editors other than VS Code, as real programs. */
export default defineConfig({
    test: {
        include: ['tests/other-editors/**/*.test.ts'],
        testTimeout: 60_000,
        hookTimeout: 60_000,
        fileParallelism: false
    }
});

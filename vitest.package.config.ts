import { defineConfig } from 'vitest/config';

/** The npm package as somebody has it who installs it in a project of their own. */
export default defineConfig({
    test: {
        include: ['tests/package/**/*.test.ts'],
        testTimeout: 120_000,
        hookTimeout: 120_000,
        fileParallelism: false
    }
});

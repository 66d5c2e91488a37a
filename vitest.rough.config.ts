import { defineConfig } from 'vitest/config';
import { common, jsx } from './vitest.config.js';

/** Rough handling, all of it: a million messages, 5 MB files, ten thousand edits. `npm test` takes a sample of the same. */
export default defineConfig({
    oxc: jsx,
    test: {
        ...common,
        include: ['tests/rough/*.test.ts', 'tests/formatting/properties.test.ts'],
        env: { HAVERSACK_ROUGH: '1' },
        testTimeout: 3_600_000,
        hookTimeout: 120_000,
        // What is timed must not compete with the other files.
        fileParallelism: false,
        disableConsoleIntercept: true
    }
});

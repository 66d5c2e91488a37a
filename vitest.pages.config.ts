import { defineConfig } from 'vitest/config';
import { common, jsx } from './vitest.config.js';

/** Pages as Chromium lays them out: nothing clips or overlaps at any width, on screen and on paper, and axe finds nothing. */
export default defineConfig({
    oxc: jsx,
    test: { ...common, include: ['tests/**/*.pages.test.ts'] }
});

import type { CoverageFigures } from '../planning/coverage-figures.js';
import { figuresJson } from './json.js';

/** `{ "format": "haversack-coverage", "version": 1, "coverage": CoverageFigures }`, as documented in planning/coverage-figures.ts. */
export function coverageJson(coverage: CoverageFigures): string {
    return figuresJson('haversack-coverage', { coverage });
}

// Writes language/REFERENCE.md from the tables of the language and those of the plan's checks, which stand above it.
import 'core-js/actual/object/group-by.js';
import { writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const here = path => fileURLToPath(new URL(path, import.meta.url));
const bundle = here('../.build/reference/write-reference.mjs');
const contents = "export { referenceText } from './language/write-reference.js'; export { planCodes } from './server/plan-checks/plan-codes.js';";
await build({ stdin: { contents, resolveDir: here('..'), loader: 'ts' }, bundle: true, platform: 'node', format: 'esm', outfile: bundle, logLevel: 'error' });
const { referenceText, planCodes } = await import(pathToFileURL(bundle));
writeFileSync(here('REFERENCE.md'), await referenceText(planCodes));

// Writes language/REFERENCE.md from the tables of the language.
import 'core-js/actual/object/group-by.js';
import { writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const here = path => fileURLToPath(new URL(path, import.meta.url));
const bundle = here('../.build/reference/write-reference.mjs');
await build({ entryPoints: [here('write-reference.ts')], bundle: true, platform: 'node', format: 'esm', outfile: bundle, logLevel: 'error' });
const { referenceText } = await import(pathToFileURL(bundle));
writeFileSync(here('REFERENCE.md'), await referenceText());

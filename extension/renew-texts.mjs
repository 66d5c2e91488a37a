// Writes l10n/bundle.l10n.json from the sources, and the setting of severities in the manifest from the tables of the checks.
import 'core-js/actual/object/group-by.js';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { severityProperties, severityTexts, textsInSources } from './texts.mjs';

const here = path => fileURLToPath(new URL(path, import.meta.url));
const read = path => JSON.parse(readFileSync(here(path), 'utf8'));
const write = (path, data) => writeFileSync(here(path), `${JSON.stringify(data, undefined, 2)}\n`);

const bundle = here('../.build/reference/codes.mjs');
const contents = "export { allCodes } from './language/checks/all-checks.js'; export { allPlanChecks } from './server/plan-checks/all-plan-checks.js';";
await build({ stdin: { contents, resolveDir: here('..'), loader: 'ts' }, bundle: true, platform: 'node', format: 'esm', outfile: bundle, logLevel: 'error' });
const { allCodes, allPlanChecks } = await import(pathToFileURL(bundle));
const codes = [...allCodes, ...allPlanChecks];

const manifest = read('package.json');
manifest.contributes.configuration.properties['haversack.severities'].properties = severityProperties(codes);
write('package.json', manifest);
const others = Object.entries(read('package.nls.json')).filter(([key]) => !key.startsWith('severity.'));
write('package.nls.json', { ...Object.fromEntries(others), ...severityTexts(codes) });

mkdirSync(here('l10n'), { recursive: true });
write('l10n/bundle.l10n.json', Object.fromEntries(textsInSources().map(text => [text, text])));

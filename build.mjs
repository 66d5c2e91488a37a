// Bundles the language server, the command line and the extension into .build/.
import { writeFile } from 'node:fs/promises';
import { build } from 'esbuild';
import { addBesideBundles, bundles, emptyExtensionFolder, packagesIn } from './bundles.mjs';

await emptyExtensionFolder();
const built = await Promise.all(bundles(process.argv.includes('--production')).map(async ({ shipped, options }) => ({ shipped, ...await build(options) })));
await addBesideBundles();
const shipped = built.filter(bundle => bundle.shipped).map(({ metafile }) => metafile);
await writeFile('.build/extension/bundled-packages.json', JSON.stringify(packagesIn(shipped), undefined, 2));

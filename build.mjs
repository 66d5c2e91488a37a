// Bundles the language server, the command line and the extension into .build/.
import { copyFile, mkdir, rm, writeFile } from 'node:fs/promises';
import { build } from 'esbuild';

const production = process.argv.includes('--production');
const common = {
    bundle: true, logLevel: 'warning', target: 'node20', platform: 'node', format: 'cjs', sourcemap: production ? false : 'linked', minify: production, metafile: true,
    loader: { '.css': 'text' }, jsx: 'automatic', jsxImportSource: 'preact'
};

const extensionFolder = '.build/extension/dist';
await rm(extensionFolder, { recursive: true, force: true });
await mkdir(extensionFolder, { recursive: true });

const [server, , extension, page] = await Promise.all([
    build({ ...common, entryPoints: ['server/node-server.ts'], outfile: '.build/server/node-server.cjs' }),
    build({ ...common, entryPoints: ['server/cli/haversack.ts'], outfile: '.build/cli/haversack.cjs', banner: { js: '#!/usr/bin/env node' } }),
    build({ ...common, entryPoints: ['extension/activate-node.ts'], outfile: `${extensionFolder}/extension.cjs`, external: ['vscode'] }),
    build({
        ...common, entryPoints: ['extension/preview/page/main.ts'], outfile: `${extensionFolder}/brief-page.js`,
        platform: 'browser', format: 'iife', target: 'chrome122', sourcemap: false
    })
]);
await copyFile('.build/server/node-server.cjs', `${extensionFolder}/node-server.cjs`);

/** The brief's own look, for the preview: taken from the server at build time, so that the extension knows nothing of it. */
const { outputFiles: [styles] } = await build({
    stdin: { contents: "export { briefStyles } from './server/brief/styles.js'; export { pageFrame } from './server/brief/look/screen.css.js';", resolveDir: '.', loader: 'ts' },
    bundle: true, write: false, format: 'esm', platform: 'node'
});
const { briefStyles, pageFrame } = await import(`data:text/javascript;base64,${Buffer.from(styles.contents).toString('base64')}`);
await writeFile(`${extensionFolder}/brief.css`, pageFrame + briefStyles());

/** The packages whose code is in the extension, for their licences. */
const inputs = [server, extension, page].flatMap(({ metafile }) => Object.keys(metafile.inputs));
const packages = new Set(inputs.flatMap(path => /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(path)?.[1] ?? []));
await writeFile('.build/extension/bundled-packages.json', JSON.stringify([...packages].sort(), undefined, 2));

// What is bundled, and from where: for one build (build.mjs) and for building at every change (watch.mjs).
import { copyFile, mkdir, rm, writeFile } from 'node:fs/promises';
import { build } from 'esbuild';

const extensionFolder = '.build/extension/dist';

/** @returns {import('esbuild').BuildOptions & { metafile: true }} what all bundles have in common; `production` is small, and without source maps */
export function bundled(production) {
    return {
        bundle: true, logLevel: 'warning', target: 'node20', platform: 'node', format: 'cjs', sourcemap: production ? false : 'linked', minify: production, metafile: true,
        loader: { '.css': 'text' }, jsx: 'automatic', jsxImportSource: 'preact'
    };
}

/**
 * @param {boolean} production small, and without source maps
 * @returns {{ shipped: boolean, options: import('esbuild').BuildOptions & { metafile: true } }[]} every bundle; `shipped` where the extension holds it
 */
export function bundles(production) {
    const common = bundled(production);
    const asProgram = { banner: { js: '#!/usr/bin/env node' } };
    // An import of one of Node's own modules fails here: a browser has none of them.
    const web = { platform: 'browser', target: 'es2022' };
    return [
        { shipped: true, options: { ...common, ...asProgram, entryPoints: ['server/node-server.ts'], outfile: '.build/server/node-server.cjs' } },
        { shipped: false, options: { ...common, ...asProgram, entryPoints: ['server/cli/haversack.ts'], outfile: '.build/cli/haversack.cjs' } },
        { shipped: true, options: { ...common, entryPoints: ['extension/activate-node.ts'], outfile: `${extensionFolder}/extension.cjs`, external: ['vscode'] } },
        { shipped: true, options: { ...common, ...web, entryPoints: ['server/worker-server.ts'], outfile: '.build/server/worker-server.js', format: 'iife' } },
        { shipped: true, options: { ...common, ...web, entryPoints: ['extension/activate-web.ts'], outfile: `${extensionFolder}/extension-web.js`, external: ['vscode'] } },
        {
            shipped: true,
            options: {
                ...common, entryPoints: ['extension/preview/page/main.ts'], outfile: `${extensionFolder}/brief-page.js`,
                platform: 'browser', format: 'iife', target: 'chrome122', sourcemap: false
            }
        }
    ];
}

/** Nothing of an earlier build is left where the extension is put together. */
export async function emptyExtensionFolder() {
    await rm(extensionFolder, { recursive: true, force: true });
    await mkdir(extensionFolder, { recursive: true });
}

/** What stands beside the bundles: the server in the extension, and the brief's look, taken from the server so that the extension knows nothing of it. */
export async function addBesideBundles() {
    for (const name of ['node-server.cjs', 'worker-server.js']) await copyFile(`.build/server/${name}`, `${extensionFolder}/${name}`);
    const { outputFiles: [styles] } = await build({
        stdin: { contents: "export { briefStyles } from './server/brief/styles.js'; export { pageFrame } from './server/brief/look/screen.css.js';", resolveDir: '.', loader: 'ts' },
        bundle: true, write: false, format: 'esm', platform: 'node'
    });
    const { briefStyles, pageFrame } = await import(`data:text/javascript;base64,${Buffer.from(styles.contents).toString('base64')}`);
    await writeFile(`${extensionFolder}/brief.css`, pageFrame + briefStyles());
}

/** @returns {string[]} folders of the packages whose code is in bundles, for their licences */
export function packagesIn(metafiles) {
    const inputs = metafiles.flatMap(({ inputs }) => Object.keys(inputs));
    return [...new Set(inputs.flatMap(path => /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(path)?.[1] ?? []))].sort();
}

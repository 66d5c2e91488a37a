// Bundles the language server, the command line and the extension into .build/.
import { build } from 'esbuild';

const production = process.argv.includes('--production');
const common = {
    bundle: true, logLevel: 'warning', target: 'node20', platform: 'node', format: 'cjs', sourcemap: production ? false : 'linked', minify: production,
    loader: { '.css': 'text' }, jsx: 'automatic', jsxImportSource: 'preact'
};

await Promise.all([
    build({ ...common, entryPoints: ['server/node-server.ts'], outfile: '.build/server/node-server.cjs' }),
    build({ ...common, entryPoints: ['server/cli/haversack.ts'], outfile: '.build/cli/haversack.cjs', banner: { js: '#!/usr/bin/env node' } })
]);

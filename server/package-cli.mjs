// Stages .build/npm/, the command line, the language server and the library as one npm package, and packs it: .build/haversack-<version>.tgz.
import { execFile } from 'node:child_process';
import { cp, mkdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { bundled, packagesIn } from '../bundles.mjs';
import { thirdPartyNotices } from '../extension/third-party-notices.mjs';
import { packageTypes } from './package-types.mjs';

const server = dirname(fileURLToPath(import.meta.url));
const repository = dirname(server);
const stage = join(repository, '.build/npm');
const { version, license } = JSON.parse(await readFile(join(server, 'package.json'), 'utf8'));
const { engines } = JSON.parse(await readFile(join(repository, 'package.json'), 'utf8'));

process.chdir(repository);
await rm(stage, { recursive: true, force: true });
await mkdir(stage, { recursive: true });

const program = { ...bundled(true), banner: { js: '#!/usr/bin/env node' } };
const built = await Promise.all([
    build({ ...program, entryPoints: ['server/cli/haversack.ts'], outfile: join(stage, 'dist/haversack.cjs') }),
    build({ ...program, entryPoints: ['server/node-server.ts'], outfile: join(stage, 'dist/haversack-server.cjs') }),
    build({
        ...bundled(true), entryPoints: ['server/library.ts'], outfile: join(stage, 'dist/library.js'),
        // Bundled as for a browser, so that an import of one of Node's own modules fails here; Node runs the same.
        platform: 'browser', format: 'esm', target: 'es2022'
    })
]);
await packageTypes(join(repository, '.build/types'), 'server/library.d.ts', join(stage, 'types'));
await cp(join(server, 'README.md'), join(stage, 'README.md'));
await cp(join(repository, 'LICENSE'), join(stage, 'LICENSE'));
await cp(join(repository, 'extension/CHANGELOG.md'), join(stage, 'CHANGELOG.md'));
await writeFile(join(stage, 'THIRD-PARTY-NOTICES.txt'), await thirdPartyNotices(packagesIn(built.map(({ metafile }) => metafile)).map(path => join(repository, path))));
await writeFile(join(stage, 'package.json'), `${JSON.stringify({
    name: 'haversack',
    version,
    description: 'Checks plain-text programmes of hands-on lessons, plans their term, and writes each week’s teacher brief: a command line, a language server and a library.',
    keywords: ['lesson', 'lesson-plan', 'homeschool', 'co-op', 'hands-on', 'language-server'],
    license,
    type: 'module',
    engines,
    bin: { haversack: 'dist/haversack.cjs', 'haversack-server': 'dist/haversack-server.cjs' },
    exports: { '.': { types: './types/server/library.d.ts', default: './dist/library.js' }, './package.json': './package.json' },
    files: ['dist', 'types', 'CHANGELOG.md', 'THIRD-PARTY-NOTICES.txt']
}, undefined, 2)}\n`);

const { stdout } = await promisify(execFile)('npm', ['pack', '--json', '--pack-destination', join(repository, '.build')], { cwd: stage, shell: process.platform === 'win32' });
const [{ filename, files }] = JSON.parse(stdout);
const { size } = await stat(join(repository, '.build', filename));
console.log(`.build/${filename}: ${(size / 1024).toFixed(0)} KB, ${files.length} files`);

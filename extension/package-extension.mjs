// Writes .build/haversack.vsix: a production build, and beside it only what the extension needs at run time.
import { cp, mkdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { execFile } from 'node:child_process';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { fileURLToPath } from 'node:url';
import { createVSIX } from '@vscode/vsce';
import { drawIcon } from './draw-icon.mjs';
import { drawPages, withPictures } from './draw-pages.mjs';
import { thirdPartyNotices } from './third-party-notices.mjs';

const source = dirname(fileURLToPath(import.meta.url));
const repository = dirname(source);
const stage = join(repository, '.build/vsix');
const packagePath = join(repository, '.build/haversack.vsix');

const asTheyAre = ['package.nls.json', 'CHANGELOG.md', 'language-configuration.json', 'syntaxes', 'media', 'new-programme', 'walkthrough', 'l10n'];

await promisify(execFile)(process.execPath, [join(repository, 'build.mjs'), '--production'], { cwd: repository });
await rm(stage, { recursive: true, force: true });
await mkdir(stage, { recursive: true });
for (const name of asTheyAre) await cp(join(source, name), join(stage, name), { recursive: true });
await cp(join(repository, '.build/extension/dist'), join(stage, 'dist'), { recursive: true, filter: path => !path.endsWith('.map') });
await cp(join(repository, 'LICENSE'), join(stage, 'LICENSE'));
await writeFile(join(stage, 'media/icon.png'), drawIcon());

/** Where the pictures are published, for a market that takes none but from an address; kept in .build/pictures for that. */
const pictureAddress = process.env.HAVERSACK_PICTURES;
const drawn = await drawPages(join(repository, '.build/cli/haversack.cjs'), repository);
if (!drawn) console.log('No Chromium is here, so README.md goes without its pictures (bash tests/install-browser.sh installs it).');
for (const [name, bytes] of Object.entries(drawn ?? {})) {
    await mkdir(join(repository, '.build/pictures'), { recursive: true });
    await writeFile(join(repository, '.build/pictures', name), bytes);
}
await writeFile(join(stage, 'README.md'), withPictures(await readFile(join(source, 'README.md'), 'utf8'), drawn, pictureAddress));
const bundled = JSON.parse(await readFile(join(repository, '.build/extension/bundled-packages.json'), 'utf8'));
await writeFile(join(stage, 'THIRD-PARTY-NOTICES.txt'), await thirdPartyNotices(bundled.map(path => join(repository, path))));

// Only what ships is in the stage, so nothing is left out.
await writeFile(join(stage, '.vscodeignore'), '');

// Everything is bundled: no dependencies, no module type, nothing that only the repository needs.
const onlyHere = ['dependencies', 'type', 'private'];
const manifest = Object.entries(JSON.parse(await readFile(join(source, 'package.json'), 'utf8'))).filter(([key]) => !onlyHere.includes(key));
await writeFile(join(stage, 'package.json'), `${JSON.stringify(Object.fromEntries(manifest), undefined, 2)}\n`);

await createVSIX({ cwd: stage, packagePath, dependencies: false, allowMissingRepository: true, rewriteRelativeLinks: false, skipLicense: false });
const { size } = await stat(packagePath);
console.log(`${packagePath}: ${(size / 1024).toFixed(0)} KB`);

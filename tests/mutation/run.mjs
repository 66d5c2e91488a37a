// Changes the engine and the checks in small ways, one at a time, and counts how many of the changes some test notices.
//   npm run mutation                              every area of areas.mjs, some 18,000 changes: hours
//   npm run mutation -- buying checks             those areas
//   npm run mutation -- --share 5 buying checks   a fifth of their lines, always the same fifth
// It works in a copy, so that a run that is broken off leaves nothing behind. .build/mutation/ gets for each area what was tried, with every change that went
// unnoticed (.txt, .json); while it runs, .build/mutation/copy*/.build/mutation-log.txt tells change by change.
// Texts are left as they are (tests of messages look at their figures and names), and so are constants of modules.
import { execFileSync, spawnSync } from 'node:child_process';
import { closeSync, copyFileSync, cpSync, existsSync, mkdirSync, openSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { areas } from './areas.mjs';

const block = 12;
const { values, positionals } = parseArgs({ allowPositionals: true, options: { share: { type: 'string', default: '1' } } });
const share = Number(values.share);
const chosen = positionals.length > 0 ? positionals : Object.keys(areas);
const unknown = chosen.filter(name => !(name in areas));
if (unknown.length > 0 || !Number.isInteger(share) || share < 1) {
    console.error(`Areas are ${Object.keys(areas).join(', ')}; a share is a whole number.`);
    process.exit(2);
}

const repository = process.cwd();
// A copy of its own, so that runs of other areas can go on beside it.
const copy = resolve('.build/mutation', positionals.length > 0 ? `copy-${[...positionals].sort().join('-')}` : 'copy');
const reports = resolve('.build/mutation');
const files = execFileSync('git', ['ls-files', '-co', '--exclude-standard'], { encoding: 'utf8' }).split('\n').filter(path => path && existsSync(path));

rmSync(copy, { recursive: true, force: true });
for (const path of files) {
    mkdirSync(dirname(join(copy, path)), { recursive: true });
    copyFileSync(path, join(copy, path));
}
cpSync('language/generated', join(copy, 'language/generated'), { recursive: true });
// Links inside lead to the copy's own folders, as the packages of this repository are found through them.
mkdirSync(join(copy, 'node_modules'));
for (const name of execFileSync('ls', ['-A', 'node_modules'], { encoding: 'utf8' }).split('\n').filter(Boolean)) {
    if (name !== '@haversack') symlinkSync(join(repository, 'node_modules', name), join(copy, 'node_modules', name));
}
cpSync('node_modules/@haversack', join(copy, 'node_modules/@haversack'), { recursive: true, verbatimSymlinks: true });

/** What is changed in a file: all of it, or the blocks of lines that the share falls on. */
function linesOf(path) {
    if (share === 1) return [path];
    // Where a file's sample begins hangs on its name alone, so that two runs can be compared though other files come and go.
    const first = [...path].reduce((sum, letter) => sum + letter.charCodeAt(0), 0);
    const blocks = Math.ceil(readFileSync(path, 'utf8').split('\n').length / block);
    return Array.from({ length: blocks }, (_, at) => at).filter(at => (at + first) % share === 0).map(at => `${path}:${at * block + 1}-${(at + 1) * block}`);
}

const rows = [];
for (const name of chosen) {
    const { changed: changing, tests, without } = areas[name];
    const report = join(reports, `${name}.json`);
    rmSync(report, { force: true });
    const changed = files.filter(path => changing.test(path)).flatMap(path => linesOf(path));
    const began = Date.now();
    const output = openSync(join(reports, `${name}.txt`), 'w');
    const { status } = spawnSync(process.execPath, [join(repository, 'node_modules/@stryker-mutator/core/bin/stryker.js'), 'run', 'tests/mutation/stryker.config.mjs'], {
        cwd: copy, stdio: ['ignore', output, output],
        env: { ...process.env, HAVERSACK_MUTATE: changed.join(';'), HAVERSACK_MUTATION_TESTS: files.filter(path => tests.test(path)).join(';'), HAVERSACK_MUTATION_WITHOUT: without?.source ?? '', HAVERSACK_MUTATION_REPORT: report }
    });
    closeSync(output);
    if (!existsSync(report)) {
        console.error(`${name}: no result (exit code ${status}); see ${join(reports, `${name}.txt`)}`);
        process.exitCode = 1;
        continue;
    }
    const counts = {};
    for (const { mutants } of Object.values(JSON.parse(readFileSync(report, 'utf8')).files)) for (const mutant of mutants) counts[mutant.status] = (counts[mutant.status] ?? 0) + 1;
    const noticed = (counts.Killed ?? 0) + (counts.Timeout ?? 0);
    const unnoticed = (counts.Survived ?? 0) + (counts.NoCoverage ?? 0);
    rows.push({ name, noticed, unnoticed });
    console.log(`${name.padEnd(12)} ${score(noticed, unnoticed)}  ${noticed} of ${noticed + unnoticed} noticed, ${counts.NoCoverage ?? 0} of the others never run; ${Math.round((Date.now() - began) / 1000)} s`);
}
const noticed = rows.reduce((sum, row) => sum + row.noticed, 0);
const unnoticed = rows.reduce((sum, row) => sum + row.unnoticed, 0);
if (rows.length > 1) console.log(`${'in all'.padEnd(12)} ${score(noticed, unnoticed)}  ${noticed} of ${noticed + unnoticed}`);
console.log(`Words of messages and constants of modules were not changed.${share > 1 ? ` One block of ${block} lines in ${share} was tried.` : ''}`);

function score(some, others) {
    return some + others === 0 ? '   —  ' : `${((100 * some) / (some + others)).toFixed(1).padStart(5)} %`;
}

// Makes language/generated/ from the grammar, unless it is newer than every grammar file.
import { spawnSync } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const made = ['ast.ts', 'grammar.ts', 'module.ts'].map(name => join(here, 'generated', name));
const sources = [join(here, 'langium-config.json'), ...readdirSync(join(here, 'grammar')).map(name => join(here, 'grammar', name))];
const time = path => { try { return statSync(path).mtimeMs; } catch { return 0; } };

if (Math.min(...made.map(time)) <= Math.max(...sources.map(time))) {
    const cli = fileURLToPath(new URL('langium.js', import.meta.resolve('langium-cli')));
    // Node 20 lacks Object.groupBy, which the generator calls.
    const polyfill = import.meta.resolve('core-js/actual/object/group-by.js');
    const run = spawnSync(process.execPath, ['--import', polyfill, cli, 'generate'], { cwd: here, encoding: 'utf8' });
    // A statement that may stand anywhere in its block is assigned inside a loop on purpose; the lexer reports one said twice.
    const expected = /Found multiple assignments|potentially consumes no input/;
    process.stdout.write((run.stdout + run.stderr).split('\n').filter(line => !expected.test(line)).join('\n'));
    process.exit(run.status ?? 1);
}

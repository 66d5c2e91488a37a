// Measures the built server over the wire on a made-up programme, beside the same content as YAML with a JSON Schema in
// yaml-language-server where the work is comparable. Prints a table. `npm run bench -- 200` measures a smaller one.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { writeProgrammes } from './generate.mjs';
import { highest, median, Wire } from './wire.mjs';

const count = Number(process.argv[2] ?? 1000);
const rounds = 60;
const server = ['.build/server/node-server.cjs', '--stdio'];
const yamlServer = [join(createRequire(import.meta.url).resolve('yaml-language-server'), '../../../bin/yaml-language-server'), '--stdio'];
const folder = mkdtempSync(join(tmpdir(), 'haversack-bench-'));
const uriIn = (root, file) => pathToFileURL(join(root, file)).href;

async function timed(work) {
    const start = performance.now();
    await work();
    return performance.now() - start;
}

/** From starting the server to the diagnostics of every file. */
async function coldOpen(root, files) {
    const wire = new Wire(process.execPath, server);
    const wanted = new Set(files);
    const time = await timed(async () => {
        const all = wire.until(({ uri }) => (wanted.delete(uri), wanted.size === 0));
        await wire.initialize(root);
        await all;
    });
    return { wire, time };
}

const haversackFiles = (root, lessons) => [uriIn(root, 'inventory.kit'), uriIn(root, 'year.course'), ...Array.from({ length: lessons }, (_, index) => uriIn(root, `lesson-${index + 1}.lesson`))];

/** The YAML server looks at open files only, so the client opens all of them. */
async function coldYaml(root, lessons) {
    const wire = new Wire(process.execPath, yamlServer);
    wire.settings.yaml = { schemas: { [uriIn(root, 'lesson.schema.json')]: '*.yaml' }, validate: true, completion: true, hover: true, schemaStore: { enable: false } };
    const files = Array.from({ length: lessons }, (_, index) => `lesson-${index + 1}.yaml`);
    const texts = files.map(file => readFileSync(join(root, file), 'utf8'));
    const wanted = new Set(files.map(file => uriIn(root, file)));
    const time = await timed(async () => {
        const all = wire.until(({ uri }) => (wanted.delete(uri), wanted.size === 0));
        await wire.initialize(root);
        await wire.connection.sendNotification('workspace/didChangeConfiguration', { settings: { yaml: wire.settings.yaml } });
        await Promise.all(files.map((file, index) => wire.open(uriIn(root, file), 'yaml', texts[index])));
        await all;
    });
    return { wire, time };
}

/** Types a letter into a line and takes it back, again and again; times each until the diagnostics of that version come. */
async function keystrokes(wire, uri, text, languageId, marker, times = rounds) {
    const found = text.indexOf(marker);
    if (found < 0) throw new Error(`'${marker}' is nowhere in the text to be typed in`);
    const before = text.slice(0, found + marker.length).split('\n');
    const at = { line: before.length - 1, character: before[before.length - 1].length };
    const first = wire.until(params => params.uri === uri);
    await wire.open(uri, languageId, text, 1);
    await first;
    const samples = [];
    for (let round = 0; round < times; round++) {
        const version = round + 2;
        const range = round % 2 === 0 ? { start: at, end: at } : { start: at, end: { line: at.line, character: at.character + 1 } };
        samples.push(await timed(async () => {
            const answered = wire.until(params => params.uri === uri && (params.version === undefined || params.version === version));
            await wire.change(uri, version, range, round % 2 === 0 ? 'x' : '');
            await answered;
        }));
    }
    return { samples: samples.slice(10), version: times + 1, at };
}

async function measureHaversack(root) {
    const { wire, time } = await coldOpen(root, haversackFiles(root, count));
    const uri = uriIn(root, `lesson-${Math.floor(count / 2)}.lesson`);
    const text = readFileSync(new URL(uri), 'utf8');
    const typing = await keystrokes(wire, uri, text, 'haversack', 'and count');
    const inventory = uriIn(root, 'inventory.kit');
    const price = await keystrokes(wire, inventory, readFileSync(new URL(inventory), 'utf8'), 'haversack', 'costs 4.5', 20);
    const lines = text.split('\n');
    const proseLine = lines.findIndex(line => line.includes('    do: Lay'));
    const completions = [];
    for (let round = 0; round < rounds; round++) {
        const position = { line: proseLine, character: lines[proseLine].indexOf('{') + 2 };
        let items;
        completions.push(await timed(async () => { items = await wire.request('textDocument/completion', { textDocument: { uri }, position }); }));
        if ((items.items ?? items).length < 200) throw new Error('completion in prose offered too little to be measured');
    }
    let known = {};
    const refreshes = [];
    const amountLine = lines.findIndex(line => line.startsWith('    thing-'));
    const amountAt = /\d+ per/.exec(lines[amountLine]).index;
    let version = typing.version;
    for (let round = 0; round < rounds; round++) {
        let answer;
        refreshes.push(await timed(async () => {
            await wire.change(uri, ++version, { start: { line: amountLine, character: amountAt }, end: { line: amountLine, character: amountAt + 1 } }, String(2 + round % 7));
            answer = await wire.request('haversack/brief', { uri, line: amountLine, known });
        }));
        if (answer.refusal) throw new Error(answer.refusal);
        if (round > 0 && !answer.sections.some(section => section.html)) throw new Error('the brief did not change with the amount');
        known = Object.fromEntries(answer.sections.map(section => [section.id, section.hash]));
    }
    const memory = wire.memory();
    wire.stop();
    return { cold: time, typing: typing.samples, price: price.samples, completions: completions.slice(10), refreshes: refreshes.slice(10), memory };
}

async function measureYaml(root) {
    const { wire, time } = await coldYaml(root, count);
    const uri = uriIn(root, `lesson-${Math.floor(count / 2)}.yaml`);
    const text = readFileSync(new URL(uri), 'utf8');
    await wire.connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
    const typing = await keystrokes(wire, uri, text, 'yaml', 'and count', 30);
    const lines = text.split('\n');
    const line = lines.findIndex(one => one.includes('thing: '));
    const completions = [];
    for (let round = 0; round < 30; round++) {
        completions.push(await timed(() => wire.request('textDocument/completion', { textDocument: { uri }, position: { line, character: lines[line].indexOf('thing: ') + 8 } })));
    }
    const memory = wire.memory();
    wire.stop();
    return { cold: time, typing: typing.samples, completions: completions.slice(10), memory };
}

async function coldRatio(root, lessons, times) {
    const results = [];
    for (let round = 0; round < times; round++) {
        const { wire, time } = await coldOpen(root, haversackFiles(root, lessons));
        wire.stop();
        results.push(time);
    }
    return median(results);
}

const ms = value => `${value < 10 ? value.toFixed(1) : Math.round(value)} ms`;

try {
    const once = writeProgrammes(join(folder, 'once'), count);
    const twice = writeProgrammes(join(folder, 'twice'), count * 2);
    console.log(`${count} lessons, ${Math.round(once.lines / count)} lines each, ${(once.bytes / 1e6).toFixed(1)} MB; Node ${process.version}\n`);
    const own = await measureHaversack(once.own);
    const cold = await coldRatio(once.own, count, 3);
    const coldTwice = await coldRatio(twice.own, count * 2, 3);
    const yaml = await measureYaml(once.yaml);
    const rows = [
        ['cold open to all diagnostics', ms(cold), ms(yaml.cold), 'under 4 s and a third of YAML', cold < 4000 && cold < yaml.cold / 3],
        ['  share of the YAML route', (cold / yaml.cold).toFixed(2), '1', 'under 0.33', cold < yaml.cold / 3],
        ['  twice the lessons', ms(coldTwice), '', '', undefined],
        ['  times the cold open', (coldTwice / cold).toFixed(2), '', 'at most 2.2', coldTwice / cold <= 2.2],
        ['keystroke to diagnostics, median', ms(median(own.typing)), ms(median(yaml.typing)), 'under 50 ms', median(own.typing) < 50],
        ['  nine in ten', ms(highest(own.typing, 0.9)), ms(highest(yaml.typing, 0.9)), '', undefined],
        ['keystroke in the shared inventory, median', ms(median(own.price)), '', '', undefined],
        ['completion, median', ms(median(own.completions)), ms(median(yaml.completions)), 'under 30 ms', median(own.completions) < 30],
        ['preview refresh after a keystroke, median', ms(median(own.refreshes)), '', 'under 100 ms', median(own.refreshes) < 100],
        ['memory of the server, now', `${own.memory.now} MB`, `${yaml.memory.now} MB`, 'under 500 MB', own.memory.now < 500],
        ['  at its highest', `${own.memory.highest} MB`, `${yaml.memory.highest} MB`, '', undefined]
    ];
    const widths = [44, 12, 12, 30];
    const print = cells => console.log(cells.map((cell, index) => String(cell).padEnd(widths[index] ?? 0)).join(' ').trimEnd());
    print(['', 'Haversack', 'YAML', 'aim', '']);
    for (const [what, ours, theirs, aim, met] of rows) print([what, ours, theirs, aim, met === undefined ? '' : met ? 'met' : 'MISSED']);
} finally {
    rmSync(folder, { recursive: true, force: true });
}

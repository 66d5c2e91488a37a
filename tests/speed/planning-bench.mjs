// Measures planning alone, without an editor: the year example for both its classes, and a made-up programme for ten classes, cold and
// after one keystroke in one lesson. Planning is the schedule, every ledger with its orders, shortages and costs, and the coverage.
// `npm run bench:plan -- 200` measures a smaller made-up programme.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { writeProgrammes } from './generate.mjs';
import { highest, median } from './wire.mjs';

const count = Number(process.argv[2] ?? 1000);
const rounds = 40;
const today = '2026-11-02';
const folder = mkdtempSync(join(tmpdir(), 'haversack-planning-'));

/** The engine as the server has it, bundled for this run only. */
async function engine() {
    mkdirSync('.cache', { recursive: true });
    const outfile = join('.cache', 'planning-bench-engine.mjs');
    await build({
        stdin: {
            contents: `
                export { readProgramme } from './server/cli/read-programme.js';
                export { gatherProgramme } from '@haversack/language/sheets/programme';
                export { newPlanningCache } from './server/planning/cache.js';
                export { planSupplies } from './server/planning/supplies/plan-supplies.js';
                export { termPlanOf } from './server/planning/supplies/term-plan.js';`,
            resolveDir: '.', loader: 'ts'
        },
        bundle: true, platform: 'node', format: 'esm', outfile, logLevel: 'warning', loader: { '.css': 'text' },
        banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" }
    });
    return import(pathToFileURL(outfile).href);
}

/** Ten classes of other sizes and weekdays; some buy, some share a cupboard, some meet twice a week. */
function tenClasses() {
    const days = ['mon, tue, wed, thu', 'mon, tue, thu, fri', 'mon, wed, thu, fri', 'tue, wed, thu, fri', 'mon, tue, wed, thu, fri'];
    return Array.from({ length: 10 }, (_, i) => [
        `class group-${i} "Group ${i}"`, '  teaches long', `  learners ${7 + 3 * i}`, '  adults 2', `  groups of ${2 + i % 3}`,
        `  kits big-kit ${1 + i % 3}`, '  on hand', ...[1, 4, 9, 16, 25].map(thing => `    thing-${thing} ${40 * (i + 1)}`),
        '  on order', `    thing-${i} 200 arriving 2026-11-0${1 + i % 9}`, `  starts 2026-09-0${1 + i % 7}`, `  meets ${days[i % days.length]}`, '  session 90 min',
        '  off 2026-12-21 to 2027-01-06 "Winter rest"', '  catch-up 1 day every 20 lessons', ''
    ].join('\n')).join('\n');
}

/** The generated inventory with half of its things used up and bought in packs, and kits that are not enough. */
function withThingsToBuy(inventory) {
    let index = 0;
    return inventory.replace(/^( {4}thing-\d+) 500$/gm, '$1 60').replace(/ {2}reusable\n {2}from kit\n {2}pack of 20 costs 4\.50 USD\n/g, text => {
        const other = index++ % 4;
        if (other === 0) return '  consumable\n  from shop\n  pack of 20 costs 4.50 USD\n  pack of 100 costs 18.00 USD\n  arrives in 10 days\n  spare 5%\n';
        if (other === 1) return '  consumable\n  from shop\n  pack of 50 costs 3.20 USD\n  keeps 8 weeks\n  delivery 2.50 USD\n';
        return text;
    });
}

const plan = ({ termPlanOf }, cache, programme, classes) => {
    const terms = termPlanOf(cache, programme);
    const parts = { schedule: 0, supplies: 0, coverage: 0 };
    const counts = { meetings: 0, ledgers: 0, orders: 0, late: 0, shortages: 0, clashes: 0, problems: 0, gaps: 0 };
    const timed = (part, work) => {
        const start = performance.now();
        const value = work();
        parts[part] += performance.now() - start;
        return value;
    };
    for (const name of classes) {
        const wanted = { class: name };
        const schedule = timed('schedule', () => terms.schedule(wanted));
        counts.meetings += schedule.weeks.reduce((sum, week) => sum + week.meetings.length, 0);
        counts.problems += schedule.problems.length;
        timed('supplies', () => {
            const term = terms.term(wanted);
            counts.ledgers += term.names().length;
            counts.orders += term.orders().length;
            counts.late += term.late(today).length;
            counts.shortages += term.shortages().length;
            counts.clashes += term.clashes().length;
            term.costs();
        });
        timed('coverage', () => { counts.gaps += terms.coverage(wanted).gaps.length; });
    }
    return { parts, counts };
};

/** A programme in which one lesson asks for another amount: a new sheet for its file, all others the same. */
function withAmount(tools, programme, lessonName, round) {
    const lesson = programme.lessons.get(lessonName);
    const file = programme.files.get(lesson.uri);
    const needs = lesson.needs.map((need, i) => (i === 0 && need.amount ? { ...need, amount: { ...need.amount, value: String(2 + round % 7) } } : need));
    return withFile(tools, programme, { ...file, lessons: file.lessons.map(one => (one === lesson ? { ...lesson, needs } : one)) });
}

/** A programme in which an empty line was typed at the top of a lesson's file: all of it stands a line further down. */
function withNewline(tools, programme, lessonName) {
    const file = programme.files.get(programme.lessons.get(lessonName).uri);
    return withFile(tools, programme, lineDown(file));
}

function lineDown(value) {
    if (Array.isArray(value)) return value.map(lineDown);
    if (typeof value !== 'object' || value === null || Object.getPrototypeOf(value) !== Object.prototype) return value;
    return Object.fromEntries(Object.entries(value).map(([key, own]) => [key, key === 'line' && typeof own === 'number' ? own + 1 : lineDown(own)]));
}

function withFile({ gatherProgramme }, programme, sheet) {
    return gatherProgramme([...programme.files.values()].map(one => (one.uri === sheet.uri ? sheet : one)), programme.attachments);
}

function measure(tools, programme, lessonName) {
    const classes = [...programme.classes.keys()];
    const cold = [];
    let first;
    for (let round = 0; round < 9; round++) {
        const start = performance.now();
        const result = plan(tools, tools.newPlanningCache(), programme, classes);
        cold.push({ time: performance.now() - start, parts: result.parts });
        first ??= { time: cold[0].time, ...result };
    }
    const cache = tools.newPlanningCache();
    plan(tools, cache, programme, classes);
    let now = programme;
    const after = edit => Array.from({ length: rounds }, (_, round) => {
        now = edit(tools, now, lessonName, round);
        const start = performance.now();
        const { parts } = plan(tools, cache, now, classes);
        return { time: performance.now() - start, parts };
    }).slice(10);
    const typing = after(withAmount);
    const newline = after(withNewline);
    const start = performance.now();
    for (const name of classes) {
        tools.planSupplies(now, { class: name }, { cache, today: today });
        structuredClone(tools.termPlanOf(cache, now).coverage({ class: name }));
    }
    return { classes: classes.length, first, cold, typing, newline, full: performance.now() - start };
}

const ms = value => `${value < 10 ? value.toFixed(1) : Math.round(value)} ms`;
const middle = (runs, of) => median(runs.map(of));

function print(title, { classes, first, cold, typing, newline, full }, aims) {
    console.log(`\n${title}, ${classes} classes: ${Object.entries(first.counts).map(([what, many]) => `${many} ${what}`).join(', ')}`);
    const row = (what, runs, aim) => {
        const time = middle(runs, run => run.time);
        const parts = ['schedule', 'supplies', 'coverage'].map(part => `${part} ${ms(middle(runs, run => run.parts[part]))}`).join(', ');
        console.log(`  ${what.padEnd(34)} ${ms(time).padEnd(10)} (${parts})${aim === undefined ? '' : `  aim ${aim} ms: ${time <= aim ? 'met' : 'MISSED'}`}`);
    };
    console.log(`  ${'first plan of the process'.padEnd(34)} ${ms(first.time).padEnd(10)} (${Object.entries(first.parts).map(([part, time]) => `${part} ${ms(time)}`).join(', ')})`);
    row('cold, median of 9', cold, aims.cold);
    row('after one keystroke, median', typing, aims.typing);
    console.log(`  ${'nine in ten'.padEnd(34)} ${ms(highest(typing.map(run => run.time), 0.9))}`);
    row('after a newline above it, median', newline, aims.typing);
    console.log(`  ${'nine in ten'.padEnd(34)} ${ms(highest(newline.map(run => run.time), 0.9))}`);
    console.log(`  ${'all figures with texts and trails'.padEnd(34)} ${ms(full)}`);
}

try {
    const tools = await engine();
    const { own } = writeProgrammes(folder, count);
    writeFileSync(join(own, 'inventory.kit'), withThingsToBuy(readFileSync(join(own, 'inventory.kit'), 'utf8')));
    const year = readFileSync(join(own, 'year.course'), 'utf8');
    writeFileSync(join(own, 'year.course'), `${year.slice(0, year.indexOf('class autumn'))}${tenClasses()}`);
    const large = (await tools.readProgramme(own)).view.programme;
    console.log(`Node ${process.version}; ${count} made-up lessons`);
    print(`${count} lessons`, measure(tools, large, `lesson-${Math.floor(count / 2)}`), { cold: 300, typing: 20 });
    const example = (await tools.readProgramme('examples/year')).view.programme;
    print('the year example', measure(tools, example, [...example.lessons.values()].find(({ needs }) => needs[0]?.amount).name), { cold: 300, typing: 20 });
} finally {
    rmSync(folder, { recursive: true, force: true });
}

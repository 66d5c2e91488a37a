// Stryker's tests, run inside the process that holds the changed code. All tests of an area and what they need become one module, which is loaded anew for each change, so that
// nothing that was kept (memos, module-level fixtures) goes from one change to the next; only libraries stay.
import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const root = process.cwd();
const bundle = resolve(`.build/mutation-tests-${process.env.STRYKER_MUTATOR_WORKER ?? 0}.mjs`);
const facts = resolve('.build/mutation-tests.json');
const tested = (process.env.HAVERSACK_MUTATION_TESTS ?? '').split(';');
const without = process.env.HAVERSACK_MUTATION_WITHOUT && new RegExp(process.env.HAVERSACK_MUTATION_WITHOUT);
const log = resolve('.build/mutation-log.txt');
const looped = /^(Stryker: )?Hit (count )?limit reached/;

/** Statuses of a run and of a test, as Stryker counts them. */
const complete = 'complete', success = 0, failed = 1;

/** Vitest and fast-check are the small ones; this repository's packages are bundled, all others stay outside; files know where they stood. */
const places = {
    name: 'places',
    setup({ onResolve, onLoad }) {
        onResolve({ filter: /^vitest$/ }, () => ({ path: resolve('tests/mutation/small-vitest.mjs') }));
        onResolve({ filter: /^fast-check$/ }, ({ importer }) => (importer.endsWith('small-fast-check.mjs') ? { external: true } : { path: resolve('tests/mutation/small-fast-check.mjs') }));
        onResolve({ filter: /^@haversack\// }, ({ path }) => {
            const [, folder, ...rest] = path.split('/');
            return { path: join(root, folder, `${rest.join('/')}.ts`) };
        });
        onResolve({ filter: /^[^./]/ }, ({ kind, path }) => (kind === 'entry-point' ? undefined : { path, external: true }));
        onLoad({ filter: /\/tests\/.*\.tsx?$/ }, ({ path }) => ({
            contents: readFileSync(path, 'utf8').replaceAll('import.meta.url', JSON.stringify(pathToFileURL(path).href)).replaceAll('import.meta.dirname', JSON.stringify(dirname(path))),
            loader: path.endsWith('x') ? 'tsx' : 'ts'
        }));
    }
};

class OneProcess {
    loads = 0;

    capabilities() {
        return { reloadEnvironment: true };
    }

    async init() {
        const lines = tested.map(path => `file(${JSON.stringify(path)});\nawait import(${JSON.stringify(`./${path}`)});`);
        await build({
            stdin: { contents: `import 'core-js/actual/object/group-by.js';\nimport 'core-js/actual/map/group-by.js';\nimport { file, takeTests } from 'vitest';\nfile();\n${lines.join('\n')}\nexport const tests = takeTests();`, resolveDir: root, loader: 'js' },
            bundle: true, format: 'esm', platform: 'node', target: 'node20', outfile: bundle, plugins: [places], jsx: 'automatic', jsxImportSource: 'preact', logLevel: 'error'
        });
    }

    async dryRun() {
        const run = await this.run(undefined, true);
        writeFileSync(facts, JSON.stringify(Object.fromEntries(run.tests.map(({ id, timeSpentMs, samples }) => [id, { took: timeSpentMs, samples, hits: run.mutantCoverage?.perTest[id] ?? {} }]))));
        return run;
    }

    async mutantRun({ activeMutant: { id, fileName, location }, testFilter, mutantActivation }) {
        const began = performance.now();
        const { status, tests, errorMessage } = await this.run(testFilter, false, mutantActivation === 'static' ? id : undefined, id);
        const killer = tests?.find(test => test.status === failed);
        appendFileSync(log, `${id} ${basename(fileName)}:${location.start.line + 1} ${killer ? 'noticed' : 'not noticed'} ${Math.round(performance.now() - began)} ms, ${tests?.length} tests${killer ? `: ${killer.id}` : ''}\n`);
        if (status !== complete) return { status: 'error', errorMessage };
        if (killer && looped.test(killer.failureMessage)) return { status: 'timeout', reason: killer.failureMessage };
        return killer ? { status: 'killed', killedBy: [killer.id], failureMessage: killer.failureMessage, nrOfTests: tests.length } : { status: 'survived', nrOfTests: tests.length };
    }

    /** Loads the tests and runs those of `ids` (all when undefined), the quick ones first, up to the first that fails. */
    async run(ids, dry, whileLoading, afterwards) {
        const state = globalThis.__stryker__ ??= {};
        state.activeMutant = whileLoading;
        state.currentTestId = undefined;
        if (dry) state.mutantCoverage = undefined;
        let tests;
        try {
            ({ tests } = await import(`${pathToFileURL(bundle).href}?${this.loads++}`));
        } catch (error) {
            return whileLoading === undefined ? { status: 'error', errorMessage: String(error?.stack ?? error) } : { status: complete, tests: [{ id: 'loading', name: 'loading', timeSpentMs: 0, status: failed, failureMessage: String(error) }] };
        }
        state.activeMutant = afterwards;
        const wanted = ids && new Set(ids);
        const chosen = tests.filter(({ id }) => (wanted ? wanted.has(id) : !without || !without.test(id)));
        const known = dry ? {} : this.facts ??= JSON.parse(readFileSync(facts, 'utf8'));
        if (!dry) chosen.sort((a, b) => known[a.id].took - known[b.id].took);
        const results = [];
        for (const test of chosen) {
            // What loops for ever passes its place far more often than before. A test that catches the error of that fails all the same.
            state.hitCount = dry ? undefined : 0;
            state.hitLimit = dry ? undefined : 20 * (known[test.id].hits[afterwards] ?? 0) + 2000;
            let result = await one(test, state, dry, known[test.id]?.samples ?? 'few');
            // Some tests count what their samples were like, and need them all for that.
            if (dry && result.status === failed) result = await one(test, state, dry, 'all');
            if (!dry && state.hitCount > state.hitLimit) result = { ...result, status: failed, failureMessage: `Hit limit reached (${state.hitCount}/${state.hitLimit})` };
            results.push(result);
            if (result.status === failed && !dry) break;
        }
        return { status: complete, tests: results, mutantCoverage: dry ? state.mutantCoverage : undefined };
    }
}

async function one({ id, first, run }, state, dry, samples) {
    const began = performance.now();
    globalThis.haversackSamples = samples;
    try {
        for (const before of first) await (before.done ??= Promise.resolve().then(before.run));
        if (dry) state.currentTestId = id;
        await run();
        return { id, name: id, status: success, samples, timeSpentMs: performance.now() - began };
    } catch (error) {
        return { id, name: id, status: failed, failureMessage: String(error?.message ?? error), timeSpentMs: performance.now() - began };
    } finally {
        state.currentTestId = undefined;
    }
}

export const strykerPlugins = [{ kind: 'TestRunner', name: 'one-process', factory: () => new OneProcess() }];


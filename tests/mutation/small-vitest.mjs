// What the tests of the engine use of Vitest, so that they run inside the process that changes the code: Vitest itself takes seconds for each change, this milliseconds.
import * as chai from 'chai';
import { JestAsymmetricMatchers, JestChaiExpect, JestExtend } from '@vitest/expect';

for (const plugin of [JestExtend, JestChaiExpect, JestAsymmetricMatchers]) chai.use(plugin);
export const expect = chai.expect;
export const vi = { setConfig: () => undefined };

/** Tests in the order in which files declare them: `{ id, first, run }`; `first` are the files' and groups' beforeAll. */
const declared = [];
let group = { name: '', first: [] };
const seen = new Map();

export const takeTests = () => declared.splice(0);

export function test(name, ...rest) {
    const path = `${group.name} > ${name}`;
    const times = seen.get(path) ?? 0;
    seen.set(path, times + 1);
    declared.push({ id: times === 0 ? path : `${path} (${times + 1})`, first: group.first, run: rest.find(one => typeof one === 'function') });
}
export const it = test;

export function describe(name, body) {
    const outer = group;
    group = { name: outer.name === '' ? name : `${outer.name} > ${name}`, first: [...outer.first] };
    try {
        body();
    } finally {
        group = outer;
    }
}

/** Begins a file: what it declares stands apart from all others'. */
export function file(name) {
    if (name === undefined) seen.clear();
    group = { name: name ?? '', first: [] };
}

export function beforeAll(run) {
    group.first.push({ run, done: undefined });
}

const rows = declare => table => (name, ...rest) => {
    const body = rest.find(one => typeof one === 'function');
    for (const row of table) declare(title(name, row), () => (Array.isArray(row) ? body(...row) : body(row)));
};
const title = (name, row) => `${name} | ${short(row)}`;
const short = row => (Array.isArray(row) ? row : [row?.code ?? row?.name ?? row]).map(one => (typeof one === 'object' ? '' : String(one).slice(0, 60))).join(', ');
test.each = rows(test);
describe.each = rows(describe);

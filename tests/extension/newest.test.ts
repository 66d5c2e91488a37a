import { expect, it } from 'vitest';
import { Newest } from '../../extension/preview/newest.js';

function held(): { newest: Newest; runs: (() => void)[]; failures: unknown[]; fail: (() => void)[] } {
    const runs: (() => void)[] = [];
    const fail: (() => void)[] = [];
    const failures: unknown[] = [];
    const newest = new Newest(() => new Promise((done, failed) => {
        runs.push(done);
        fail.push(() => failed(new Error('gone')));
    }), error => failures.push(error));
    return { newest, runs, failures, fail };
}
const settled = (): Promise<void> => new Promise(resolve => setImmediate(resolve));

it('asks at once, and only once more for all that was asked meanwhile', async () => {
    const { newest, runs } = held();
    newest.ask();
    expect(runs.length).toBe(1);
    for (let i = 0; i < 5; i++) newest.ask();
    expect(runs.length).toBe(1);
    runs[0]!();
    await settled();
    expect(runs.length).toBe(2);
    runs[1]!();
    await settled();
    expect(runs.length).toBe(2);
    newest.ask();
    expect(runs.length).toBe(3);
});

it('goes on after a failure', async () => {
    const { newest, runs, fail, failures } = held();
    newest.ask();
    newest.ask();
    fail[0]!();
    await settled();
    expect(failures.length).toBe(1);
    expect(runs.length).toBe(2);
});

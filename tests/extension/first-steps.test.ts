/** Steps of the walkthrough that complete themselves, with a stand-in for the editor. */
import { beforeEach, expect, it, vi } from 'vitest';
import { URI } from 'vscode-uri';
import { fire, listeners, lookedAt, problems, resetStandIn, told } from './vscode-stand-in.js';

vi.mock('vscode', () => import('./vscode-stand-in.js'));
const { followFirstSteps } = await import('../../extension/first-steps.js');

const lesson = URI.parse('file:///a/one.lesson');
const kit = URI.parse('file:///a/things.kit');
const page = URI.parse('file:///a/readme.md');
const tell = (uri: URI, ...severities: number[]): void => {
    problems.set(uri.toString(), severities);
    fire('problems', { uris: [uri] });
};
const steps = (): string[] => told.map(([, what]) => what.replace(/^setContext haversack\.firstSteps\.(\w+) true$/, '$1'));
beforeEach(() => {
    vi.useFakeTimers();
    resetStandIn();
    return () => { vi.useRealTimers(); };
});

it('sees once that a lesson is changed, and then listens no more', () => {
    const following = followFirstSteps();
    const change = (uri: URI, ...contentChanges: object[]): void => fire('change', { document: { uri }, contentChanges });
    change(kit, {});
    change(lesson);
    expect(steps()).toEqual([]);
    change(lesson, {});
    change(lesson, {});
    expect(steps()).toEqual(['written']);
    expect(listeners.get('change')!.size).toBe(0);
    following.dispose();
});

it('sees that a problem that stood for a while is gone, wherever it was', () => {
    const following = followFirstSteps();
    tell(kit, 1);
    tell(lesson, 0, 2, 3);
    vi.runAllTimers();
    tell(lesson, 0, 0);
    expect(steps()).toEqual([]);
    tell(kit);
    expect(steps()).toEqual([]);
    tell(lesson, 2);
    expect(steps()).toEqual(['mended']);
    expect(listeners.get('problems')!.size).toBe(0);
    following.dispose();
});

it('counts no problem that comes and goes while somebody types', () => {
    const following = followFirstSteps();
    for (let time = 0; time < 3; time++) {
        tell(lesson, 0);
        vi.advanceTimersByTime(500);
        tell(lesson);
    }
    vi.runAllTimers();
    expect(steps()).toEqual([]);
    following.dispose();
});

it('asks for the problems of the files that are told of, and of no other language', () => {
    const following = followFirstSteps();
    tell(page, 0);
    tell(lesson, 0);
    expect(lookedAt).toEqual([lesson.toString()]);
    following.dispose();
});

import { expect, it } from 'vitest';
import { readPageMessage, readState } from '../../extension/preview/messages.js';

it('reads what the page may say', () => {
    for (const message of [{ type: 'ready' }, { type: 'save' }, { type: 'print' }, { type: 'practice', lesson: 'weigh-1' }, { type: 'open', uri: 'file:///a/b.lesson', line: 3 }, { type: 'step', by: -1 }, { type: 'class', name: 'attic' }, { type: 'stay', on: false }, { type: 'view', view: 'term' }, { type: 'view', view: 'changes' }, { type: 'view', view: 'week' }]) {
        expect(readPageMessage(message)).toEqual(message);
    }
});

it('takes nothing else', () => {
    const wrong = [
        undefined, null, 7, 'ready', [], {}, { type: 'run' }, { type: 'practice' }, { type: 'practice', lesson: 7 }, { type: 'open' }, { type: 'open', uri: 3, line: 1 }, { type: 'open', uri: 'file:///a', line: -1 },
        { type: 'open', uri: 'file:///a', line: 1.5 }, { type: 'open', uri: 'file:///a', line: Number.NaN }, { type: 'open', uri: 'x'.repeat(5000), line: 1 },
        { type: 'step', by: 2 }, { type: 'class', name: {} }, { type: 'stay', on: 'yes' }, { type: 'view', view: 'year' }, { type: 'view' }
    ];
    for (const message of wrong) expect(readPageMessage(message)).toBeUndefined();
});

it('carries nothing along that was not asked for', () => {
    expect(readPageMessage({ type: 'open', uri: 'file:///a', line: 1, command: 'x' })).toEqual({ type: 'open', uri: 'file:///a', line: 1 });
});

it('trusts a kept state only as far as it has the right shape', () => {
    expect(readState({ view: 'term', week: 3, class: 'attic', cursor: { uri: 'file:///a', line: 0 }, scroll: 40 })).toEqual({ view: 'term', week: 3, class: 'attic', cursor: { uri: 'file:///a', line: 0 } });
    expect(readState({ view: 'changes' })).toEqual({ view: 'changes' });
    for (const state of [undefined, null, 'x', { view: 'toString' }, { view: 'week', week: 0, class: 4, cursor: { uri: 'a', line: -2 } }]) expect(readState(state)).toEqual({});
});

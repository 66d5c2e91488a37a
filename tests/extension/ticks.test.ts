import { describe, expect, it } from 'vitest';
import { Ticks, type GatheringWeek } from '../../extension/trees/ticks.js';

function memory(first?: unknown): { kept: () => unknown; get(key: string): unknown; update(key: string, value: unknown): Promise<void> } {
    const values = new Map<string, unknown>([['haversack.gathered', first]]);
    return {
        kept: () => values.get('haversack.gathered'),
        get: key => structuredClone(values.get(key)),
        update: (key, value) => { values.set(key, structuredClone(value)); return Promise.resolve(); }
    };
}

const week: GatheringWeek = { programme: 'file:///co-op', class: 'harbour', from: '2026-09-14', week: 1 };
const sand = { name: 'sand', amount: '350 g' };
const cubes = { name: 'gram-cube', amount: '80' };
const day = '2026-09-12';
const ticked = (thing: { name: string; amount: string }): { name: string; amount: string; gathered: boolean } => ({ ...thing, gathered: true });

describe('ticks', () => {
    it('are there again for whoever opens the workspace anew', async () => {
        const workspace = memory();
        await new Ticks(workspace).set(week, [ticked(sand)], day);
        const again = new Ticks(workspace);
        expect(again.standing(week, sand)).toEqual({ gathered: true });
        expect(again.standing(week, cubes)).toEqual({ gathered: false });
        expect(again.gathered(week, [sand, cubes])).toBe(1);
    });

    it('go when they are unticked, one or all', async () => {
        const workspace = memory();
        const ticks = new Ticks(workspace);
        await ticks.set(week, [ticked(sand), ticked(cubes)], day);
        await ticks.set(week, [{ ...sand, gathered: false }], day);
        expect([ticks.standing(week, sand).gathered, ticks.standing(week, cubes).gathered]).toEqual([false, true]);
        await ticks.untickAll(week, day);
        expect(workspace.kept()).toEqual([]);
    });

    it('count no more when the amount has changed, and say what it was; ticked again they do', async () => {
        const ticks = new Ticks(memory());
        await ticks.set(week, [ticked(cubes)], day);
        const more = { ...cubes, amount: '100' };
        expect(ticks.standing(week, more)).toEqual({ gathered: false, was: '80' });
        expect(ticks.gathered(week, [more])).toBe(0);
        await ticks.set(week, [ticked(more)], day);
        expect(ticks.standing(week, more)).toEqual({ gathered: true });
        expect(ticks.standing(week, cubes)).toEqual({ gathered: false, was: '100' });
    });

    it('are those of one class of one programme in one week', async () => {
        const ticks = new Ticks(memory());
        await ticks.set(week, [ticked(sand)], day);
        for (const other of [{ ...week, class: 'millpond' }, { ...week, programme: 'file:///other' }, { ...week, from: '2026-09-21' }, { ...week, from: undefined }, { ...week, class: undefined }]) {
            expect(ticks.standing(other, sand)).toEqual({ gathered: false });
        }
    });

    it('stay with their week when its first meeting falls on another day, or it gets another number', async () => {
        const ticks = new Ticks(memory());
        // 14 September 2026 is a Monday, 20 September a Sunday.
        await ticks.set(week, [ticked(sand)], day);
        for (const from of ['2026-09-15', '2026-09-20']) expect(ticks.standing({ ...week, from, week: 4 }, sand).gathered).toBe(true);
        for (const from of ['2026-09-13', '2026-09-21']) expect(ticks.standing({ ...week, from }, sand).gathered).toBe(false);
    });

    it('of weeks without dates go by their number', async () => {
        const ticks = new Ticks(memory());
        const plain = { programme: 'p', class: 'c', week: 3 };
        await ticks.set(plain, [ticked(sand)], day);
        expect([ticks.standing(plain, sand).gathered, ticks.standing({ ...plain, week: 4 }, sand).gathered]).toEqual([true, false]);
    });

    it('of weeks long past are forgotten, and no more than a hundred weeks are kept', async () => {
        const workspace = memory();
        const ticks = new Ticks(workspace);
        await ticks.set(week, [ticked(sand)], day);
        await ticks.set({ ...week, from: '2026-11-09' }, [ticked(sand)], '2026-11-13');
        expect(ticks.standing(week, sand).gathered).toBe(true);
        await ticks.set({ ...week, from: '2026-11-16' }, [ticked(sand)], '2026-11-14');
        expect(ticks.standing(week, sand).gathered).toBe(false);
        expect(ticks.standing({ ...week, from: '2026-11-09' }, sand).gathered).toBe(true);
        // But what somebody ticks just now is not.
        await ticks.set(week, [ticked(sand)], '2027-06-01');
        expect(ticks.standing(week, sand).gathered).toBe(true);
        for (let number = 1; number <= 120; number++) await ticks.set({ programme: 'p', week: number }, [ticked(sand)], day);
        expect((workspace.kept() as unknown[]).length).toBe(100);
        expect(ticks.standing({ programme: 'p', week: 120 }, sand).gathered).toBe(true);
        expect(ticks.standing({ programme: 'p', week: 20 }, sand).gathered).toBe(false);
    });

    it.each([['nothing', undefined], ['text', 'x'], ['another shape', [{ programme: 1 }, null, { programme: 'file:///co-op', amounts: { sand: 3 } }]], ['an object', {}]])('begin anew where the memory holds %s', async (_, kept) => {
        const ticks = new Ticks(memory(kept));
        expect(ticks.standing(week, sand)).toEqual({ gathered: false });
        await ticks.set(week, [ticked(sand)], day);
        expect(ticks.standing(week, sand).gathered).toBe(true);
    });

    it('tell a thing called like a part of every object apart', async () => {
        const ticks = new Ticks(memory());
        const odd = { name: 'constructor', amount: '1' };
        await ticks.set(week, [ticked(sand)], day);
        expect(ticks.standing(week, odd)).toEqual({ gathered: false });
        await ticks.set(week, [ticked({ name: '__proto__', amount: '2' })], day);
        expect(ticks.standing(week, { name: '__proto__', amount: '2' }).gathered).toBe(true);
    });
});

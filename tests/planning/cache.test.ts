import { describe, expect, test } from 'vitest';
import { gatherProgramme } from '@haversack/language/sheets/programme';
import { newPlanningCache, type PlanningCache } from '../../server/planning/cache.js';
import { planSchedule } from '../../server/planning/schedule.js';
import { planWeek } from '../../server/planning/week.js';
import { consumable, course, file, game, held, kit, klass, lesson, measured, meets, mention, need, on, part, range, reusable } from './sheets.js';

describe('kept demands', () => {
    const taught = lesson('l', [need('cube or button', '20', 'pair')], [part('game', 'grocer')]);
    // One sheet each, so that a change of one other sheet is the only change.
    const year = course('c', ['l']);
    const own = [reusable('cube'), reusable('button'), game('grocer', [need('cube', '1', 'pair')])] as const;
    const of = (...rest: Parameters<typeof file>) => gatherProgramme([file(taught, year, ...rest)]);
    const base = () => own;
    const amounts = (cache: ReturnType<typeof newPlanningCache>, ...rest: Parameters<typeof file>) =>
        planWeek(of(...rest), { week: 1 }, { cache }).fetch.flatMap(g => g.things).map(t => [t.name, t.amount.text]);

    test('the same sheets are not counted again', () => {
        const cache = newPlanningCache();
        const sheets = of(...base(), klass('k', 'c', 7));
        planWeek(sheets, { week: 1 }, { cache });
        const [kept] = cache.demands.get(taught)?.values() ?? [];
        planWeek(sheets, { week: 1 }, { cache });
        const [again] = cache.demands.get(taught)?.values() ?? [];
        expect(kept?.demand).toBeDefined();
        expect(again?.demand).toBe(kept?.demand);
    });
    test('but again when anything they hang on has changed: people, things, games, cupboard', () => {
        const cache = newPlanningCache();
        const k7 = klass('k', 'c', 7);
        expect(amounts(cache, ...base(), k7)).toEqual([['cube', '80']]);
        expect(amounts(cache, ...base(), klass('k', 'c', 4))).toEqual([['cube', '40']]);
        expect(amounts(cache, ...base(), klass('k', 'c', 7, { onHand: [held('button', '80')] }))).toEqual([['button', '80'], ['cube', '4']]);
        const kits = [{ kit: mention('box'), count: 1, at: range() }];
        const withKit = klass('k', 'c', 7, { kits });
        expect(amounts(cache, ...base(), withKit, kit('box', ['cube', '90']))).toEqual([['cube', '80']]);
        expect(amounts(cache, ...base(), withKit, kit('box', ['button', '90']))).toEqual([['button', '80'], ['cube', '4']]);
        expect(amounts(cache, reusable('cube'), reusable('button'), game('grocer', [need('cube', '90', 'class')]), k7)).toEqual([['cube', '90']]);
        expect(amounts(cache, consumable('cube'), reusable('button'), game('grocer', [need('cube', '1', 'pair')]), k7)).toEqual([['cube', '84']]);
        expect(amounts(cache, reusable('button'), k7)).toEqual([['button', '80']]);
        expect(amounts(cache, ...base(), k7)).toEqual([['cube', '80']]);
    });
    test('ever new classes do not fill it', () => {
        const cache = newPlanningCache();
        for (let n = 1; n <= 50; n++) amounts(cache, ...base(), klass('k', 'c', n));
        expect(cache.demands.get(taught)?.size).toBeLessThanOrEqual(6);
    });
});

test('a week out of 1,000 lessons tells the reasons of its own lessons only, and none again; the cache does not change it', () => {
    const things = Array.from({ length: 60 }, (_, i) => (i % 2 ? reusable(`thing-${i}`) : consumable(`thing-${i}`, measured('g'))));
    const lessons = Array.from({ length: 1000 }, (_, i) => lesson(`l${i}`, [0, 7, 14, 21, 28].map(step => need(`thing-${(i + step) % 60}`, (i + step) % 2 ? '3' : '30 g', 'pair'))));
    const sheets = gatherProgramme([file(...things, ...lessons, course('c', lessons.map(l => l.name)),
        klass('k', 'c', 12, { starts: on('2026-09-07'), meets: meets('mon', 'tue', 'thu', 'fri'), kits: [{ kit: mention('none'), count: 1, at: range() }],
            onHand: things.map(t => held(t.name, t.measured ? '1 kg' : '5')) }))]);
    const schedule = planSchedule(sheets);
    let computed = 0;
    class Counting<K extends object, V> extends WeakMap<K, V> {
        override set(key: K, value: V): this {
            computed += 1;
            return super.set(key, value);
        }
    }
    const cache: PlanningCache = { demands: new Counting() };
    const cold = planWeek(sheets, { week: 200 }, { schedule, cache });
    // The four lessons of the week and of the next; the term behind them is in numbers.
    expect(computed).toBe(8);
    computed = 0;
    expect(planWeek(sheets, { week: 200 }, { schedule, cache })).toEqual(cold);
    expect(computed).toBe(0);
    expect(cold.weeks).toBe(250);
});

/** The term in numbers and the week with its reasons are counted apart; over both examples every amount of one is that of the other. */
import { resolve } from 'node:path';
import Fraction from 'fraction.js';
import { expect, test } from 'vitest';
import { newPlanningCache } from '../../server/planning/cache.js';
import { Plan } from '../../server/planning/plan.js';
import { planSupplies } from '../../server/planning/supplies/plan-supplies.js';
import { planWeek } from '../../server/planning/week.js';
import { readProgramme } from '../../server/cli/read-programme.js';

test.each(['first-steps', 'year'])('%s', async name => {
    const { view: { programme } } = await readProgramme(resolve('examples', name));
    const cache = newPlanningCache();
    let compared = 0;
    for (const group of programme.classes.keys()) {
        const wanted = { class: group };
        const plan = new Plan(programme, wanted, cache);
        const supplies = planSupplies(programme, wanted, { cache });
        const shared = plan.term.cupboard.members.length > 1;
        for (const { number } of plan.schedule.weeks) {
            const brief = planWeek(programme, { ...wanted, week: number }, { cache });
            const slot = plan.term.cupboard.slotOfWeek(number);
            for (const { thing, value, plain, optional, measure } of plan.needs(number).values()) {
                const ledger = plan.term.ledger(thing.name)!;
                const period = ledger.periods.findIndex(p => p.slot === slot);
                const own = plan.term.plan.uses.get(thing.name)!.filter(({ at }) => at.week.number === number);
                const amounts = own.map(({ demand }) => new Fraction(demand.n, demand.d));
                const lean = ledger.handedBack ? amounts.reduce((a, b) => (b.gt(a) ? b : a)) : amounts.reduce((a, b) => a.add(b));
                expect([thing.name, number, ledger.measure.is, lean.toFraction()]).toEqual([thing.name, number, measure.is, plain.toFraction()]);
                if (!shared) {
                    expect(new Fraction(ledger.record.gross[period]!, ledger.scale).toFraction()).toBe(value.toFraction());
                    expect(ledger.periods[period]!.optional).toBe(optional);
                }
                compared++;
            }
            expect(brief.buy.flatMap(b => b.packsToBuy ?? []).map(p => p.text).sort())
                .toEqual(supplies.orders.filter(o => o.week === number && plan.needs(number).has(o.name)).flatMap(o => o.packs).map(p => p.text).sort());
        }
        expect(JSON.parse(JSON.stringify(supplies))).toEqual(JSON.parse(JSON.stringify(planSupplies(programme, wanted))));
    }
    expect(compared).toBeGreaterThan(10);
});

import type { Fix } from '@haversack/language/checks/check';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import type { MaterialSheet } from '@haversack/language/sheets/sheet';
import { isCertain } from './certain.js';
import { dayInWords } from './days.js';
import { firstNeed, type NeedLine } from './need-lines.js';
import type { PlanCheck, PlanFinding } from './plan-check.js';
import { isWarnedShort } from './short-at-meeting.js';
import { noteOrder, useStandIn } from './supply-fixes.js';
import type { ClassTerm } from './term.js';
import type { LateOrder, TermSupplies } from './term-supplies.js';
import { amountOf } from './words.js';

const programme = 'material sand\n  consumable\n  measured in g\n  pack of 500 g\n  arrives in 10 days\n\nlesson weigh-1\n  activity pour 15 min\n    materials\n      sand 20 g per pair\n    do: Pour the {sand}.\n\ncourse measuring\n  unit weighing\n    weigh-1\n\nclass harbour "Harbour co-op"\n  teaches measuring\n  learners 7\n';

export const orderTooLate: PlanCheck = {
    code: 'order-too-late', severity: 'warning', title: 'A thing that can no longer be ordered in time', on: '2026-09-03',
    explains: 'What is at hand is not enough for this lesson, and an order that goes out today comes after it: `arrives in` of the material says how long one takes. If it is ordered already, note that under `on order` of the class. Otherwise find it nearer by, use a stand-in, or teach the lesson later.',
    wrong: `${programme}  starts 2026-09-07\n  meets mon`,
    right: `${programme}  on order\n    sand 500 g arriving 2026-09-04\n  starts 2026-09-07\n  meets mon`,
    *find(view, term) {
        const told = new Set<string>();
        for (const { supplies } of term.classes) {
            const sharing = term.classes.filter(({ group }) => supplies.cupboard.includes(group.name));
            for (const order of supplies.late) {
                const key = JSON.stringify([supplies.cupboard, order.name]);
                if (told.has(key) || sharing.some(own => isWarnedShort(order.name, own)) || !isCertain(order.name, supplies.cupboard, view)) continue;
                told.add(key);
                yield findingOf(order, sharing, view, term.today);
            }
        }
    }
};

/** At the first line that asks for it, for the class that needs it first of those that share the cupboard. */
function findingOf({ name, neededBy, net, title, when, bought }: LateOrder, sharing: readonly ClassTerm[], view: ProgrammeView, today: string): PlanFinding {
    const asking = sharing.map(own => ({ own, line: firstNeed(name, neededBy, own) }));
    const { own: { group, supplies }, line } = asking.find(one => one.line?.on === neededBy) ?? asking.find(one => one.line) ?? asking[0]!;
    const material = view.programme.materials.get(name);
    return {
        uri: line?.uri ?? group.uri, at: line?.need.at ?? group.at,
        message: `${amountOf(net, { title, name })} for ${group.title} can no longer be ordered in time: ${when}, and today is ${dayInWords(today)}.`,
        related: material?.arrives && [{ message: 'How long an order takes', place: { uri: material.uri, range: material.arrives.at } }],
        fixes: [noteOrder(group, name, bought, neededBy), ...(line && material ? standInsThere(line, material, supplies) : [])]
    };
}

function standInsThere(line: NeedLine, material: MaterialSheet, supplies: TermSupplies): Fix[] {
    return material.standIns.filter(({ thing }) => supplies.holds(thing.name)).flatMap(({ thing }) => useStandIn(line, thing.name, material));
}

import { isCertain } from './certain.js';
import { needAt } from './need-lines.js';
import type { PlanCheck } from './plan-check.js';
import { countKits, noteOnHand, noteOrder, useStandIn } from './supply-fixes.js';
import type { ClassTerm } from './term.js';
import { amountOf, moreMeetings } from './words.js';

const things = 'material gram-cube "Gram cubes"\n  reusable\n\nkit weighing-box\n  holds\n    gram-cube 20\n\nlesson weigh-1\n  activity two-bags 15 min\n    materials\n      gram-cube 20 per pair\n    do: Fill a bag with {gram-cube}s.\n\ncourse measuring\n  unit weighing\n    weigh-1\n\nclass harbour "Harbour co-op"\n  teaches measuring\n  learners 7\n  starts 2026-09-14\n  meets mon\n';

export const shortAtMeeting: PlanCheck = {
    code: 'short-at-meeting', severity: 'warning', title: 'Too few of a thing at a meeting', on: '2026-09-07',
    explains: 'The kits and the cupboard of the class hold fewer of this reusable thing than the meeting needs at once, and no order can mend that in time: none can be placed, or it would come too late. Say what there is (`kits`, `on hand`, `on order` of the class), let a stand-in do as well, or ask for fewer.',
    wrong: `${things}  kits weighing-box 3`,
    right: `${things}  kits weighing-box 4`,
    *find(view, term) {
        for (const own of term.classes) {
            for (const { first, meetings } of own.supplies.shortages) {
                const { name } = first;
                if (!isCertain(name, own.supplies.cupboard, view)) continue;
                const asking = first.lessons[0];
                const place = asking?.place ?? first.place;
                const line = asking && needAt(place, name, asking.name, own);
                const material = view.programme.materials.get(name);
                const standIns = first.standIns.filter(({ enough }) => enough);
                yield {
                    uri: place.uri, at: line?.need.at ?? place.range,
                    message: `${own.group.title} is short of ${amountOf(first.missing, { title: first.title, name })} on ${first.meeting}: ${first.needed.text} needed, ${first.atHand.text} at hand.${moreMeetings(meetings - 1)}`,
                    related: [{ message: 'What the class has', place: { uri: own.group.uri, range: own.group.at } }],
                    fixes: [
                        ...(line ? standIns.flatMap(standIn => useStandIn(line, standIn.name, material)) : []),
                        ...countKits(own.group, name, first.missing, view),
                        ...noteOnHand(own.group, name, first.missing),
                        ...(first.date === undefined ? [] : [noteOrder(own.group, name, first.missing, first.date)])
                    ]
                };
            }
        }
    }
};

/** True where a thing is told of here, so that nothing else speaks of its order too. */
export function isWarnedShort(name: string, { supplies }: ClassTerm): boolean {
    return supplies.shortages.some(({ first }) => first.name === name);
}

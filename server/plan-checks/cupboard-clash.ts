import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import type { ClassSheet } from '@haversack/language/sheets/sheet';
import { isCertain } from './certain.js';
import type { PlanCheck, PlanFinding } from './plan-check.js';
import type { ClashFigures } from '../planning/supply-figures.js';
import { amountOf, moreMeetings } from './words.js';
import { listing } from '@haversack/language/facts/wording';
import { noteOnHand } from './supply-fixes.js';

const things = 'material gram-cube "Gram cubes"\n  reusable\n\nlesson weigh-1\n  activity two-bags 15 min\n    materials\n      gram-cube 20 per pair\n    do: Fill a bag with {gram-cube}s.\n\ncourse measuring\n  unit weighing\n    weigh-1\n\nclass harbour "Harbour co-op"\n  teaches measuring\n  learners 2\n  on hand\n    gram-cube 30\n  starts 2026-09-14\n  meets mon\n  shares cupboard with millpond\n\nclass millpond "Millpond co-op"\n  teaches measuring\n  learners 2\n';

export const cupboardClash: PlanCheck = {
    code: 'cupboard-clash', severity: 'warning', title: 'Two classes that need the same things on one day', on: '2026-09-07',
    explains: 'Classes that share a cupboard meet on one day, and together they need more of a thing than it holds, though it is enough for each of them alone. Let one of them teach the lesson on another day (`fixed`), meet on other weekdays, or note what there is under `on hand`.',
    wrong: `${things}  starts 2026-09-14\n  meets mon`,
    right: `${things}  starts 2026-09-14\n  meets tue`,
    *find(view, term) {
        const told = new Map<string, { finding: PlanFinding; dates: Set<string> }>();
        for (const own of term.classes) {
            for (const clash of own.supplies.clashes) {
                if (!isCertain(clash.name, own.supplies.cupboard, view)) continue;
                const key = JSON.stringify([clash.name, ...clash.classes.map(({ name }) => name).sort()]);
                const found = told.get(key);
                if (found) found.dates.add(clash.date);
                else told.set(key, { finding: findingOf(clash, own.group, view), dates: new Set([clash.date]) });
            }
        }
        for (const { finding, dates } of told.values()) yield { ...finding, message: finding.message + moreMeetings(dates.size - 1) };
    }
};

/** At the line that shares the cupboard, wherever of the classes it stands. */
function findingOf(clash: ClashFigures, own: ClassSheet, { programme }: ProgrammeView): PlanFinding {
    const names = new Set(clash.classes.map(({ name }) => name));
    const groups = [own, ...programme.classes.values()].filter(({ name }) => names.has(name));
    const sharing = groups.find(({ sharesWith }) => sharesWith.some(({ name }) => names.has(name))) ?? own;
    const mention = sharing.sharesWith.find(({ name }) => names.has(name));
    return {
        uri: sharing.uri, at: mention?.at ?? sharing.at,
        message: `${listing(clash.classes.map(({ title }) => title))} share a cupboard and both meet on ${clash.meeting}: together they need ${amountOf(clash.together, clash)}, and it holds ${clash.atHand.text}.`,
        related: clash.classes.map(({ title, needed, place }) => ({ message: `${title} needs ${needed.text}`, place })),
        fixes: noteOnHand(sharing, clash.name, clash.missing)
    };
}

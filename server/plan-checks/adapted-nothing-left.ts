import { removeLinesOf } from '@haversack/language/checks/fixes';
import { allLeftOut } from '../planning/nothing-taught.js';
import type { PlanCheck } from './plan-check.js';

export const adaptedNothingLeft: PlanCheck = {
    code: 'adapted-nothing-left', severity: 'warning', on: '2026-09-07', title: 'Changes that leave out every lesson',
    explains: 'The changes of a class leave out the whole course, one lesson after another, so there is nothing to plan and nothing to buy. Take a line back, bring in other lessons with `insert`, or teach the class another course.',
    wrong: 'course measuring\n  unit weighing\n    weigh-1\n\nadaptation shorter of measuring\n  skip lesson weigh-1\n\nlesson weigh-1',
    right: 'course measuring\n  unit weighing\n    weigh-1\n    weigh-2\n\nadaptation shorter of measuring\n  skip lesson weigh-1\n\nlesson weigh-1\n\nlesson weigh-2',
    *find(_view, { adapted }) {
        const told = new Set<unknown>();
        for (const { changes: { stages: { last } } } of adapted.all()) {
            const says = allLeftOut(last);
            const leaving = [...last.leftOut.values()];
            const { adaptation, change } = last.changes.filter(one => leaving.includes(one)).at(-1) ?? {};
            if (says === undefined || !adaptation || !change || told.has(change)) continue;
            told.add(change);
            yield { uri: adaptation.uri, at: change.head, message: `${says}, so nothing is taught.`, fixes: [{ title: 'Remove this change', edits: [removeLinesOf(adaptation.uri, change.at)] }] };
        }
    }
};

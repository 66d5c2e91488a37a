import type { Problem } from '@haversack/language/checks/check';
import type { Programme } from '@haversack/language/sheets/programme';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import { planProblems } from '../../server/plan-checks/plan-problems.js';
import { termOf } from '../../server/plan-checks/plan-term.js';
import type { Term } from '../../server/plan-checks/term.js';
import { toldOnce } from '../../server/plan-checks/told-once.js';
import * as language from '../language/fixture.js';

/** All problems of a programme on a day: those of the language and those of the plan. `former`: the text of a former edition. */
export async function problemsOn(files: language.Files, today: string, former?: string): Promise<Problem[]> {
    const before = former === undefined ? undefined : { programme: await programmeIn(language.readFixture(former).files), memo: new WeakMap() };
    const problems = await language.problemsIn(files);
    const view = language.lastView();
    return toldOnce(problems, foundIn(view, termOf(view, today, before && { of: () => before })));
}

export function foundIn(view: ProgrammeView, term: Term): Problem[] {
    return [...planProblems(view, term).values()].flat();
}

async function programmeIn(files: language.Files): Promise<Programme> {
    await language.problemsIn(files);
    return language.lastView().programme;
}

/** All problems on a day are those that are marked in the text. `former`: the programme in a former edition. */
export function check(text: string, today: string, former?: string): Promise<Problem[]> {
    return language.check(text, files => problemsOn(files, today, former));
}

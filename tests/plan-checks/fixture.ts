import type { Problem } from '@haversack/language/checks/check';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import { planProblems } from '../../server/plan-checks/plan-problems.js';
import { termOf } from '../../server/plan-checks/plan-term.js';
import type { Term } from '../../server/plan-checks/term.js';
import * as language from '../language/fixture.js';

/** All problems of a programme on a day: those of the language and those of the plan. */
export async function problemsOn(files: language.Files, today: string): Promise<Problem[]> {
    const problems = await language.problemsIn(files);
    const view = language.lastView();
    return [...problems, ...foundIn(view, termOf(view, today))];
}

export function foundIn(view: ProgrammeView, term: Term): Problem[] {
    return [...planProblems(view, term).values()].flat();
}

/** All problems on a day are those that are marked in the text. */
export function check(text: string, today: string): Promise<Problem[]> {
    return language.check(text, files => problemsOn(files, today));
}

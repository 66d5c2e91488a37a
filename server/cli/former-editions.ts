import type { FormerEdition, FormerEditions } from '../plan-checks/term.js';
import { formerEdition } from '../history/former-edition.js';
import type { ReadProgramme } from './read-programme.js';

/** The former editions that adaptations of a programme were written against, from the git history of its folder, where there is one. */
export async function formerEditionsFor({ root, view: { programme } }: ReadProgramme): Promise<FormerEditions> {
    const found = new Map<string, FormerEdition>();
    const key = (course: string, edition: string): string => JSON.stringify([course, edition]);
    for (const { of, edition } of programme.adaptations.values()) {
        const course = of && programme.courses.get(of.name);
        if (!course?.edition || edition === undefined || edition === course.edition || found.has(key(course.name, edition))) continue;
        const former = await formerEdition(root, { course: course.name, edition });
        if (former) found.set(key(course.name, edition), { programme: former, memo: new WeakMap() });
    }
    return { of: (course, edition) => found.get(key(course.name, edition)) };
}

import type { Adapted } from '@haversack/language/adapting/adapted';
import { markOf } from '@haversack/language/adapting/working-course';
import { changeFigures } from './change-figures.js';
import { namesInProse } from './names.js';
import type { AdaptedTerm } from './term-figures.js';
import { titled } from './titled.js';

/** What a class is taught otherwise than its course has it: lessons left out, and those that are changed as a whole. */
export function adaptedTerm({ programme, base, course, changes, leftOut }: Adapted): AdaptedTerm {
    const sheets = new Map(changes.map(({ adaptation }) => [adaptation.name, adaptation]));
    return {
        adaptations: [...sheets.values()].map(titled),
        leftOut: namesOf(base).flatMap(name => {
            const change = leftOut.get(name);
            const lesson = programme.lessons.get(name);
            return change && lesson ? [{ ...titled(lesson), change: changeFigures(markOf(change, change.says)) }] : [];
        }),
        lessons: namesOf(course).flatMap(name => {
            const lesson = programme.lessons.get(name);
            return lesson?.adapted?.length ? [{ ...titled(lesson), changes: lesson.adapted.map(changeFigures) }] : [];
        }),
        names: namesInProse(programme, changes.map(({ change }) => change.because))
    };
}

function namesOf({ units }: Adapted['course']): string[] {
    return [...new Set(units.flatMap(({ lessons }) => lessons.map(({ name }) => name)))];
}

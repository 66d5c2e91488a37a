import type { ClassSheet, CourseSheet, Range } from '../sheets/sheet.js';
import type { Programme } from '../sheets/programme.js';

/** The one word after `present` that changes anything. */
export const underThrees = 'under-threes';

/** Who is youngest where a class is taught. */
export interface Room {
    group: ClassSheet;
    course: CourseSheet;
    /** In years; 0 stands for any age under three. */
    youngest: number;
    who: string;
    at: Range;
}

/** Absent where the class is taught no known course, or nobody has said how old the children are. */
export function roomOf(group: ClassSheet, programme: Programme): Room | undefined {
    const course = group.teaches && programme.courses.get(group.teaches.name);
    if (!course) return undefined;
    const small = group.present.find(({ who }) => who === underThrees);
    if (small) return { group, course, youngest: 0, who: 'Children under three are in the room', at: small.at };
    const ages = group.ages ?? course.ages;
    return ages && { group, course, youngest: ages.from, who: `The youngest learners are ${ages.from}`, at: group.ages?.at ?? group.at };
}

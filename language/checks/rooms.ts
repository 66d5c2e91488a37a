import { underThrees, youngestOf } from '../facts/caution-ages.js';
import type { ClassSheet, CourseSheet, Range } from '../sheets/sheet.js';
import type { Programme } from '../sheets/programme.js';

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
    const youngest = youngestOf(group.present.map(({ who }) => who), group.ages ?? course.ages);
    return youngest && { group, course, youngest: youngest.years, who: youngest.who, at: small?.at ?? group.ages?.at ?? group.at };
}

import { adaptedFor } from '@haversack/language/adapting/adapt-course';
import type { Programme } from '@haversack/language/sheets/programme';
import type { Adapted } from '@haversack/language/adapting/adapted';
import { chooseClass, type Wanted } from './audience.js';
import { listing, quoted } from '@haversack/language/facts/wording';

/** Why there is no lesson to plan, without a full stop: "The adaptation “Shorter” leaves out all 6 lessons". */
export function nothingTaught(programme: Programme, wanted: Wanted): string {
    const { class: group, course } = chooseClass(programme, wanted);
    const adapted = course && adaptedFor(programme, { class: group?.name, course: course.name });
    return (adapted && allLeftOut(adapted)) ?? 'No lesson of this programme stands in a course';
}

/** Who leaves out every lesson of a course; undefined where one is taught, or where the course has none. */
export function allLeftOut({ programme, course, leftOut }: Pick<Adapted, 'programme' | 'course' | 'leftOut'>): string | undefined {
    const isTaught = course.units.some(({ lessons }) => lessons.some(({ name }) => programme.lessons.has(name)));
    if (isTaught || leftOut.size === 0) return undefined;
    const titles = [...new Set([...leftOut.values()].map(({ adaptation }) => quoted(adaptation.title)))];
    const what = leftOut.size === 1 ? 'the only lesson' : `all ${leftOut.size} lessons`;
    return titles.length === 1 ? `The adaptation ${titles[0]} leaves out ${what}` : `The adaptations ${listing(titles)} leave out ${what}`;
}

import type { Change, PartMention } from './adaptation-sheet.js';
import type { Mention } from './sheet.js';

/** Lessons of the course that a change needs to be there, in the order of the line; a lesson that it brings is not among them. */
export function lessonsChanged(change: Change): Mention[] {
    switch (change.does) {
        case 'skip lesson': case 'swap lesson': case 'split lesson': case 'retime lesson': case 'add to lesson': return [change.lesson];
        case 'move lesson': return [change.lesson, change.anchor];
        case 'join lessons': return [change.lesson, ...change.others];
        case 'insert lesson': return [change.anchor];
        case 'swap thing': return change.within ? [change.within.lesson] : [];
        case 'insert activity': return [change.anchor.lesson];
        case 'swap activity': return [change.activity.lesson];
        default: return partsNamed(change).map(({ lesson }) => lesson);
    }
}

/** Lessons that a change brings into the course. */
export function lessonsBrought(change: Change): Mention[] {
    return change.does === 'insert lesson' ? [change.lesson] : change.does === 'swap lesson' ? [change.forLesson] : [];
}

/** Parts of lessons that a change names, in the order of the line. */
export function partsNamed(change: Change): PartMention[] {
    switch (change.does) {
        case 'skip activity': case 'split activity': case 'retime activity': case 'add to activity': return [change.activity];
        case 'swap activity': return [change.activity, change.forActivity];
        case 'move activity': case 'insert activity': return [change.activity, change.anchor];
        case 'join activities': return [change.activity, ...change.others];
        default: return [];
    }
}

import type { ClassSheet, Held } from '@haversack/language/sheets/sheet';
import type { EditionGroup } from '../edition-figures.js';
import { listing, quoted } from '@haversack/language/facts/wording';
import type { Matched } from './matched.js';
import { placeIn } from './plain.js';
import { amountWritten, comings, difference, group, instead } from './words.js';

/** What is said of the class itself: its term hangs on these as much as on the course. What happened on a day (the log) is no part of an edition. */
export function classDifferences(matched: Matched, old: ClassSheet | undefined, now: ClassSheet | undefined): EditionGroup[] {
    if (!old || !now || old === now) return [];
    const sides = { old: placeIn(old.uri, old.at), new: placeIn(now.uri, now.at) };
    const title = matched.titleIn('new');
    const [before, after] = [
        factsOf(old, { thing: name => title(matched.newThing(name)), lesson: name => title(matched.newLesson(name)), course: name => courseTitle(matched, matched.newCourse(name)), group: name => classTitle(matched, name) }),
        factsOf(now, { thing: title, lesson: title, course: name => courseTitle(matched, name), group: name => classTitle(matched, name) })
    ];
    const differences = Object.keys(after).flatMap(what => {
        const [was, is] = [before[what]!, after[what]!];
        const { gone, added } = comings(was, is, one => one, one => one);
        const told = gone.length + added.length === 0 ? undefined
            : instead(gone.length > 0 ? listing(gone) : undefined, added.length > 0 ? listing(added) : undefined);
        return told === undefined ? [] : [difference('class', `${what}: ${told}`, sides)];
    });
    return group({ title: now.title, ...sides, differences });
}

function courseTitle({ old, now }: Matched, name: string): string {
    return (now.courses.get(name) ?? old.courses.get(name))?.title ?? name;
}

function classTitle({ old, now }: Matched, name: string): string {
    return (now.classes.get(name) ?? old.classes.get(name))?.title ?? name;
}

/** How things, lessons, courses and classes are called, by their name on this side: as the new edition calls them. */
type Titles = Record<'thing' | 'lesson' | 'course' | 'group', (name: string) => string>;

function factsOf(group: ClassSheet, { thing, lesson, course, group: other }: Titles): Record<string, string[]> {
    const one = (value: string | number | undefined): string[] => (value === undefined ? [] : [String(value)]);
    const holds = (list: readonly Held[]): string[] => list.map(held => `${thing(held.thing.name)} ${amountWritten(held.amount)}${held.arriving ? ` on ${held.arriving.date}` : ''}`);
    const { ages } = group;
    return {
        'Called': [quoted(group.title)],
        'Taught': group.teaches ? [course(group.teaches.name)] : [],
        'Learners': one(group.learners?.count),
        'Adults': one(group.adults),
        'Ages': ages ? [ages.to === undefined ? `${ages.from} and up` : `${ages.from} to ${ages.to}`] : [],
        'Groups of': one(group.groupsOf),
        'Sections': group.sections.map(({ title, learners, clock }) => [title, learners !== undefined && `${learners} learners`, clock].filter(Boolean).join(', ')),
        'Kits': group.kits.map(({ kit, count }) => `${count} ${thing(kit.name)}`),
        'On hand': holds(group.onHand),
        'On order': holds(group.onOrder),
        'First day': one(group.starts?.date),
        'Last day': one(group.ends?.date),
        'Meets on': group.meets.map(({ day }) => day),
        'Session': group.session ? [`${group.session.minutes} min`] : [],
        'Lessons a meeting': one(group.lessonsPerMeeting?.count),
        'Fixed days': group.fixed.map(fixed => `${lesson(fixed.lesson.name)} on ${fixed.on.date}`),
        'Days off': [...group.off.map(({ from, to }) => (to ? `${from.date} to ${to.date}` : from.date)), ...group.offFrom.map(({ path }) => path)],
        'Catch-up days': group.catchUp ? [`${group.catchUp.days} every ${group.catchUp.everyLessons} lessons`] : [],
        'Also in the room': group.present.map(({ who }) => who),
        'Shares a cupboard with': group.sharesWith.map(({ name }) => other(name))
    };
}

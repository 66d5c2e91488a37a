import { isoOfDay, lastDay, weekdayOf } from '@haversack/language/attachments/day-numbers';
import type { ClassSheet, LessonSheet, Weekday } from '@haversack/language/sheets/sheet';
import { weekdayNames } from '@haversack/language/facts/day-names';
import type { Proposal } from '../schedule-figures.js';
import { counted } from '@haversack/language/facts/wording';
import { courseOrder, type CourseOrder } from './course-order.js';
import type { Run } from './course-run.js';
import { longDay } from './day-words.js';
import type { DaysOff } from './days-off.js';
import { MeetingDays, termInWords } from './meeting-days.js';
import { named } from './run-problems.js';
import type { Pace, Term } from './term.js';

const weekdayWords: readonly Weekday[] = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
/** A later end is looked for within so many days. */
const furtherDays = 3 * 366;

/** A plan that does not hold all its lessons, and how to plan it again with one thing changed. */
export interface Overrun {
    sheet: ClassSheet;
    order: CourseOrder;
    pace: Pace;
    /** With a declared end. */
    term: Term & { end: number };
    off: DaysOff;
    run: Run;
    again: (changed: { order?: CourseOrder; pace?: Pace; term?: Term }) => Run;
}

/** Ways out of an overrun, the most helpful first, each planned again to see what it brings and what it gives up. */
export function proposalsFor(overrun: Overrun): Proposal[] {
    const ways = [anotherWeekday, noCatchUp, moreAtOnce, longerSession, laterEnd, leaveOut];
    return ways.flatMap(way => way(overrun) ?? []).sort((a, b) => b.places - a.places);
}

/** How many lessons that had no day have one now. */
function placedIn(run: Run, overrun: Overrun): number {
    const still = new Set(run.unfinished);
    return overrun.run.unfinished.filter(i => !still.has(i)).length;
}

function gives(places: number, of: number): string {
    if (places < of) return `${places} of the ${of} lessons ${places === 1 ? 'fits' : 'fit'}.`;
    if (of === 1) return 'The lesson fits.';
    return of === 2 ? 'Both lessons fit.' : `All ${of} lessons fit.`;
}

function proposal(overrun: Overrun, run: Run, told: Pick<Proposal, 'title' | 'givesUp' | 'line'>): Proposal | undefined {
    const places = placedIn(run, overrun);
    return places > 0 ? { ...told, gives: gives(places, overrun.run.unfinished.length), places } : undefined;
}

/** The weekday with the most days that are not off; Saturday and Sunday only where the class meets on all others. */
function anotherWeekday(overrun: Overrun): Proposal | undefined {
    const { term, off } = overrun;
    const free = weekdayWords.map((_, i) => i).filter(i => !term.weekdays[i]);
    const candidates = free.some(i => i < 5) ? free.filter(i => i < 5) : free;
    const days = candidates.map(i => new MeetingDays({ ...term, weekdays: weekdayWords.map((_, n) => n === i) }, off).count());
    const weekday = candidates[days.indexOf(Math.max(...days))];
    if (weekday === undefined) return undefined;
    const weekdays = term.weekdays.map((meets, i) => meets || i === weekday);
    const run = overrun.again({ term: { ...term, weekdays } });
    const name = `${weekdayNames[weekday]}s`;
    const used = run.days.filter(d => weekdayOf(d.day) === weekday).length;
    return proposal(overrun, run, {
        title: `Meet on ${name} too`,
        givesUp: `${counted(used, 'free day')}: the ${name}, ${termInWords(term.start, term.end)}.`,
        line: { head: 'meets', text: `meets ${weekdayWords.filter((_, i) => weekdays[i]).join(', ')}` }
    });
}

function noCatchUp(overrun: Overrun): Proposal | undefined {
    if (!overrun.pace.catchUp) return undefined;
    const free = overrun.run.days.filter(d => d.free === 'catch-up').length;
    return proposal(overrun, overrun.again({ pace: { ...overrun.pace, catchUp: undefined } }), {
        title: 'Keep no days to catch up',
        givesUp: `${free === 1 ? 'The day' : `The ${free} days`} kept free to catch up: what has to be repeated then moves the rest.`,
        line: { head: 'catch-up', text: '' }
    });
}

function moreAtOnce(overrun: Overrun): Proposal | undefined {
    const { pace } = overrun;
    if (pace.session !== undefined && pace.perMeeting === undefined) return undefined;
    const most = (pace.perMeeting ?? 1) + 1;
    const run = overrun.again({ pace: { ...pace, perMeeting: most } });
    const shared = run.days.filter(d => d.taught.length >= most).length;
    return proposal(overrun, run, {
        title: `Teach up to ${most} lessons at a meeting`,
        givesUp: `A meeting for ${most === 2 ? 'each lesson' : `every ${most - 1} lessons`}: ${most} share it on ${counted(shared, 'day')}.`,
        line: { head: 'lessons', text: `lessons ${most} per meeting` }
    });
}

/** As long as the longest lesson that has to be split, so that none is. */
function longerSession(overrun: Overrun): Proposal | undefined {
    const { pace, order } = overrun;
    const { session } = pace;
    if (session === undefined) return undefined;
    const longest = Math.ceil(order.shapes.reduce((most, { whole }) => Math.max(most, whole.minutes), 0));
    if (longest <= session) return undefined;
    const run = overrun.again({ pace: { ...pace, session: longest } });
    return proposal(overrun, run, {
        title: `Meet for ${longest} min instead of ${session}`,
        givesUp: `${longest - session} min more at each of ${counted(run.days.length, 'meeting')}.`,
        line: { head: 'session', text: `session ${longest} min` }
    });
}

function laterEnd(overrun: Overrun): Proposal | undefined {
    const { term } = overrun;
    const run = overrun.again({ term: { ...term, end: undefined, last: Math.min(lastDay, term.end + furtherDays) } });
    const end = run.days.at(-1)?.day;
    if (end === undefined || end <= term.end || run.unfinished.length > 0) return undefined;
    const more = run.days.filter(d => d.day > term.end).length;
    return proposal(overrun, run, {
        title: `End on ${longDay(end)}`,
        givesUp: `${counted(more, 'more meeting')} after ${longDay(term.end)}.`,
        line: { head: 'ends', text: `ends ${isoOfDay(end)}` }
    });
}

/** Leaves out as many lessons as are too many, the last first, where nothing else of the course needs them. */
function leaveOut(overrun: Overrun): Proposal | undefined {
    const { order, run: before } = overrun;
    const out = dispensable(overrun, before.unfinished.length);
    if (out.size === 0) return undefined;
    const kept = order.lessons.flatMap((lesson, i) => (out.has(i) ? [] : [{ lesson, i }]));
    const run = overrun.again({ order: courseOrder(kept.map(k => k.lesson), order.adapted) });
    const unfinished = new Set(run.unfinished.flatMap(n => kept[n]?.i ?? []));
    const places = before.unfinished.filter(i => !unfinished.has(i)).length;
    if (places === 0) return undefined;
    const lessons = [...out].sort((a, b) => a - b).flatMap(i => order.lessons[i] ?? []);
    return {
        title: `Leave out ${named(lessons)}`, leavesOut: lessons.map(({ name }) => name),
        gives: gives(places, before.unfinished.length), places,
        givesUp: `${counted(lessons.length, 'lesson')}. No lesson follows ${lessons.length === 1 ? 'it' : 'them'}, and ${whyDispensable(lessons)}.`
    };
}

function whyDispensable(lessons: readonly LessonSheet[]): string {
    const one = lessons.length === 1;
    if (lessons.every(l => l.introduces.length + l.practises.length + l.checks.length === 0)) return one ? 'it names no objectives' : 'they name no objectives';
    return `other lessons check what ${one ? 'it teaches' : 'they teach'}`;
}

/** Positions of lessons with a day that nothing follows and whose objectives others introduce and check as well. */
function dispensable({ order, run, sheet }: Overrun, count: number): Set<number> {
    const followed = new Set(order.before.flat());
    const introduced = tally(order.lessons, l => l.introduces.map(m => m.name));
    const checked = tally(order.lessons, l => l.checks.map(m => m.name));
    const special = new Set([...sheet.fixed, ...sheet.log].flatMap(line => order.meant.get(line.lesson.name) ?? []));
    const missing = new Set(run.unfinished);
    const out = new Set<number>();
    for (let i = order.lessons.length - 1; i >= 0 && out.size < count; i--) {
        const lesson = order.lessons[i];
        if (!lesson || missing.has(i) || followed.has(i) || special.has(i) || !standsAlone(lesson.name, order)) continue;
        const own = new Set(lesson.checks.map(m => m.name));
        const introduces = new Set(lesson.introduces.map(m => m.name));
        const objectives = [...own, ...introduces, ...lesson.practises.map(m => m.name)];
        if ([...introduces].some(name => (introduced.get(name) ?? 0) < 2)) continue;
        if (objectives.some(name => (checked.get(name) ?? 0) - (own.has(name) ? 1 : 0) < 1)) continue;
        for (const name of own) checked.set(name, (checked.get(name) ?? 0) - 1);
        for (const name of introduces) introduced.set(name, (introduced.get(name) ?? 0) - 1);
        out.add(i);
    }
    return out;
}

/** False for a piece of a lesson, and for lessons that are joined: whoever leaves it out leaves out more. */
function standsAlone(name: string, { adapted, meant }: CourseOrder): boolean {
    return !adapted || (adapted.madeOf.get(name)?.length === 1 && meant.get(name)?.length === 1);
}

/** How many lessons name each. */
function tally(lessons: readonly LessonSheet[], names: (lesson: LessonSheet) => string[]): Map<string, number> {
    const counts = new Map<string, number>();
    for (const lesson of lessons) for (const name of new Set(names(lesson))) counts.set(name, (counts.get(name) ?? 0) + 1);
    return counts;
}

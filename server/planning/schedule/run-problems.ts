import { dayOfIso, isoOfDay } from '@haversack/language/attachments/day-numbers';
import type { ClassSheet, LessonSheet, PartSheet, Place } from '@haversack/language/sheets/sheet';
import type { ScheduleProblem, Unplaced } from '../schedule-figures.js';
import { counted, listing, quoted } from '@haversack/language/facts/wording';
import { leftOutBy, puttingBehind, type CourseOrder } from './course-order.js';
import type { Piece, Run } from './course-run.js';
import { longDay, shortDay } from './day-words.js';
import type { Term } from './term.js';

/** Lessons of one sentence that are told by name. */
const toldLessons = 5;

/** A run of a class's course with all that its problems speak of. */
export interface RunReport {
    sheet: ClassSheet;
    order: CourseOrder;
    run: Run;
    /** For each lesson, its pieces. */
    pieces: readonly (readonly Piece[])[];
    /** Absent where the weeks have no dates. */
    term?: Term;
    session?: number;
}

const placeOf = (lesson: LessonSheet): Place => ({ uri: lesson.uri, range: lesson.at });
const dayOf = ({ run, pieces }: RunReport, position: number): number | undefined => run.days[pieces[position]?.[0]?.meeting ?? -1]?.day;
const lastDayOf = ({ run, pieces }: RunReport, position: number): number | undefined => run.days[pieces[position]?.at(-1)?.meeting ?? -1]?.day;

/** Lessons that wait for each other; they are taught in the order of the course. */
export function circleProblems({ lessons, circles }: CourseOrder): ScheduleProblem[] {
    return circles.flatMap((circle): ScheduleProblem[] => {
        const members = circle.flatMap(i => lessons[i] ?? []);
        const names = new Set(members.map(l => l.name));
        const [first] = members;
        const mention = first?.follows.find(f => names.has(f.name));
        if (!first || !mention) return [];
        const place = { uri: mention.uri ?? first.uri, range: mention.at };
        if (members.length === 1) return [{ kind: 'circle', lesson: first.name, place, message: `${quoted(first.title)} follows itself. Take its own name out of “follows”.` }];
        return [{
            kind: 'circle', lesson: first.name, place,
            message: `${named(members)} wait for each other, so they are taught in the order of the course. Take one of them out of “follows”.`,
            related: members.slice(1, toldLessons).map(l => ({ message: `${quoted(l.title)} follows`, place: { uri: l.uri, range: l.follows.find(f => names.has(f.name))?.at ?? l.at } }))
        }];
    });
}

/** Parts that are longer than the session, each once. */
export function sessionProblems({ sheet, run, pieces, session, term }: RunReport): ScheduleProblem[] {
    if (session === undefined) return [];
    const problems: ScheduleProblem[] = [];
    const told = new Set<PartSheet>();
    for (const own of pieces) {
        for (const { meeting, taught } of own) {
            if (taught.minutes <= session) continue;
            const { lesson } = taught.work;
            const part = lesson.parts[taught.work.parts[taught.from] ?? -1];
            if (!part || told.has(part)) continue;
            told.add(part);
            const day = term && run.days[meeting]?.day;
            problems.push({
                kind: 'session-overrun', lesson: lesson.name, date: day === undefined ? undefined : isoOfDay(day),
                place: { uri: part.uri ?? lesson.uri, range: part.head },
                message: `${quoted(part.title)} in ${quoted(lesson.title)} takes ${taught.minutes} min, but the class ${quoted(sheet.title)} meets for ${session} min${
                    day === undefined ? '' : ` (${shortDay(day)})`}. Make two parts of it, shorten it, or make the session longer.`,
                related: sheet.session && [{ message: `The session of ${quoted(sheet.title)}`, place: { uri: sheet.uri, range: sheet.session.at } }]
            });
        }
    }
    return problems;
}

/** Fixed dates that could not be kept. */
export function missedDates(report: RunReport): ScheduleProblem[] {
    const { sheet, order, run } = report;
    return run.missedDates.flatMap(({ fixed, why }): ScheduleProblem[] => {
        const line = sheet.fixed[fixed.line];
        const lesson = order.lessons[fixed.position];
        if (!line || !lesson) return [];
        const day = dayOf(report, fixed.position);
        const instead = day === undefined ? 'No other day is left for it.' : `It is taught on ${shortDay(day)} instead.`;
        const head = `${quoted(lesson.title)} is fixed on ${longDay(fixed.day)}, but`;
        const problem = { place: { uri: sheet.uri, range: line.at }, lesson: lesson.name, date: line.on.date };
        if (why === 'no-room') {
            return [{ ...problem, kind: 'fixed-no-room', message: `${head} what else is fixed on that day leaves no room for it. ${instead} Choose another day for one of them.` }];
        }
        const waits = (order.before[fixed.position] ?? []).filter(p => (lastDayOf(report, p) ?? Infinity) >= fixed.day || run.unfinished.includes(p));
        const last = waits.map(p => lastDayOf(report, p) ?? -1).reduce((a, b) => Math.max(a, b), -1);
        const until = last < 0 ? 'not been taught by then' : `not been taught by then (${shortDay(last)})`;
        const befores = waits.flatMap(p => order.lessons[p] ?? []);
        return [{
            ...problem, kind: 'fixed-too-early',
            message: `${head} ${named(befores)}, which it follows, ${befores.length === 1 ? 'has' : 'have'} ${until}. ${instead} Choose a later day.`,
            related: befores.map(l => ({ message: `${quoted(l.title)} comes first`, place: placeOf(l) }))
        }];
    });
}

/** Lessons that are taught later than their turn, because what they follow is named later or has a fixed day. */
export function waitProblems(report: RunReport): ScheduleProblem[] {
    const { order, pieces } = report;
    const begun = sequenceOf(report);
    const problems: ScheduleProblem[] = [];
    let earliestAfter = Infinity;
    for (let i = order.lessons.length - 1; i >= 0; i--) {
        const own = begun[i] ?? Infinity;
        if (pieces[i]?.[0]?.taught.why === 'fixed') continue;
        if (own > earliestAfter && own < Infinity) problems.push(...waitProblem(report, i, begun));
        earliestAfter = Math.min(earliestAfter, own);
    }
    return problems.reverse();
}

function waitProblem(report: RunReport, position: number, begun: readonly number[]): ScheduleProblem[] {
    const { sheet, order, pieces, term } = report;
    const lesson = order.lessons[position];
    const last = [...order.before[position] ?? []].sort((a, b) => (begun[b] ?? 0) - (begun[a] ?? 0))[0];
    const before = order.lessons[last ?? -1];
    const mention = lesson?.follows.find(f => f.name === before?.name);
    if (!lesson || !before || !mention || last === undefined) return [];
    const taught = pieces[last]?.[0]?.taught;
    const line = taught?.why === 'fixed' ? sheet.fixed[taught.cause ?? -1] : undefined;
    if (!line && last < position) return [];
    const day = term && dayOf(report, last);
    const head = `${quoted(lesson.title)} waits for ${quoted(before.title)}, which it follows and which`;
    const first = { message: `${quoted(before.title)} comes first`, place: placeOf(before) };
    const change = line ? undefined : puttingBehind(before, lesson, order);
    if (change) return [{ kind: 'waits', lesson: lesson.name, place: change.place, message: `${head} ${quoted(change.adaptation.title)} puts behind it. Move the other one too, or take this change back.`, related: [first] }];
    return [{
        kind: 'waits', lesson: lesson.name, place: { uri: mention.uri ?? lesson.uri, range: mention.at },
        message: line
            ? `${head} is fixed on ${day === undefined ? line.on.date : shortDay(day)}. Fix an earlier day if it should not wait.`
            : `${head} the course names later. Name ${quoted(before.title)} first in the course.`,
        related: [line
            ? { message: 'The fixed day', place: { uri: sheet.uri, range: line.at } }
            : first]
    }];
}

/** The order in which lessons were begun. */
function sequenceOf({ run, order }: RunReport): number[] {
    const sequence: number[] = order.lessons.map(() => Infinity);
    let n = 0;
    for (const { taught } of run.days) {
        for (const { work, why } of taught) {
            if (why !== 'repeat' && why !== 'revisit' && sequence[work.position] === Infinity) sequence[work.position] = n++;
        }
    }
    return sequence;
}

/** Log lines that the plan cannot follow. */
export function logProblems(report: RunReport): ScheduleProblem[] {
    const { sheet, order, run } = report;
    const problems: ScheduleProblem[] = [];
    const said = new Set<string>();
    sheet.log.forEach((line, index) => {
        const day = dayOfIso(line.on.date);
        const { name } = line.lesson;
        if (day === undefined || said.has(`${name} ${day}`)) return;
        said.add(`${name} ${day}`);
        if (run.heard.has(index)) return;
        const position = order.meant.get(name)?.[0] ?? -1;
        const title = quoted(order.lessons[position]?.title ?? name);
        const taughtOn = dayOf(report, position);
        const leaver = leftOutBy(name, order);
        const instead = leaver ? `${leaver} leaves this lesson out` : position < 0 ? 'the class is not taught this lesson' : taughtOn === undefined ? 'this plan has no day for it' : `in this plan it comes on ${shortDay(taughtOn)}`;
        problems.push({
            kind: 'log-not-taught', place: { uri: sheet.uri, range: line.at }, lesson: name, date: line.on.date,
            message: `The log says that ${title} was taught on ${longDay(day)}, but ${instead}. Correct the line, or give the lesson a fixed day.`
        });
    });
    for (const index of run.notRepeated) {
        const line = sheet.log[index];
        if (!line) continue;
        const title = quoted(order.lessons[order.meant.get(line.lesson.name)?.[0] ?? -1]?.title ?? line.lesson.name);
        problems.push({
            kind: 'term-overrun', place: { uri: sheet.uri, range: line.at }, lesson: line.lesson.name, date: line.on.date,
            message: `${title} is to be taught again, but no meeting is left for it.`
        });
    }
    return problems;
}

/** Lessons without a day, with the reason. */
export function unplacedLessons({ sheet, order, run, pieces, term }: RunReport): Unplaced[] {
    const missing = new Set(run.unfinished);
    const ends = !term ? 'the plan would be too long' : term.end === undefined ? `the days off of the class ${quoted(sheet.title)} leave too few days to meet` : `no meeting is left before the class ends on ${longDay(term.end)}`;
    return run.unfinished.flatMap(position => {
        const lesson = order.lessons[position];
        if (!lesson) return [];
        const begun = (pieces[position]?.length ?? 0) > 0;
        const before = order.lessons[(order.before[position] ?? []).find(p => missing.has(p)) ?? -1];
        const why = begun ? `Only its first part has a day: ${ends}.` : before ? `It follows ${quoted(before.title)}, which has no day either.` : `${ends.charAt(0).toUpperCase()}${ends.slice(1)}.`;
        return [{ lesson: lesson.name, title: lesson.title, place: placeOf(lesson), why }];
    });
}

export function overrunProblem({ sheet, order, run, term }: RunReport): ScheduleProblem[] {
    if (run.unfinished.length === 0) return [];
    const lessons = run.unfinished.flatMap(i => order.lessons[i] ?? []);
    const at = (term?.end === undefined ? sheet.starts?.at : sheet.ends?.at) ?? sheet.at;
    const place = { uri: sheet.uri, range: at };
    const many = counted(lessons.length, 'lesson');
    const related = lessons.slice(0, toldLessons).map(l => ({ message: `${quoted(l.title)} has no day`, place: placeOf(l) }));
    if (term?.end === undefined) {
        return [{ kind: 'no-meeting-days', place, related, message: `The days off of the class ${quoted(sheet.title)} leave too few days to meet: ${many} without a day. Compare the dates of its days off.` }];
    }
    return [{
        kind: 'term-overrun', place, related,
        message: `${many} no longer ${lessons.length === 1 ? 'fits' : 'fit'} before the class ${quoted(sheet.title)} ends on ${longDay(term.end)}: ${named(lessons)}. Choose a later end, more or longer meetings, or leave lessons out.`
    }];
}

/** "“A”, “B” and 3 more". */
export function named(lessons: readonly { title: string }[]): string {
    const titles = lessons.map(l => quoted(l.title));
    return titles.length > toldLessons ? `${titles.slice(0, toldLessons - 1).join(', ')} and ${titles.length - toldLessons + 1} more` : listing(titles);
}

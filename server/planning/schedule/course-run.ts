import { Turns, type CourseOrder } from './course-order.js';
import type { FixedDate } from './fixed-dates.js';
import type { LogLine } from './class-log.js';
import type { DaySource } from './meeting-days.js';
import { MeetingRoom, type Taught } from './meeting-room.js';
import { lengthOf, wholeLesson, type LessonShape, type Work } from './pieces.js';
import { Repeats } from './repeats.js';
import type { Pace } from './term.js';

/** What a course is taught by. */
export interface RunRules {
    order: CourseOrder;
    pace: Pace;
    days: DaySource;
    /** Those whose day is a meeting day, by day. */
    fixed: ReadonlyMap<number, readonly FixedDate[]>;
    /** By day. */
    log: ReadonlyMap<number, readonly LogLine[]>;
}

/** A meeting as it came about. */
export interface RunDay {
    day: number;
    taught: readonly Taught[];
    free?: 'catch-up' | 'waiting';
    /** Lessons taught before a catch-up day. */
    after?: number;
    /** Catch-up days that repeats before this day had used up. */
    usedUp?: number;
}

export interface Run {
    days: RunDay[];
    /** Lessons that are not taught to their end, by position. */
    unfinished: number[];
    /** Fixed dates that could not be kept, and why. */
    missedDates: { fixed: FixedDate; why: 'too-early' | 'no-room' }[];
    /** Log lines of days on which their lesson was taught. */
    heard: Set<number>;
    /** Log lines whose repeat found no day. */
    notRepeated: number[];
    /** Number of the meeting at which each catch-up began. */
    catchUps: number[];
}

const nothingFixed: readonly FixedDate[] = [];
const nothingLogged: readonly LogLine[] = [];
/** A keystroke must never make a plan that cannot be looked at. */
const mostMeetings = 40_000;

/** A piece of a lesson with the number of its meeting. */
export interface Piece {
    meeting: number;
    taught: Taught;
}

/** For each lesson of the course, its pieces in order; what is taught again does not count. */
export function piecesOf(run: Run, order: CourseOrder): Piece[][] {
    const pieces: Piece[][] = order.lessons.map(() => []);
    run.days.forEach(({ taught: all }, meeting) => {
        for (const taught of all) if (taught.why !== 'repeat' && taught.why !== 'revisit') pieces[taught.work.position]?.push({ meeting, taught });
    });
    return pieces;
}

/** Teaches a course meeting by meeting. */
export function runCourse(rules: RunRules): Run {
    const undisturbed = rules.pace.catchUp && rules.log.size > 0 ? new CourseRun({ ...rules, log: new Map() }).run().catchUps : [];
    return new CourseRun(rules, undisturbed).run();
}

class CourseRun {
    private readonly turns: Turns;
    private readonly repeats: Repeats;
    private readonly result: Run;
    /** Lessons that go on at the next meeting; more than one where a fixed date came between. */
    private readonly begun: Work[] = [];
    private readonly isDone: Uint8Array;
    private finished = 0;
    /** Days that are still owed for each catch-up that is due. */
    private readonly due: { days: number; after: number; begun: boolean }[] = [];

    /** `undisturbed`: at which meetings the catch-ups would begin without any repeat. */
    constructor(private readonly rules: RunRules, private readonly undisturbed: readonly number[] = []) {
        const held = [...rules.fixed.values()].flatMap(lines => lines.map(f => f.position));
        this.turns = new Turns(rules.order, held);
        this.repeats = new Repeats(rules.order);
        this.isDone = new Uint8Array(rules.order.lessons.length);
        this.result = {
            days: [], unfinished: [], missedDates: [], heard: new Set(), notRepeated: [], catchUps: []
        };
    }

    run(): Run {
        let day: number | undefined;
        while (this.isUnfinished() && this.result.days.length < mostMeetings) {
            day = this.rules.days.after(day);
            if (day === undefined) break;
            this.result.days.push(this.meet(day));
        }
        this.isDone.forEach((done, i) => {
            if (!done) this.result.unfinished.push(i);
        });
        this.result.notRepeated = this.repeats.left();
        return this.result;
    }

    private isUnfinished(): boolean {
        return this.turns.left > 0 || this.repeats.isWaiting;
    }

    private meet(day: number): RunDay {
        const room = new MeetingRoom(this.rules.pace, this.rules.order.apart);
        let fixed: readonly FixedDate[] = this.rules.fixed.get(day) ?? nothingFixed;
        const inTime = fixed.length === 0 ? fixed : fixed.filter(one => this.turns.isReady(one.position));
        if (this.repeats.isWaiting) this.teachAgain(room, inTime);
        fixed = this.teachFixed(room, fixed);
        this.goOn(room);
        fixed = this.teachFixed(room, fixed);
        const mayRest = this.begun.length === 0 && room.onlyRepeats && this.turns.left > 0;
        const usedUp = mayRest ? this.useUpCatchUps() : 0;
        const due = mayRest ? this.due[0] : undefined;
        const met: RunDay = { day, taught: room.taught };
        if (usedUp > 0) met.usedUp = usedUp;
        if (due) {
            this.keepFree(due);
            if (room.isEmpty) met.free = 'catch-up';
            met.after = due.after;
        } else {
            fixed = this.teachInTurn(room, fixed);
            if (room.isEmpty) met.free = 'waiting';
        }
        for (const one of fixed) {
            this.result.missedDates.push({ fixed: one, why: inTime.includes(one) ? 'no-room' : 'too-early' });
            this.turns.release(one.position);
        }
        this.readLog(room, day);
        return met;
    }

    /** What was unsure before, so that a meeting begins with it; lessons that are fixed on this day keep their room. */
    private teachAgain(room: MeetingRoom, fixed: readonly FixedDate[]): void {
        const works = fixed.map(f => lengthOf(this.workOf(f.position)));
        const session = this.rules.pace.session ?? Infinity;
        const minutes = works.reduce((sum, w) => sum + (w.open ? session : Math.min(w.minutes, session)), 0);
        this.repeats.teachInto(room, { minutes, lessons: works.length }, { finished: this.finished, noLessonsLeft: this.turns.left === 0 });
    }

    /** Teaches those that can be taught and gives back the others. */
    private teachFixed(room: MeetingRoom, fixed: readonly FixedDate[]): readonly FixedDate[] {
        return fixed.length === 0 ? fixed : fixed.filter(one => {
            if (!this.turns.isReady(one.position)) return true;
            const work = this.workOf(one.position);
            if (!room.teach(work, 'fixed', one.line)) return true;
            this.note(work);
            return false;
        });
    }

    private goOn(room: MeetingRoom): void {
        if (this.begun.length === 0) return;
        for (const work of [...this.begun]) {
            if (!room.teach(work)) return;
            this.note(work);
        }
    }

    /** A lesson that is fixed on this day comes as soon as what it follows has been taught. */
    private teachInTurn(room: MeetingRoom, fixed: readonly FixedDate[]): readonly FixedDate[] {
        let left = fixed;
        for (;;) {
            const position = this.begun.length > 0 ? undefined : this.turns.next();
            const work = position === undefined ? undefined : this.workOf(position);
            if (!work || !room.teach(work)) return left;
            this.turns.take();
            this.note(work);
            left = this.teachFixed(room, left);
        }
    }

    private workOf(position: number): Work {
        return wholeLesson(position, this.rules.order.shapes[position] as LessonShape);
    }

    /** After a piece of a lesson: it goes on, or is done. */
    private note(work: Work): void {
        if (work.done < work.parts.length) {
            if (!this.begun.includes(work)) this.begun.push(work);
            return;
        }
        if (this.begun.includes(work)) this.begun.splice(this.begun.indexOf(work), 1);
        this.isDone[work.position] = 1;
        this.turns.taught(work.position);
        this.finished += 1;
        const { catchUp } = this.rules.pace;
        if (catchUp && this.finished % catchUp.every === 0) this.due.push({ days: catchUp.days, after: this.finished, begun: false });
    }

    private keepFree(due: { days: number; begun: boolean }): void {
        if (!due.begun) this.result.catchUps.push(this.result.days.length);
        due.begun = true;
        due.days -= 1;
        if (due.days === 0) this.due.shift();
    }

    /** A catch-up that is due later than it would be without repeats is shorter by what they took. */
    private useUpCatchUps(): number {
        let used = 0;
        while (this.due[0] && !this.due[0].begun) {
            const due = this.due[0];
            const planned = this.undisturbed[this.result.catchUps.length];
            const late = planned === undefined ? 0 : Math.max(0, this.result.days.length - planned);
            const fewer = Math.min(late, due.days);
            if (fewer < due.days) {
                due.days -= fewer;
                due.begun = fewer > 0;
                if (fewer > 0) this.result.catchUps.push(this.result.days.length);
                return used + fewer;
            }
            used += fewer;
            this.result.catchUps.push(this.result.days.length);
            this.due.shift();
        }
        return used;
    }

    private readLog(room: MeetingRoom, day: number): void {
        for (const line of this.rules.log.get(day) ?? nothingLogged) {
            const meant = this.rules.order.meant.get(line.lesson) ?? [];
            // Of several pieces on one day the last one asks its closing questions.
            const taught = meant.reduce<Taught | undefined>((found, position) => room.taught.find(t => t.work.position === position) ?? found, undefined);
            if (!taught) continue;
            this.result.heard.add(line.index);
            this.repeats.hear(line, taught.work, room, this.finished);
        }
    }
}

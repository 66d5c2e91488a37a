import { againAfter, type LogLine } from './class-log.js';
import type { CourseOrder } from './course-order.js';
import type { MeetingRoom } from './meeting-room.js';
import { someParts, type Work } from './pieces.js';

interface Repeat {
    work: Work;
    what: 'part' | 'lesson' | 'revisit';
    line: number;
    /** A revisit waits until so many lessons have been taught. */
    notBefore: number;
}

/** What is to be taught again because the children were unsure, in the order in which it was asked for. */
export class Repeats {
    private readonly waiting: Repeat[] = [];

    constructor(private readonly order: CourseOrder) {}

    get isWaiting(): boolean {
        return this.waiting.length > 0;
    }

    /** Lines of the log whose repeat is still to come. */
    left(): number[] {
        return this.waiting.map(r => r.line);
    }

    /** Does at once what is asked for the same day, and keeps the rest for the meetings to come. */
    hear(line: LogLine, taught: Work, room: MeetingRoom, finished: number): void {
        const positionOf = (name: string): number => this.order.positions.get(name)?.[0] ?? -1;
        const again = againAfter(taught.lesson, name => this.order.lessons[positionOf(name)]);
        const parts = again.what === 'lesson' ? taught.lesson.parts.map((_, i) => i) : again.parts;
        const isElsewhere = again.what === 'part' && again.lesson !== taught.lesson;
        const work = isElsewhere ? someParts(positionOf(again.lesson.name), again.lesson, parts) : someParts(taught.position, taught.lesson, parts);
        if (again.what === 'revisit') this.waiting.push({ work, what: 'revisit', line: line.index, notBefore: finished + again.lessons });
        else if (again.when === 'today') room.addToday(work, line.index);
        else this.waiting.push({ work, what: again.what, line: line.index, notBefore: 0 });
    }

    /** Begins a meeting with what is due, as far as there is room beside `keep`. */
    teachInto(
        room: MeetingRoom, keep: { minutes: number; lessons: number }, course: { finished: number; noLessonsLeft: boolean }
    ): void {
        for (const repeat of [...this.waiting]) {
            if (course.finished < repeat.notBefore && !course.noLessonsLeft) continue;
            const { work } = repeat;
            const fits = repeat.what === 'lesson'
                ? room.repeatLesson(work, keep, repeat.line)
                : room.repeatPart(work, keep, repeat.what === 'revisit' ? 'revisit' : 'repeat', repeat.line);
            if (fits && work.done >= work.parts.length) this.waiting.splice(this.waiting.indexOf(repeat), 1);
        }
    }
}

import { isWorthAMeeting, lengthOf, partsThatFit, type Work } from './pieces.js';
import type { Pace } from './term.js';

/** What is taught at a meeting. */
export interface Taught {
    work: Work;
    /** Positions in the work's list of parts: from, and how many. */
    from: number;
    count: number;
    minutes: number;
    why?: 'fixed' | 'repeat' | 'revisit';
    /** Index of the fixed date or log line that brought it here. */
    cause?: number;
}

/** One meeting while it fills up. */
export class MeetingRoom {
    readonly taught: Taught[] = [];
    /** Minutes that are left; endless without a session. */
    private left: number;
    /** Lessons that may still be taught. */
    private slots: number;
    private full = false;

    /** `apart`: positions of lessons that must not share a meeting with the one at a position. */
    constructor(private readonly pace: Pace, private readonly apart: ReadonlyMap<number, readonly number[]> = new Map()) {
        this.left = pace.session ?? Infinity;
        this.slots = pace.perMeeting ?? (pace.session === undefined ? 1 : Infinity);
    }

    get isEmpty(): boolean {
        return this.taught.length === 0;
    }

    /** Nothing but what is taught again. */
    get onlyRepeats(): boolean {
        return this.taught.every(t => t.why === 'repeat' || t.why === 'revisit');
    }

    private fitsWhole(work: Work): boolean {
        const { minutes, open } = lengthOf(work);
        if (minutes > this.left) return false;
        return !open || this.pace.session === undefined || this.onlyRepeats;
    }

    /**
     * Teaches a lesson as far as the meeting allows and says whether anything of it was taught. What is longer than the room
     * is begun only where the meeting holds nothing else or repeats alone; what has been begun goes on wherever a part of it fits.
     */
    teach(work: Work, why?: Taught['why'], cause?: number): boolean {
        if (this.full || this.slots < 1 || this.holdsOtherPiece(work)) return false;
        if (this.fitsWhole(work)) {
            this.put(work, work.parts.length - work.done, why, cause);
            return true;
        }
        if (work.done === 0 && !this.onlyRepeats) return false;
        const fits = partsThatFit(work, this.left);
        if (this.isEmpty) this.put(work, Math.max(1, fits), why, cause);
        else if (fits > 0 && (work.done > 0 || isWorthAMeeting(work, fits))) this.put(work, fits, why, cause);
        else return false;
        return true;
    }

    /** A lesson is split so that it falls on two days; what comes again does not count. */
    private holdsOtherPiece({ position }: Work): boolean {
        const others = this.apart.get(position);
        return others !== undefined && this.taught.some(({ work, why }) => why !== 'repeat' && why !== 'revisit' && others.includes(work.position));
    }

    /** Teaches one part again, which takes no lesson's place. `keep` are minutes and lessons that something else has a claim on. */
    repeatPart(work: Work, keep: { minutes: number; lessons: number }, why: 'repeat' | 'revisit', cause: number): boolean {
        const { minutes } = lengthOf(work);
        if (this.full || (minutes > this.left - keep.minutes && (!this.isEmpty || keep.lessons > 0))) return false;
        this.add(work, work.parts.length, why, cause);
        return true;
    }

    /** Teaches a lesson again, as far as the meeting allows. */
    repeatLesson(work: Work, keep: { minutes: number; lessons: number }, cause: number): boolean {
        if (keep.lessons > 0 && (this.slots <= keep.lessons || lengthOf(work).minutes > this.left - keep.minutes)) return false;
        return this.teach(work, 'repeat', cause);
    }

    /** Teaches again what was unsure at this very meeting, however long it takes. */
    addToday(work: Work, cause: number): void {
        this.add(work, work.parts.length, 'repeat', cause);
    }

    private put(work: Work, count: number, why: Taught['why'], cause: number | undefined): void {
        this.slots -= 1;
        const { open } = lengthOf(work, count);
        this.add(work, count, why, cause);
        if ((open && this.pace.session !== undefined) || work.done < work.parts.length) this.full = true;
    }

    private add(work: Work, count: number, why: Taught['why'], cause: number | undefined): void {
        const { minutes } = lengthOf(work, count);
        this.taught.push({ work, from: work.done, count, minutes, why, cause });
        work.done += count;
        this.left -= minutes;
    }
}

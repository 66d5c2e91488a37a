/** Which change of an adaptation is told where in a lesson: once beside what it concerns, its reason at the part that it brings, else where it is met first. */
import type { CautionFigures, ChangeFigures, LessonFigures, PartFigures, StepFigures } from '../planning/figures.js';

export interface ToldChange {
    change: ChangeFigures;
    /** Its reason stands elsewhere in this lesson. */
    again: boolean;
}

type Changed = { changes?: ChangeFigures[] };

/** The lesson itself, its parts, needs, cautions and steps, each with what is told beside it. */
export type ChangePlaces = ReadonlyMap<Changed, ToldChange[]>;

export function placeChanges(lesson: LessonFigures): ChangePlaces {
    const telling = new Telling(partsBrought(lesson));
    const inLesson = telling.tell(lesson, []);
    for (const need of lesson.needs) telling.tellNeed(need, inLesson);
    for (const caution of lesson.cautions) telling.tellCaution(caution, inLesson);
    for (const step of lesson.steps) telling.tellStep(step, inLesson);
    for (const part of lesson.parts) {
        const inPart = [...inLesson, ...telling.tell(part, inLesson)];
        for (const need of part.needs) telling.tellNeed(need, inPart);
        for (const caution of part.cautions) telling.tellCaution(caution, inPart);
        for (const step of [...(part.game?.steps ?? []), ...part.steps]) telling.tellStep(step, inPart);
    }
    return telling.places;
}

/** For each line that brings parts, the first of them: what comes along with it, materials and objectives, is told without the reason. */
function partsBrought({ parts }: LessonFigures): Map<string, Changed> {
    const brought = new Map<string, Changed>();
    for (const part of parts) {
        for (const change of part.changes ?? []) if (isAdded(change) && !brought.has(line(change))) brought.set(line(change), part);
    }
    return brought;
}

class Telling {
    readonly places = new Map<Changed, ToldChange[]>();
    private readonly reasons = new Set<string>();
    private readonly sayings = new Set<string>();

    constructor(private readonly partsBrought: ReadonlyMap<string, Changed>) {}

    /** Tells what nothing around it tells already, and returns that. */
    tell(of: Changed, around: readonly string[], known: (change: ChangeFigures) => boolean = () => false): string[] {
        const fresh = (of.changes ?? []).filter(change => !around.includes(saying(change)) && !known(change));
        if (fresh.length > 0) this.places.set(of, fresh.map(change => ({ change, again: this.isReasonElsewhere(line(change), of) })));
        for (const change of fresh) {
            this.reasons.add(line(change));
            this.sayings.add(saying(change));
        }
        return fresh.map(saying);
    }

    private isReasonElsewhere(line: string, of: Changed): boolean {
        const part = this.partsBrought.get(line);
        return part ? part !== of : this.reasons.has(line);
    }

    /** A thing that is swapped stands in the lesson's needs and in those of its parts. */
    tellNeed(need: LessonFigures['needs'][number] | PartFigures['needs'][number], around: readonly string[]): void {
        const key = (change: ChangeFigures): string => `${need.name} ${saying(change)}`;
        this.tell(need, around, change => this.sayings.has(key(change)));
        for (const change of need.changes ?? []) this.sayings.add(key(change));
    }

    /** As a step: two that are added are both told. */
    tellCaution(caution: CautionFigures, around: readonly string[]): void {
        this.tell(caution, around, change => !isAdded(change) && this.sayings.has(saying(change)));
    }

    /** Two added steps are both told; a thing that is swapped in ten steps is told once. */
    tellStep(step: StepFigures, around: readonly string[]): void {
        const inStep = this.tell(step, around, change => !isAdded(change) && this.sayings.has(saying(change)));
        for (const under of step.under) this.tellStep(under, [...around, ...inStep]);
    }
}

/** Whether it says of something that the course does not have it there. */
export function isAdded({ says }: ChangeFigures): boolean {
    return says === 'added' || says === 'brought in';
}

function line({ place: { uri, range } }: ChangeFigures): string {
    return `${uri}#${range.start.line}`;
}

function saying(change: ChangeFigures): string {
    return `${line(change)} ${change.says}`;
}

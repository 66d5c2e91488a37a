/** Puts each caution beside the step that names its thing; the rest stand at the head of the part or lesson. */
import type { CautionFigures, LessonFigures, PartFigures, StepFigures } from '../planning/figures.js';
import { groupCautions, type CautionGroup } from './caution-groups.js';

export interface CautionPlaces {
    lesson: CautionGroup[];
    parts: Map<PartFigures, CautionGroup[]>;
    steps: Map<StepFigures, CautionGroup[]>;
}

export function placeCautions(lesson: LessonFigures): CautionPlaces {
    const head: CautionFigures[] = [];
    const parts = new Map<PartFigures, CautionFigures[]>();
    const steps = new Map<StepFigures, CautionFigures[]>();
    const placed = new Set<string>();
    for (const part of lesson.parts) {
        for (const caution of part.cautions) {
            placed.add(key(caution));
            const step = firstNaming(caution, partSteps(part));
            if (step) add(steps, step, caution);
            else add(parts, part, caution);
        }
    }
    for (const caution of lesson.cautions) {
        if (placed.has(key(caution))) continue;
        const step = firstNaming(caution, [...lesson.parts.flatMap(partSteps), ...lesson.steps]);
        if (step) add(steps, step, caution);
        else head.push(caution);
    }
    return inReadingOrder(lesson, head, parts, steps);
}

/** Groups are made in the order in which the lesson is read, so that the full advice stands where it is met first. */
function inReadingOrder(
    lesson: LessonFigures, head: CautionFigures[], parts: Map<PartFigures, CautionFigures[]>, steps: Map<StepFigures, CautionFigures[]>
): CautionPlaces {
    const said = new Set<string>();
    const places: CautionPlaces = { lesson: groupCautions(head, said), parts: new Map(), steps: new Map() };
    const readSteps = (list: StepFigures[]): void => {
        for (const step of list) {
            const beside = steps.get(step);
            if (beside) places.steps.set(step, groupCautions(beside, said));
        }
    };
    readSteps(lesson.steps);
    for (const part of lesson.parts) {
        const atHead = parts.get(part);
        if (atHead) places.parts.set(part, groupCautions(atHead, said));
        readSteps(partSteps(part));
    }
    return places;
}

/** As they are read: how the game goes, then what this lesson adds. */
function partSteps(part: PartFigures): StepFigures[] {
    return [...(part.game?.steps ?? []), ...part.steps];
}

function firstNaming(caution: CautionFigures, steps: StepFigures[]): StepFigures | undefined {
    return caution.thing === undefined ? undefined : steps.find(step => names(step, caution.thing ?? ''));
}

function names(step: StepFigures, thing: string): boolean {
    return step.prose.parts.some(part => 'name' in part && part.name === thing) || step.under.some(under => names(under, thing));
}

function key(caution: CautionFigures): string {
    return JSON.stringify([caution.kind, caution.thing, caution.text, ...(caution.thing === undefined ? [caution.place.uri, caution.place.range.start.line] : [])]);
}

function add<K>(map: Map<K, CautionFigures[]>, at: K, caution: CautionFigures): void {
    const here = map.get(at);
    if (here) here.push(caution);
    else map.set(at, [caution]);
}

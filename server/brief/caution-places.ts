/** Puts each caution beside the step that names its thing; the rest stand at the head of the part or lesson. */
import type { CautionFigures, LessonFigures, PartFigures, StepFigures } from '../planning/figures.js';

export interface CautionPlaces {
    lesson: CautionFigures[];
    parts: Map<PartFigures, CautionFigures[]>;
    steps: Map<StepFigures, CautionFigures[]>;
}

export function placeCautions(lesson: LessonFigures): CautionPlaces {
    const places: CautionPlaces = { lesson: [], parts: new Map(), steps: new Map() };
    const placed = new Set<string>();
    for (const part of lesson.parts) {
        for (const caution of part.cautions) {
            placed.add(key(caution));
            const step = firstNaming(caution, partSteps(part));
            if (step) add(places.steps, step, caution);
            else add(places.parts, part, caution);
        }
    }
    for (const caution of lesson.cautions) {
        if (placed.has(key(caution))) continue;
        const step = firstNaming(caution, [...lesson.parts.flatMap(partSteps), ...lesson.steps]);
        if (step) add(places.steps, step, caution);
        else places.lesson.push(caution);
    }
    return places;
}

function partSteps(part: PartFigures): StepFigures[] {
    return [...part.steps, ...(part.game?.steps ?? [])];
}

function firstNaming(caution: CautionFigures, steps: StepFigures[]): StepFigures | undefined {
    return caution.thing === undefined ? undefined : steps.find(step => names(step, caution.thing ?? ''));
}

function names(step: StepFigures, thing: string): boolean {
    return step.prose.parts.some(part => 'name' in part && part.name === thing) || step.under.some(under => names(under, thing));
}

function key(caution: CautionFigures): string {
    return JSON.stringify([caution.kind, caution.thing, caution.text]);
}

function add<K>(map: Map<K, CautionFigures[]>, at: K, caution: CautionFigures): void {
    const here = map.get(at);
    if (here) here.push(caution);
    else map.set(at, [caution]);
}

import type { ChangeFigures, LessonFigures, StepFigures } from '../figures.js';
import type { Cue } from '../speaking-figures.js';
import { quoted } from '@haversack/language/facts/wording';
import { ended, say, thingInWords, type Telling } from './cues.js';

/** What adaptations changed in a lesson, each once, with its reason the first time. An added step is told where it stands. */
export function changeCues(lesson: LessonFigures, { inWords }: Telling): Cue[] {
    const said = new Set<string>();
    const reasons = new Set<string>();
    return changesIn(lesson).flatMap(({ change, what }) => {
        const words = what === undefined ? change.says : `${what}, ${change.says}`;
        if (said.has(words)) return [];
        said.add(words);
        const line = `${change.place.uri}#${change.place.range.start.line}`;
        const because = change.because && !reasons.has(line) ? ` ${ended(inWords(change.because))}` : '';
        reasons.add(line);
        return [say(`Changed for this class: ${ended(words)}${because}`, change.place)];
    });
}

/** Whether an adaptation changed anything that is told of this lesson. */
export function isChanged(lesson: LessonFigures): boolean {
    return changesIn(lesson).length > 0;
}

interface Told {
    change: ChangeFigures;
    /** What it stands beside, where the change does not say so itself. */
    what?: string;
}

function changesIn(lesson: LessonFigures): Told[] {
    const plainly = (changes: readonly ChangeFigures[] = []): Told[] => changes.map(change => ({ change }));
    const needs = (list: LessonFigures['parts'][number]['needs']): Told[] =>
        list.flatMap(need => (need.changes ?? []).map(change => (isAdded(change) ? { change, what: thingInWords(need.title) } : { change })));
    return [
        ...plainly(lesson.changes),
        ...needs(lesson.needs),
        ...steps(lesson.steps),
        ...lesson.parts.flatMap(part => [...(part.changes ?? []).map(change => ({ change, what: quoted(part.title) })), ...needs(part.needs), ...steps(part.steps)])
    ];
}

function steps(list: readonly StepFigures[]): Told[] {
    return list.flatMap(step => [...(step.changes ?? []).filter(change => !isAdded(change)).map(change => ({ change })), ...steps(step.under)]);
}

function isAdded({ says }: ChangeFigures): boolean {
    return says === 'added';
}

import { asCommonNoun } from '@haversack/language/sheets/titles';
import type { NameFigures, Place, Prose, StepFigures, StepWord, WeekBrief } from '../figures.js';
import type { Cue } from '../speaking-figures.js';

/** What the sections are told from. */
export interface Telling {
    brief: WeekBrief;
    /** A writer's prose as plain text on one line. */
    inWords(prose: Prose): string;
}

export function say(text: string, place?: Place): Cue {
    return { does: 'say', text: begun(ended(text)), place };
}

/** Nothing where there is nothing to say after the lead. */
export function sayIf(lead: string, rest: string, place?: Place): Cue[] {
    return rest.trim() === '' ? [] : [say(`${lead}${rest}`, place)];
}

/** Ends with a full stop, unless it ends a sentence already. */
export function ended(text: string): string {
    const trimmed = text.trim();
    return trimmed === '' || /[.!?…]["”’)]*$/.test(trimmed) ? trimmed : `${trimmed}.`;
}

export function begun(text: string): string {
    return text.replace(/^\p{Ll}/u, first => first.toUpperCase());
}

/** Steps of one word, those under others included. */
export function stepsOf(steps: readonly StepFigures[], word: StepWord): StepFigures[] {
    return steps.flatMap(step => [...(step.word === word ? [step] : []), ...stepsOf(step.under, word)]);
}

/** A thing inside a sentence: "gram cubes". */
export function thingInWords(title: string, kind: NameFigures['kind'] = 'material'): string {
    return kind === 'material' || kind === 'print' ? asCommonNoun(title) : title;
}

import type { Figure, TrailStep } from '@haversack/server/planning/figure';
import type { Place, Prose, StepFigures, StepWord } from '@haversack/server/planning/figures';

const folder = 'file:///home/someone/Our%20year/';
export const programmeRoot = folder;

/** A place on one line (zero-based) of an invented file. */
export function place(file: string, line: number): Place {
    return { uri: folder + file, range: { start: { line, character: 2 }, end: { line, character: 20 } } };
}

const nowhere = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

/** Prose with names in braces: `prose('Fill the {pan-balance}.')`. */
export function prose(text: string): Prose {
    const parts = text.split(/\{([^{}]*)\}/).map((piece, index) => (index % 2 ? { name: piece, at: nowhere } : { text: piece }));
    return { parts: parts.filter(part => 'name' in part || part.text !== ''), at: nowhere };
}

export function figure(text: string, ...trail: (string | TrailStep)[]): Figure {
    const exact = /^[\d ]+(?:\/\d+|\.\d+)?/.exec(text)?.[0]?.trim() ?? '0';
    return { exact, text, trail: trail.map(step => (typeof step === 'string' ? { words: step } : step)) };
}

export function step(word: StepWord, text: string, line: number, under: StepFigures[] = [], file = 'weighing.lesson'): StepFigures {
    return { word, prose: prose(text), place: place(file, line), under };
}

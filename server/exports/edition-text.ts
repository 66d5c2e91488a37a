import type { Difference, EditionFigures, EditionGroup, ReappliedAdaptation } from '../planning/edition-figures.js';
import { changeLines, changesToShow, editionWords, outcomeLine, placesLine, sidesLine, type EditionNames } from './edition-lines.js';
import { onOneLine } from '../markdown/one-line.js';

/** Columns of the terminal that lines keep to. */
const width = 100;

/** What changed for a teacher, for a terminal. */
export function editionText(figures: EditionFigures, names: EditionNames): string {
    const lines = [...wrapped(figures.title), ...wrapped(sidesLine(figures, names)), ...wrapped(figures.summary), ''];
    for (const section of figures.sections) {
        lines.push(onOneLine(section.title), '');
        for (const group of section.groups) writeGroup(lines, group, names);
    }
    if (figures.adaptations.length > 0) lines.push(editionWords.adaptations, '');
    for (const adaptation of figures.adaptations) writeAdaptation(lines, adaptation, names);
    if (figures.assumptions.length > 0) lines.push(editionWords.assumed, ...figures.assumptions.flatMap(sentence => wrapped(sentence, '  ')), '');
    return `${lines.join('\n').trimEnd()}\n`;
}

function writeGroup(lines: string[], { title, differences }: EditionGroup, names: EditionNames): void {
    if (title !== undefined) lines.push(...wrapped(title, '  '));
    for (const one of differences) writeDifference(lines, one, names);
    lines.push('');
}

function writeDifference(lines: string[], { says, why, before, after, ...sides }: Difference, names: EditionNames): void {
    lines.push(...wrapped(says, '    - ', '      '));
    if (why !== undefined) lines.push(...wrapped(why, '      '));
    if (before !== undefined) lines.push(...wrapped(`${editionWords.before}: ${before}`, '      '));
    if (after !== undefined) lines.push(...wrapped(`${editionWords.after}: ${after}`, '      '));
    const places = placesLine(sides, names);
    if (places !== '') lines.push(...wrapped(`(${places})`, '      '));
}

function writeAdaptation(lines: string[], adaptation: ReappliedAdaptation, names: EditionNames): void {
    const told = [adaptation.edition && `written against edition ${adaptation.edition}`, adaptation.side === 'old' && editionWords.onlyOld].filter(Boolean).join('; ');
    lines.push(...wrapped(`${adaptation.title}${told ? ` (${told})` : ''}: ${adaptation.summary}`, '  '));
    for (const change of changesToShow(adaptation)) {
        lines.push(...wrapped(outcomeLine(change), '    - ', '      '));
        for (const line of changeLines(change)) lines.push(...wrapped(line, '      '));
        const places = placesLine({ [adaptation.side]: change.place }, names);
        if (change.outcome !== 'clean') lines.push(...wrapped(`(${places})`, '      '));
    }
    lines.push('');
}

/** Lines of at most 100 columns, broken between words. */
function wrapped(text: string, first = '', next = first): string[] {
    const lines: string[] = [];
    let line = first;
    let empty = true;
    for (const word of onOneLine(text).split(' ')) {
        if (!empty && line.length + 1 + word.length > width) {
            lines.push(line);
            line = next;
            empty = true;
        }
        line += empty ? word : ` ${word}`;
        empty = false;
    }
    return [...lines, line];
}

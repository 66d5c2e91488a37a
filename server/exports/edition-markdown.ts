import { Outline } from '../markdown/outline.js';
import { plainText } from '../markdown/plain-text.js';
import type { Difference, EditionFigures, ReappliedAdaptation } from '../planning/edition-figures.js';
import { changeLines, changesToShow, editionWords, outcomeLine, placesLine, sidesLine, type EditionNames } from './edition-lines.js';

/** What changed for a teacher, as CommonMark: lists only, since CommonMark has no tables. */
export function editionMarkdown(figures: EditionFigures, names: EditionNames): string {
    const out = new Outline();
    out.heading(1, plainText(figures.title));
    out.paragraph(plainText(sidesLine(figures, names)));
    out.paragraph(plainText(figures.summary));
    for (const section of figures.sections) {
        out.heading(2, plainText(section.title));
        for (const { title, differences } of section.groups) {
            if (title !== undefined) out.heading(3, plainText(title));
            for (const one of differences) writeDifference(out, one, names);
        }
    }
    if (figures.adaptations.length > 0) out.heading(2, editionWords.adaptations);
    for (const adaptation of figures.adaptations) writeAdaptation(out, adaptation, names);
    if (figures.assumptions.length > 0) out.heading(2, editionWords.assumed);
    for (const sentence of figures.assumptions) out.item(0, plainText(sentence));
    return out.toString();
}

function writeDifference(out: Outline, { says, why, before, after, ...sides }: Difference, names: EditionNames): void {
    out.item(0, plainText(says));
    if (why !== undefined) out.item(1, plainText(why));
    if (before !== undefined) out.item(1, `${editionWords.before}: ${plainText(before)}`);
    if (after !== undefined) out.item(1, `${editionWords.after}: ${plainText(after)}`);
    const places = placesLine(sides, names);
    if (places !== '') out.item(1, plainText(places));
}

function writeAdaptation(out: Outline, adaptation: ReappliedAdaptation, names: EditionNames): void {
    out.heading(3, plainText(adaptation.title));
    out.paragraph(plainText([adaptation.edition && `Written against edition ${adaptation.edition}.`, adaptation.side === 'old' && 'Only the old edition has it.', adaptation.summary].filter(Boolean).join(' ')));
    for (const change of changesToShow(adaptation)) {
        out.item(0, plainText(outcomeLine(change)));
        for (const line of changeLines(change)) out.item(1, plainText(line));
        if (change.outcome !== 'clean') out.item(1, plainText(placesLine({ [adaptation.side]: change.place }, names)));
    }
}

/** One lesson as CommonMark. */
import type { LessonFigures, PartFigures, StepFigures } from '../../planning/figures.js';
import type { CautionGroup } from '../caution-groups.js';
import { placeCautions, type CautionPlaces } from '../caution-places.js';
import { proseLines } from './prose-lines.js';
import { trailItem } from './trail.js';
import type { Outline } from '../../markdown/outline.js';
import { plainText } from '../../markdown/plain-text.js';
import { cautionAdvice, cautionThings, lessonFacts, lessonTime, partFacts, partTitle, practiceWords } from '../sentences.js';
import type { View } from '../view.js';
import { objectiveLabels, stepLabels, words } from '../words.js';

export function writeLesson(out: Outline, lesson: LessonFigures, view: View): void {
    const cautions = placeCautions(lesson);
    out.heading(2, plainText(lesson.title));
    out.paragraph(plainText(lessonFacts(lesson)));
    if (lesson.draft) out.paragraph(words.draft);
    writeAim(out, lesson, view);
    if (lesson.needs.length) {
        out.heading(3, words.uses);
        for (const need of lesson.needs) writeNeed(out, need);
    }
    if (lesson.notNeeded.length) out.paragraph(`${words.notNeeded}: ${plainText(lesson.notNeeded.map(thing => thing.title).join(', '))}`);
    if (lesson.parts.length) {
        out.heading(3, `${words.run}, ${lessonTime(lesson)}`);
        lesson.parts.forEach((part, index) => out.item(0, `${plainText(partTitle(part))}: ${plainText(partFacts(part))}`, `${index + 1}.`));
    }
    out.blank();
    for (const caution of cautions.lesson) writeCaution(out, 0, caution, view);
    for (const step of lesson.steps) {
        if (step.word !== 'about' || lesson.aim.length === 0) writeStep(out, 0, step, cautions, view);
    }
    lesson.parts.forEach((part, index) => writePart(out, part, index + 1, cautions, view));
}

function writeAim(out: Outline, lesson: LessonFigures, view: View): void {
    for (const prose of lesson.aim) out.item(0, labelled(words.aim, proseLines(prose, view.inSentence)));
    for (const objective of lesson.objectives) out.item(0, `${objectiveLabels[objective.does]}: ${plainText(objective.title)}`);
    if (lesson.words.length) out.item(0, `${words.words}: ${plainText(lesson.words.join(', '))}`);
    if (lesson.follows.length) out.item(0, `${words.follows}: ${plainText(lesson.follows.map(before => before.title).join(', '))}`);
}

function writePart(out: Outline, part: PartFigures, number: number, cautions: CautionPlaces, view: View): void {
    out.heading(3, `${number}\\. ${plainText(partTitle(part))}`);
    out.paragraph(plainText(partFacts(part)));
    if (part.game?.rules) out.item(0, `${words.rules}: ${plainText(part.game.rules)}`);
    if (part.game?.players) out.item(0, `${words.players}: ${plainText(part.game.players)}`);
    if (part.game?.tables) out.item(0, `${words.tables}: ${plainText(part.game.tables)}`);
    for (const need of part.needs) writeNeed(out, need);
    for (const caution of cautions.parts.get(part) ?? []) writeCaution(out, 0, caution, view);
    for (const step of [...(part.game?.steps ?? []), ...part.steps]) writeStep(out, 0, step, cautions, view);
    const told = practiceWords(part);
    if (part.kind === 'practice' && told) out.paragraph(plainText(told));
    if (part.practiceItems?.length) {
        out.blank();
        part.practiceItems.forEach((item, index) => out.item(0, plainText(item.ask), `${index + 1}.`));
        out.heading(4, words.answers);
        part.practiceItems.forEach((item, index) => out.item(0, plainText(item.answer), `${index + 1}.`));
    }
    if (part.unsure) out.item(0, `${words.ifUnsure}: ${plainText(part.unsure)}`);
}

function writeNeed(out: Outline, need: PartFigures['needs'][number] & { optional?: boolean }): void {
    const each = need.each && `, ${plainText(need.each)}`;
    out.item(0, `${plainText(need.title)}: ${plainText(need.amount.text)}${each}${need.optional ? ` (${words.optional})` : ''}`);
    trailItem(out, 1, need.amount.trail);
}

function writeStep(out: Outline, depth: number, step: StepFigures, cautions: CautionPlaces, view: View): void {
    out.item(depth, labelled(stepLabels[step.word], proseLines(step.prose, view.inSentence)));
    for (const caution of cautions.steps.get(step) ?? []) writeCaution(out, depth + 1, caution, view);
    for (const under of step.under) writeStep(out, depth + 1, under, cautions, view);
}

export function writeCaution(out: Outline, depth: number, group: CautionGroup, view: View): void {
    const things = cautionThings(group, view).map(thing => plainText(thing.title)).join(', ');
    const more = group.added.flatMap(caution => {
        const lines = caution.prose ? proseLines(caution.prose, view.inSentence) : [];
        const of = group.cautions.length > 1 && caution.thing !== undefined ? plainText(view.titleOf(caution.thing)) : '';
        return ['', ...(of ? labelled(of, lines) : lines)];
    });
    out.item(depth, [`${words.caution}: ${things && `${things}: `}${plainText(cautionAdvice(group))}`, ...more]);
}

function labelled(label: string, lines: string[]): string[] {
    const [first = '', ...more] = lines;
    // A list cannot begin behind a label on the same line.
    return /^(?:- |\d+\. )/.test(first) ? [`${label}:`, '', first, ...more] : [`${label}: ${first}`, ...more];
}

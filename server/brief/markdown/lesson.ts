/** One lesson as CommonMark. */
import type { LessonFigures, PartFigures, PictureFigures, StepFigures } from '../../planning/figures.js';
import type { CautionGroup } from '../caution-groups.js';
import { placeCautions, type CautionPlaces } from '../caution-places.js';
import { placeChanges, type ChangePlaces } from '../change-places.js';
import { writeChanges } from './change.js';
import { proseLines } from './prose-lines.js';
import { trailItem } from './trail.js';
import type { Outline } from '../../markdown/outline.js';
import { plainText } from '../../markdown/plain-text.js';
import { keyNote } from '../pieces/key-note.js';
import { cautionAdvice, cautionLabel, cautionReasons, cautionThings, lessonFacts, lessonTime, partFacts, partTitle, practiceWords } from '../sentences.js';
import type { View } from '../view.js';
import { objectiveLabels, stepLabels, words } from '../words.js';

export function writeLesson(out: Outline, lesson: LessonFigures, view: View): void {
    const cautions = placeCautions(lesson);
    const changes = placeChanges(lesson);
    out.heading(2, plainText(lesson.title));
    out.paragraph(plainText(lessonFacts(lesson)));
    writeChanges(out, 'paragraph', changes.get(lesson), view);
    if (lesson.draft) out.paragraph(words.draft);
    writeAim(out, lesson, view);
    if (lesson.needs.length) {
        out.heading(3, words.uses);
        for (const need of lesson.needs) writeNeed(out, need, changes, view);
    }
    if (lesson.notNeeded.length) out.paragraph(`${words.notNeeded}: ${plainText(lesson.notNeeded.map(thing => thing.title).join(', '))}`);
    if (lesson.parts.length) {
        out.heading(3, `${words.run}, ${lessonTime(lesson)}`);
        lesson.parts.forEach((part, index) => out.item(0, `${plainText(partTitle(part))}: ${plainText(partFacts(part))}`, `${index + 1}.`));
    }
    out.blank();
    for (const caution of cautions.lesson) writeCaution(out, 0, caution, view, changes);
    for (const step of lesson.steps) {
        if (step.word !== 'about' || lesson.aim.length === 0) writeStep(out, 0, step, { cautions, changes, view });
    }
    lesson.parts.forEach((part, index) => writePart(out, part, index + 1, { cautions, changes, view }));
}

function writeAim(out: Outline, lesson: LessonFigures, view: View): void {
    for (const prose of lesson.aim) out.item(0, labelled(words.aim, proseLines(prose, view.inSentence)));
    for (const objective of lesson.objectives) out.item(0, `${objectiveLabels[objective.does]}: ${plainText(objective.title)}`);
    if (lesson.words.length) out.item(0, `${words.words}: ${plainText(lesson.words.join(', '))}`);
    if (lesson.follows.length) out.item(0, `${words.follows}: ${plainText(lesson.follows.map(before => before.title).join(', '))}`);
}

/** What stands beside steps and parts. */
interface Beside {
    cautions: CautionPlaces;
    changes: ChangePlaces;
    view: View;
}

function writePart(out: Outline, part: PartFigures, number: number, beside: Beside): void {
    const { cautions, changes, view } = beside;
    out.heading(3, `${number}\\. ${plainText(partTitle(part))}`);
    out.paragraph(plainText(partFacts(part)));
    writeChanges(out, 'paragraph', changes.get(part), view);
    if (part.game?.rules) out.item(0, `${words.rules}: ${plainText(part.game.rules)}`);
    if (part.game?.players) out.item(0, `${words.players}: ${plainText(part.game.players)}`);
    if (part.game?.tables) out.item(0, `${words.tables}: ${plainText(part.game.tables)}`);
    if (part.game?.kept) out.item(0, labelled(words.kept, proseLines(part.game.kept, view.inSentence)));
    for (const need of part.needs) writeNeed(out, need, changes, view);
    for (const caution of cautions.parts.get(part) ?? []) writeCaution(out, 0, caution, view, changes);
    for (const step of [...(part.game?.steps ?? []), ...part.steps]) writeStep(out, 0, step, beside);
    const told = practiceWords(part);
    if (part.kind === 'practice' && told) out.paragraph(plainText(told));
    if (part.practiceItems?.length) {
        out.blank();
        part.practiceItems.forEach((item, index) => out.item(0, plainText(item.ask), `${index + 1}.`));
        out.heading(4, words.answers);
        part.practiceItems.forEach((item, index) => out.item(0, plainText(item.answer), `${index + 1}.`));
        const note = keyNote(part.practiceItems);
        if (note) out.paragraph(plainText(note));
    }
    if (part.unsure) out.item(0, `${words.ifUnsure}: ${plainText(part.unsure)}`);
}

function writeNeed(out: Outline, need: PartFigures['needs'][number] & { optional?: boolean }, changes: ChangePlaces, view: View): void {
    const each = need.each && `, ${plainText(need.each)}`;
    out.item(0, `${plainText(need.title)}: ${plainText(need.amount.text)}${each}${need.optional ? ` (${words.optional})` : ''}`);
    trailItem(out, 1, need.amount.trail);
    writeChanges(out, 1, changes.get(need), view);
}

function writeStep(out: Outline, depth: number, step: StepFigures, beside: Beside): void {
    const { cautions, changes, view } = beside;
    out.item(depth, labelled(stepLabels[step.word], step.picture ? [pictureWords(step.picture)] : proseLines(step.prose, view.inSentence)));
    writeChanges(out, depth + 1, changes.get(step), view);
    for (const caution of cautions.steps.get(step) ?? []) writeCaution(out, depth + 1, caution, view, changes);
    for (const under of step.under) writeStep(out, depth + 1, under, beside);
}

/** What a picture shows, behind its own title. */
function pictureWords({ title, text }: PictureFigures): string {
    return plainText([title, text].filter(Boolean).join('. '));
}

/** Without `changes` in the week's summary: what changed is told in the lesson. */
export function writeCaution(out: Outline, depth: number, group: CautionGroup, view: View, changes?: ChangePlaces): void {
    const things = cautionThings(group, view).map(thing => plainText(thing.title)).join(', ');
    const more = group.added.flatMap(caution => {
        const lines = caution.prose ? proseLines(caution.prose, view.inSentence) : [];
        const of = group.cautions.length > 1 && caution.thing !== undefined ? plainText(view.titleOf(caution.thing)) : '';
        return ['', ...(of ? labelled(of, lines) : lines)];
    });
    out.item(depth, [`${cautionLabel(group)}: ${things && `${things}. `}${plainText(cautionAdvice(group))}`, ...more]);
    for (const caution of group.changed) writeChanges(out, depth + 1, changes?.get(caution), view);
    const reasons = cautionReasons(group, view);
    if (reasons.length) out.item(depth + 1, `${words.workedOut}: ${reasons.map(reason => plainText(reason.words)).join('; ')}`);
}

export function labelled(label: string, lines: string[]): string[] {
    const [first = '', ...more] = lines;
    // A list cannot begin behind a label on the same line.
    return /^(?:- |\d+\. )/.test(first) ? [`${label}:`, '', first, ...more] : [`${label}: ${first}`, ...more];
}

import { Outline } from '../markdown/outline.js';
import { plainText } from '../markdown/plain-text.js';
import type { BuyFigures, ThingFigures, WeekBrief } from '../planning/figures.js';
import { basketInWords } from './basket.js';
import { groupCautions, seriousFirst } from './caution-groups.js';
import { withChanges } from './change-words.js';
import { dayInWords } from './days.js';
import { kitsAtRest } from './kits-at-rest.js';
import { leftOutAtEnd, leftOutBefore, leftOutOfWeek } from './left-out.js';
import { writeLeftOut } from './markdown/change.js';
import { labelled, writeCaution, writeLesson } from './markdown/lesson.js';
import { proseLines } from './markdown/prose-lines.js';
import { trailItem } from './markdown/trail.js';
import { assumptions, hasCautions, leftOut, marks, onlyParts, packs, room, stock, weekFacts, weekTitle, whenToBuy } from './sentences.js';
import { taughtAt } from './meetings.js';
import { makeView, type View } from './view.js';
import { words } from './words.js';

/** The brief as CommonMark, in the order of the page; answers and trails stand open, since Markdown cannot fold. */
export function briefMarkdown(brief: WeekBrief): string {
    const out = new Outline();
    const view = makeView(brief, {});
    writeHeader(out, brief, view);
    writeFetch(out, brief, view);
    writeShelf(out, brief);
    out.heading(2, words.buy);
    if (brief.buy.length === 0) out.paragraph(words.nothingToBuy);
    for (const line of brief.buy) writeBuy(out, line, brief);
    writeCautions(out, brief, view);
    brief.lessons.forEach((lesson, index) => {
        for (const gone of leftOutBefore(brief, index)) writeLeftOut(out, gone, view);
        writeLesson(out, lesson, view);
    });
    for (const gone of leftOutAtEnd(brief)) writeLeftOut(out, gone, view);
    writeAhead(out, brief);
    return out.toString();
}

function writeHeader(out: Outline, brief: WeekBrief, view: View): void {
    out.heading(1, plainText(weekTitle(brief)));
    out.paragraph(plainText([brief.course.title, brief.class?.title].filter(Boolean).join(', ')));
    out.paragraph(plainText(weekFacts(brief)));
    out.paragraph(plainText(room(brief)));
    out.paragraph(plainText(withChanges(brief.adapted?.adaptations ?? [], leftOutOfWeek(brief)) ?? ''));
    for (const meeting of brief.meetings) {
        const lessons = taughtAt(meeting, brief, view).map(({ title, remark }) => (remark ? `${title} (${remark})` : title));
        out.item(0, plainText(`${meeting.label}: ${[...lessons, meeting.free?.words].filter(Boolean).join(', ')}`));
    }
    for (const remark of brief.remarks) out.paragraph(plainText(remark));
    const assumed = assumptions(brief);
    if (assumed.length) out.paragraph(plainText(`${words.assumed}: ${assumed.join(' ')}`));
}

function writeFetch(out: Outline, brief: WeekBrief, view: View): void {
    out.heading(2, words.fetch);
    if (brief.fetch.length === 0) out.paragraph(words.nothingToFetch);
    for (const group of brief.fetch) {
        out.heading(3, plainText(group.title));
        for (const thing of group.things) writeThing(out, thing, brief, view);
    }
}

function writeThing(out: Outline, thing: ThingFigures, brief: WeekBrief, view: View): void {
    const marked = marks(thing, brief);
    out.item(0, `${plainText(thing.title)}: ${plainText(thing.amount.text)}${marked && ` (${marked})`}`);
    trailItem(out, 1, thing.amount.trail);
    if (thing.kept) out.item(1, labelled(words.kept, proseLines(thing.kept, view.inSentence)));
    const lines = [
        thing.days.length ? `${words.needed}: ${thing.days.join(', ')}` : undefined,
        onlyParts(thing),
        thing.or.length ? `${words.or}: ${thing.or.join(', ')}` : undefined,
        thing.remark,
        stock(thing)
    ];
    for (const line of lines) {
        if (line) out.item(1, plainText(line));
    }
    trailItem(out, 2, [...(thing.atHand?.trail ?? []), ...(thing.missing?.trail ?? [])]);
    for (const note of thing.notes) out.item(1, proseLines(note, view.inSentence));
}

function writeShelf(out: Outline, brief: WeekBrief): void {
    if (brief.stayOnShelf.length + brief.putAway.length === 0) return;
    out.heading(2, words.shelf);
    const rest = brief.stayOnShelf.filter(line => !line.kit);
    for (const [title, kits, lines] of [[words.stayOnShelf, kitsAtRest(brief), rest], [words.putAway, [], brief.putAway]] as const) {
        if (kits.length + lines.length === 0) continue;
        out.heading(3, title);
        for (const { kit, groups } of kits) {
            out.item(0, plainText(kit.title));
            for (const { when, pieces } of groups) out.item(1, plainText(`${when}: ${pieces.map(piece => piece.title).join(', ')}.`));
        }
        for (const line of lines) out.item(0, plainText(line.why ? `${line.title}: ${line.why}` : line.title));
    }
}

function writeBuy(out: Outline, line: BuyFigures, brief: WeekBrief): void {
    out.item(0, `${plainText(line.title)}: ${plainText(line.missing.text)}`);
    trailItem(out, 1, line.missing.trail);
    for (const told of [whenToBuy(line, brief), ...basketInWords(line), packs(line)]) {
        if (told) out.item(1, plainText(told));
    }
}

function writeCautions(out: Outline, brief: WeekBrief, view: View): void {
    if (!hasCautions(brief)) return;
    out.heading(2, words.cautions);
    for (const group of seriousFirst(groupCautions(brief.cautions))) writeCaution(out, 0, group, view);
    out.paragraph(words.deferral);
}

function writeAhead(out: Outline, brief: WeekBrief): void {
    const { next } = brief;
    if (!next && brief.week !== brief.weeks) return;
    out.heading(2, words.ahead);
    const over = leftOut(brief);
    if (!next) {
        out.paragraph(words.lastWeek);
        if (over) out.paragraph(plainText(over));
        return;
    }
    out.paragraph(plainText(`Week ${next.week}${next.from === undefined ? '' : `, from ${dayInWords(next.from)}`}`));
    for (const lesson of next.lessons) out.item(0, plainText(lesson.title));
    if (next.newThings.length) out.heading(3, words.aheadNew);
    for (const thing of next.newThings) {
        out.item(0, `${plainText(thing.title)}: ${plainText(thing.amount.text)}`);
        trailItem(out, 1, thing.amount.trail);
    }
    if (next.order.length) out.heading(3, words.aheadOrder);
    for (const line of next.order) writeBuy(out, line, brief);
    if (over) out.paragraph(plainText(over));
}

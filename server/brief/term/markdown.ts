import { Outline } from '../../markdown/outline.js';
import { messageText, plainText } from '../../markdown/plain-text.js';
import type { CoverageFigures, CoverageObjective, FrameworkNode } from '../../planning/coverage-figures.js';
import type { OrderFigures, ThingRecord } from '../../planning/supply-figures.js';
import { basketInWords } from '../basket.js';
import { withChanges } from '../change-words.js';
import { dayAndMonth, dayInWords } from '../days.js';
import { toldLeftOut } from '../left-out.js';
import { writeLeftOut as writeGone, writeOwnChanges } from '../markdown/change.js';
import { trailItem } from '../markdown/trail.js';
import { taughtRemark } from '../meetings.js';
import { sentence } from '../sentences.js';
import { viewOfNames } from '../view.js';
import { words } from '../words.js';
import { calendarBlocks, type Cell } from './calendar/blocks.js';
import { offWords } from './calendar/entries.js';
import { strandsOf } from './coverage/grids.js';
import type { TermFigures } from '../../planning/term-figures.js';
import { changesOf, findings, nodeTitle, noMeetings, openingWords, orderGroups, otherProblems, shareWords, shortageWords, strandTitle, termAssumptions, termFacts } from './sentences.js';
import { changingWeeks, unlessNone } from './stock/line.js';
import { usedUp } from './stock/used-up.js';
import { allDoes, dayWords, doesHeads, heads, stockHeads, termWords } from './words.js';

/** The term as CommonMark, in the order of the page: what is drawn there is told here. */
export function termMarkdown(term: TermFigures): string {
    const out = new Outline();
    writeHead(out, term);
    writeCalendar(out, term);
    writeOtherwise(out, term);
    writeLeftOut(out, term);
    writeShortages(out, term);
    writeOrders(out, term);
    writeStock(out, term);
    writeCoverage(out, term.coverage);
    writeFrameworks(out, term.coverage);
    return out.toString();
}

function writeHead(out: Outline, term: TermFigures): void {
    out.heading(1, termWords.term);
    out.paragraph(plainText([term.course?.title, term.class?.title].filter(Boolean).join(', ')));
    out.paragraph(plainText(termFacts(term)));
    if (term.today !== undefined) out.paragraph(plainText(`Seen from ${dayInWords(term.today)}.`));
    out.paragraph(plainText(withChanges(term.adapted?.adaptations ?? []) ?? ''));
    for (const { text } of findings(term)) out.item(0, plainText(text));
    const assumed = termAssumptions(term);
    if (assumed.length > 0) out.paragraph(plainText(`${words.assumed}: ${assumed.join(' ')}`));
}

function writeCalendar(out: Outline, term: TermFigures): void {
    out.heading(2, termWords.calendar);
    const blocks = calendarBlocks(term.schedule, term.today);
    if (blocks.length === 0) out.paragraph(plainText(noMeetings(term)));
    for (const block of blocks) {
        out.heading(3, plainText(block.title));
        for (const row of block.rows) {
            if (row.kind === 'gap') out.item(0, plainText(row.text));
            else {
                out.item(0, `${heads.week} ${row.week.number}`);
                for (const cell of row.cells) if (cell) out.item(1, plainText(cellInWords(cell, term)));
            }
        }
    }
}

function cellInWords(cell: Cell, term: TermFigures): string {
    const { meeting, off } = cell;
    const taught = (meeting?.taught ?? []).map(one => [one.title, taughtRemark(one), ...changesOf(term, one.lesson).map(({ says }) => says)].filter(Boolean).join(', '));
    const told = [off && offWords(off), meeting?.free?.words, ...taught].filter(Boolean).join('; ');
    return `${cell.day}${cell.today ? ` (${dayWords.today})` : ''}: ${told}`;
}

function writeOtherwise(out: Outline, { adapted, class: group }: TermFigures): void {
    if (!adapted || adapted.leftOut.length + adapted.lessons.length === 0) return;
    const view = viewOfNames(adapted.names, group?.title, {});
    out.heading(2, termWords.otherwise);
    for (const lesson of toldLeftOut(adapted.leftOut, adapted.lessons)) writeGone(out, lesson, view);
    for (const { title, changes } of adapted.lessons) {
        out.item(0, plainText(title));
        writeOwnChanges(out, 1, changes, view);
    }
}

function writeLeftOut(out: Outline, { schedule }: TermFigures): void {
    const problems = otherProblems(schedule.problems);
    if (schedule.unplaced.length > 0) {
        out.heading(2, termWords.leftOut);
        for (const { title, why } of schedule.unplaced) out.item(0, plainText(`${title}: ${why}`));
        if (schedule.proposals.length > 0) out.heading(3, termWords.waysOut);
        for (const { title, gives, givesUp, line } of schedule.proposals) {
            out.item(0, plainText(`${title}: ${gives} ${termWords.givesUp}: ${givesUp}`));
            if (line) out.item(1, `${termWords.toWrite}: ${plainText(line.text)}`);
        }
    }
    if (problems.length > 0) out.heading(schedule.unplaced.length > 0 ? 3 : 2, termWords.look);
    for (const { message } of problems) out.item(0, messageText(message));
}

function writeShortages(out: Outline, { supplies: { shortages, clashes } }: TermFigures): void {
    if (shortages.length + clashes.length > 0) out.heading(2, termWords.short);
    for (const shortage of shortages) {
        out.item(0, plainText(`${shortage.title}: ${shortage.missing.text}, ${shortage.meeting}, week ${shortage.week}`));
        out.item(1, plainText(`${shortageWords(shortage)} ${termWords.forLessons}: ${shortage.lessons.map(lesson => lesson.title).join(', ')}`));
        for (const { text, enough } of shortage.standIns) out.item(1, plainText(`${termWords.standIns}: ${text}${enough ? '' : ` (${termWords.notEnough})`}`));
    }
    if (clashes.length > 0) out.heading(3, termWords.clashes);
    for (const clash of clashes) {
        out.item(0, plainText(`${clash.title}: ${clash.missing.text}, ${clash.meeting}`));
        out.item(1, plainText(shortageWords({ needed: clash.together, atHand: clash.atHand })));
        for (const one of clash.classes) out.item(1, plainText(`${one.title}: ${one.needed.text} (${one.lessons.join(', ')})`));
    }
}

function writeOrders(out: Outline, { supplies }: TermFigures): void {
    out.heading(2, termWords.buy);
    if (supplies.orders.length === 0) out.paragraph(termWords.nothingToBuy);
    for (const group of orderGroups(supplies)) {
        out.heading(3, plainText(group.title));
        for (const order of group.orders) writeOrder(out, order);
    }
    const { byWeek, term, perLearner, unpriced } = supplies.costs;
    if (term.length + unpriced.length > 0) out.heading(3, termWords.costs);
    const money = (head: string, list: readonly { text: string }[]): void => out.item(0, plainText(`${head}: ${list.map(one => one.text).join(', ')}`));
    for (const week of byWeek) money(`${heads.week} ${week.week}`, week.money);
    if (term.length > 0) money(termWords.wholeTerm, term);
    if (perLearner.length > 0) money(termWords.perLearner, perLearner);
    if (unpriced.length > 0) out.paragraph(plainText(`${termWords.unpriced}: ${unpriced.map(thing => thing.title).join(', ')}.`));
}

function writeOrder(out: Outline, order: OrderFigures): void {
    out.item(0, plainText(`${order.title}: ${order.bought.text}`));
    trailItem(out, 1, order.bought.trail.length > 0 ? order.bought.trail : order.net.trail);
    for (const told of [sentence(order.when), ...basketInWords({ ...order, packsToBuy: order.packs })]) out.item(1, plainText(told));
}

function writeStock(out: Outline, { supplies }: TermFigures): void {
    const { runOut, asNeeded, last, uncounted } = usedUp(supplies);
    if (runOut.length + asNeeded.length + last.length + uncounted.length > 0) out.heading(2, termWords.stock);
    for (const [title, records] of [[termWords.runsOut, runOut], [termWords.asNeeded, asNeeded], [termWords.lasts, last]] as const) {
        if (records.length > 0) out.heading(3, title);
        for (const record of records) writeRecord(out, record, supplies.weeks);
    }
    if (uncounted.length > 0) out.heading(3, termWords.uncounted);
    for (const { title, need, remarks } of uncounted) out.item(0, plainText([`${title}: ${termWords.needed} ${need.text}.`, ...remarks].join(' ')));
}

function writeRecord(out: Outline, record: ThingRecord, weeks: TermFigures['supplies']['weeks']): void {
    out.item(0, plainText(`${record.title}. ${openingWords(record)}`));
    if (record.runsOut) out.item(1, plainText(sentence(record.runsOut.text)));
    for (const remark of record.remarks) out.item(1, plainText(remark));
    for (const week of changingWeeks(record)) {
        const from = weeks.find(one => one.number === week.week)?.from;
        const moves = (['gross', 'scheduled', 'receipts'] as const).filter(kind => unlessNone(week[kind]) !== '').map(kind => `${stockHeads[kind].toLowerCase()} ${week[kind].text}`);
        out.item(1, plainText(`${heads.week} ${week.week}${from === undefined ? '' : `, ${dayAndMonth(from)}`}: ${[...moves, `${stockHeads.onHand.toLowerCase()} ${week.onHand.text}`].join(', ')}`));
    }
}

function writeCoverage(out: Outline, coverage: CoverageFigures): void {
    if (coverage.objectives.length === 0) return;
    out.heading(2, termWords.coverage);
    const strands = strandsOf(coverage);
    for (const strand of strands) {
        out.heading(3, plainText(strandTitle(strand.title, strands.length)));
        for (const objective of strand.objectives) writeObjective(out, objective, coverage);
    }
    out.heading(3, termWords.gaps);
    if (coverage.gaps.length === 0) out.paragraph(termWords.noGaps);
    for (const gap of coverage.gaps) out.item(0, messageText(gap.message));
}

function writeObjective(out: Outline, objective: CoverageObjective, { lessons }: CoverageFigures): void {
    out.item(0, plainText(`${objective.title}: ${sentence(objective.text)}`));
    for (const does of allDoes) {
        const visits = objective.cells.filter(cell => cell.does.includes(does)).map(cell => {
            const lesson = lessons.find(one => one.index === cell.lesson);
            return [lesson?.title, lesson?.week === undefined ? undefined : `week ${lesson.week}`].filter(Boolean).join(', ');
        });
        if (visits.length > 0) out.item(1, plainText(`${doesHeads[does]}: ${visits.join('; ')}`));
    }
}

function writeFrameworks(out: Outline, { frameworks }: CoverageFigures): void {
    if (frameworks.length > 0) out.heading(2, termWords.frameworks);
    for (const { title, wrong, text, tree, unknownCodes } of frameworks) {
        out.heading(3, plainText(title));
        out.paragraph(plainText(sentence(wrong ?? text)));
        for (const node of tree) writeNode(out, node, 0);
        if (unknownCodes.length > 0) out.paragraph(plainText(`${termWords.unknownCodes}: ${unknownCodes.map(({ code }) => code).join(', ')}.`));
    }
}

function writeNode(out: Outline, node: FrameworkNode, depth: number): void {
    const branch = node.children.length > 0;
    const met = branch ? shareWords(node) : node.lessons.length === 0 ? termWords.noLessonMeets : node.lessons.map(lesson => lesson.title).join(', ');
    out.item(depth, plainText(`${nodeTitle(node)}: ${met}`));
    for (const child of node.children) writeNode(out, child, depth + 1);
}

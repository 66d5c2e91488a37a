import type { ChangesFigures, Consequence, LedgerChange, LedgerFigures } from '../../planning/ledger-figures.js';
import { Outline } from '../../markdown/outline.js';
import { codeBlock, plainText } from '../../markdown/plain-text.js';
import { proseLines } from '../markdown/prose-lines.js';
import { trailItem } from '../markdown/trail.js';
import { ended, sentence } from '../sentences.js';
import { viewOfNames, type View } from '../view.js';
import { words } from '../words.js';
import { adaptationsInWords, byAdaptation, changeMinutes, lessonInWords, lessonRows, moneyInWords, runInWords, summary, unchanged } from './sentences.js';
import { changesWords, consequenceLabels } from './words.js';

/** The changes as CommonMark, in the order of the page. */
export function changesMarkdown(changes: ChangesFigures): string {
    const out = new Outline();
    const { ledger } = changes;
    out.heading(1, ledger ? changesWords.changes : changesWords.nothing);
    out.paragraph(plainText([changes.course?.title, changes.class?.title].filter(Boolean).join(', ')));
    if (!ledger) writeUnchanged(out, changes);
    else {
        const view = viewOfNames(changes.names, changes.class?.title, {});
        writeSummary(out, ledger, view);
        writeMade(out, ledger, view);
        writeLessons(out, ledger);
        writeSupplies(out, ledger);
    }
    return out.toString();
}

function writeUnchanged(out: Outline, changes: ChangesFigures): void {
    const { why, lines } = unchanged(changes);
    out.paragraph(plainText(why));
    if (lines.length === 0) return;
    out.paragraph(plainText(changesWords.howTo));
    out.paragraph(codeBlock(lines));
}

function writeSummary(out: Outline, ledger: LedgerFigures, view: View): void {
    out.paragraph(plainText(`${words.withChanges} ${adaptationsInWords(ledger)}.`));
    for (const note of ledger.adaptations.flatMap(({ notes }) => notes ?? [])) out.paragraph(proseLines(note, view.inSentence).join('\n'));
    for (const { text } of summary(ledger)) out.item(0, plainText(text));
    if (ledger.assumptions.length > 0) out.paragraph(plainText(`${words.assumed}: ${ledger.assumptions.join(' ')}`));
}

function writeMade(out: Outline, ledger: LedgerFigures, view: View): void {
    if (ledger.changes.length + ledger.otherConsequences.length === 0) return;
    out.heading(2, changesWords.made);
    const groups = byAdaptation(ledger);
    for (const { adaptation, changes } of groups) {
        if (groups.length > 1) out.heading(3, plainText(adaptation?.title ?? changes[0]?.adaptation.title ?? ''));
        for (const change of changes) writeChange(out, change, view);
    }
    if (ledger.otherConsequences.length > 0) out.heading(3, changesWords.others);
    for (const consequence of ledger.otherConsequences) writeConsequence(out, 0, consequence);
}

function writeChange(out: Outline, change: LedgerChange, view: View): void {
    const { says, because, idle, consequences } = change;
    const time = changeMinutes(change);
    out.item(0, plainText(sentence(says)));
    if (time) out.item(1, time);
    if (because) {
        const [first = '', ...more] = proseLines(because, view.inSentence);
        out.item(1, /^(?:- |\d+\. )/.test(first) ? [`${changesWords.because}:`, '', first, ...more] : [`${changesWords.because}: ${first}`, ...more]);
    }
    if (idle !== undefined) out.item(1, `${changesWords.idle}: ${plainText(sentence(idle))}`);
    for (const consequence of consequences) writeConsequence(out, 1, consequence);
}

function writeConsequence(out: Outline, depth: number, { kind, says }: Consequence): void {
    out.item(depth, `${consequenceLabels[kind]}: ${plainText(ended(says))}`);
}

function writeLessons(out: Outline, { lessons, minutes }: LedgerFigures): void {
    if (lessons.length === 0) return;
    out.heading(2, changesWords.lessons);
    for (const row of lessonRows(lessons)) {
        if (row.kind === 'run') out.item(0, plainText(runInWords(row.lessons)));
        else {
            const { name, title } = row.lesson;
            out.item(0, plainText(`${title}: ${lessonInWords(row.lesson, minutes.lessons.find(lesson => lesson.name === name))}`));
        }
    }
}

function writeSupplies(out: Outline, { supplies, money }: LedgerFigures): void {
    out.heading(2, changesWords.supplies);
    if (supplies.length === 0) out.paragraph(changesWords.sameSupplies);
    for (const { title, before, after, difference } of supplies) {
        out.item(0, plainText(`${title}: ${after?.text ?? changesWords.none} instead of ${before?.text ?? changesWords.none} (${difference})`));
        trailItem(out, 1, after?.trail ?? before?.trail ?? []);
    }
    if (money.length > 0) out.heading(3, changesWords.money);
    for (const one of money) out.item(0, plainText(moneyInWords(one)));
}

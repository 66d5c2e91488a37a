import { onOneLine } from '../../markdown/one-line.js';
import type { ChangesFigures, Consequence } from '../../planning/ledger-figures.js';
import { proseInWords } from '../prose-in-words.js';
import { ended, sentence } from '../sentences.js';
import { viewOfNames } from '../view.js';
import { words } from '../words.js';
import { adaptationsInWords, byAdaptation, changeMinutes, changesTitle, lessonInWords, lessonRows, moneyInWords, runInWords, summary, unchanged } from './sentences.js';
import { changesWords, consequenceLabels } from './words.js';

/** The changes for a terminal, in the order of the page. */
export function changesText(changes: ChangesFigures): string {
    const { ledger } = changes;
    const lines = [onOneLine(changesTitle(changes)), ''];
    const block = (heading: string, content: readonly string[]): void => {
        if (content.length > 0) lines.push(heading, ...content.map(line => `  ${onOneLine(line)}`), '');
    };
    if (!ledger) {
        const { why, lines: toWrite } = unchanged(changes);
        lines.push(onOneLine(why));
        if (toWrite.length > 0) lines.push('', changesWords.howTo, '', ...toWrite.map(line => `  ${line}`));
        return `${lines.join('\n')}\n`;
    }
    const view = viewOfNames(changes.names, changes.class?.title, {});
    block(`${words.withChanges} ${onOneLine(adaptationsInWords(ledger))}`,
        [...ledger.adaptations.flatMap(({ notes }) => notes ?? []).map(note => onOneLine(proseInWords(note, view))), ...summary(ledger).map(({ text }) => text)]);
    for (const { adaptation, changes: made } of byAdaptation(ledger)) {
        lines.push(ledger.adaptations.length > 1 ? `${changesWords.made}: ${onOneLine(adaptation?.title ?? '')}` : changesWords.made);
        for (const change of made) {
            const { says, because, idle, consequences } = change;
            lines.push(`  - ${onOneLine(sentence(says))}`);
            const under = [changeMinutes(change), because && `${changesWords.because}: ${proseInWords(because, view)}`, idle !== undefined && `${changesWords.idle}: ${sentence(idle)}`, ...consequences.map(told)];
            for (const line of under) if (line) lines.push(`    ${onOneLine(line)}`);
        }
        lines.push('');
    }
    block(changesWords.others, ledger.otherConsequences.map(told));
    block(changesWords.lessons, lessonRows(ledger.lessons).map(row => {
        if (row.kind === 'run') return runInWords(row.lessons);
        const { name, title } = row.lesson;
        return `${title}: ${lessonInWords(row.lesson, ledger.minutes.lessons.find(lesson => lesson.name === name))}`;
    }));
    block(changesWords.supplies, ledger.supplies.length === 0 ? [changesWords.sameSupplies]
        : ledger.supplies.map(({ title, before, after, difference }) => `${title}: ${after?.text ?? changesWords.none} instead of ${before?.text ?? changesWords.none} (${difference})`));
    block(changesWords.money, ledger.money.map(moneyInWords));
    block(words.assumed, ledger.assumptions);
    return `${lines.join('\n').trimEnd()}\n`;
}

function told({ kind, says }: Consequence): string {
    return `${consequenceLabels[kind]}: ${ended(says)}`;
}

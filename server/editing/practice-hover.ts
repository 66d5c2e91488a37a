import { isReturn, lineInWords } from '@haversack/language/practice/practice-lines';
import { readPractice } from '@haversack/language/practice/read-practice';
import { possibleItems, practiceItems } from '@haversack/language/practice/sequence';
import type { ItemInTurn } from '@haversack/language/practice/practice-item';
import type { FileSheet, PartSheet } from '@haversack/language/sheets/sheet';
import { plainText } from '../markdown/plain-text.js';

/** More would fill the hover. */
const mostShown = 6;

/** The first items of the practice whose first line, or of the practice line, stands at a line of a file, as Markdown. */
export function practiceHover(file: FileSheet, line: number): string | undefined {
    for (const { part, lesson } of practices(file)) {
        if (part.head.start.line === line) return ofPractice(part, lesson);
        const index = (part.practice ?? []).findIndex(({ at }) => at.start.line === line);
        if (index >= 0) return ofLine(part, index, lesson);
    }
    return undefined;
}

function practices({ lessons, adaptations }: FileSheet): { part: PartSheet; lesson: string }[] {
    const added = adaptations.flatMap(({ changes }) => changes.flatMap(change => (change.does === 'add to lesson' ? change.added.parts.map(part => ({ part, lesson: change.lesson.name })) : [])));
    return [...lessons.flatMap(({ name, parts }) => parts.map(part => ({ part, lesson: name }))), ...added].filter(({ part }) => part.kind === 'practice');
}

function ofPractice(part: PartSheet, lesson: string): string | undefined {
    const items = practiceItems(part, lesson);
    return items.length === 0 ? undefined : `${inAll(items.length, possibleItems(part))}\n\n${listed(items)}`;
}

function ofLine(part: PartSheet, index: number, lesson: string): string | undefined {
    const all = practiceItems(part, lesson);
    const items = all.filter(item => item.line === index);
    const line = part.practice![index]!;
    const [first] = items;
    if (isReturn(line)) {
        if (!first) return undefined;
        const times = all.flatMap((item, at) => (item.line === index ? [at + 1] : []));
        return `${plainText(shown(first))}\n\nIt stands ${times.length === 1 ? 'once' : `${times.length} times`} among the ${all.length} items: number ${times.join(', ')}.`;
    }
    const total = readPractice(part).lines.find(one => one.index === index)?.set.total;
    if (total === undefined) return undefined;
    return [`\`${lineInWords(line)}\`: ${inAll(items.length, total)}`, ...(items.length > 0 ? [listed(items)] : [])].join('\n\n');
}

/** "10 of the 89 items that are possible:" */
function inAll(count: number, possible: number): string {
    if (count === 0) return `${possible} ${possible === 1 ? 'item is' : 'items are'} possible, and none of them has its turn here.`;
    return count >= possible ? `${count === 1 ? 'the one item' : `all ${count} items`} that ${count === 1 ? 'is' : 'are'} possible:` : `${count} of ${possible} possible items:`;
}

function listed(items: readonly ItemInTurn[]): string {
    const more = items.length - mostShown;
    return [...items.slice(0, mostShown).map((item, index) => `${index + 1}. ${plainText(shown(item))}`), ...(more > 0 ? ['', `and ${more} more`] : [])].join('\n');
}

function shown({ ask, answer, room }: ItemInTurn): string {
    return room === 'gap' ? ask.replace('?', answer) : `${ask} → ${answer}`;
}

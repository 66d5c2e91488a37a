import { lineInWords } from '../practice/practice-lines.js';
import { readPractice, type Mend, type PracticeProblem } from '../practice/read-practice.js';
import { itemsWithoutRepeat, mostItems, possibleItems } from '../practice/sequence.js';
import type { FileSheet, PartSheet } from '../sheets/sheet.js';
import type { Check, Edit, Finding, Fix } from './check.js';
import { removeLinesOf, replace } from './fixes.js';
import { practiceParts } from './practice-parts.js';

export const impossiblePractice: Check = {
    code: 'impossible-practice', severity: 'error', title: 'Practice items that cannot be made',
    explains: 'The items of a practice are computed from its lines, and none comes twice while another is left. So there cannot be more of them than the lines give: three different digits have five other arrangements. Practice is with whole numbers up to 999999, fives and tens go up to 100, and a practice has at most 200 items. What a line with `return to` brings back has to be an item of the other lines, with others left to come between.',
    wrong: 'lesson digits-1\n  practice cards 12 items\n    arrange digits of 481', right: 'lesson digits-1\n  practice cards 5 items\n    arrange digits of 481',
    *find(file) {
        for (const part of practiceParts(file)) {
            const { problems } = readPractice(part);
            for (const problem of problems) yield { message: problem.message, at: problem.at, fixes: fixesOf(problem, file) };
            const tooMany = moreThanThereAre(part, file);
            if (tooMany) yield tooMany;
        }
    }
};

function moreThanThereAre(part: PartSheet, file: FileSheet): Finding | undefined {
    const { items, itemsAt: at } = part;
    if (items === undefined || at === undefined || !Number.isInteger(items)) return undefined;
    const read = readPractice(part);
    const most = itemsWithoutRepeat(read);
    // Lines that are wrong themselves may give more once they are mended.
    if (most === 0 || items <= most || (read.problems.length > 0 && most < mostItems)) return undefined;
    const only = read.lines.length === 1 ? read.lines[0] : undefined;
    const said = only ? `'${lineInWords(only.line)}'` : 'these lines';
    const possible = possibleItems(part);
    const [first = ''] = only?.line.numbers ?? [];
    const there = possible === 1 ? 'there is only 1' : `there are only ${possible}`;
    const besides = only?.line.words[0] === 'arrange' ? ` besides ${first} itself` : '';
    const returning = read.returns.length > 0 ? `, enough for ${most} with what returns` : '';
    const message = most === mostItems
        ? `A practice has at most ${mostItems} items, and ${items} are asked for. Ask for fewer; 'haversack practice' writes more when they are wanted.`
        : `${items} items of ${said}: ${there}${besides}${returning}.`;
    return { message, at, fixes: [{ title: `Ask for ${most} ${most === 1 ? 'item' : 'items'}`, edits: [replace(file.uri, at, String(most))], preferred: true }] };
}

function fixesOf({ mends }: PracticeProblem, { uri }: FileSheet): Fix[] {
    return mends.map((mend, index): Fix => ({ title: mend.title, edits: [editOf(mend, uri)], ...(index === 0 && !('remove' in mend) && { preferred: true }) }));
}

function editOf(mend: Mend, uri: string): Edit {
    if ('text' in mend) return replace(uri, mend.at, mend.text);
    if ('below' in mend) return { uri, afterLine: mend.at.end.line, like: mend.at.start.line, deeper: 0, lines: [mend.below] };
    return removeLinesOf(uri, mend.at);
}

export const practiceWithoutItems: Check = {
    code: 'practice-without-items', severity: 'warning', missing: true, title: 'A practice that does not say of what',
    explains: 'A number of items is asked for, but no line below says what is practised, so no item can be made. Write a line such as `name numbers 11 to 99` or `sums 2 to 20` under the practice, or leave the number of items out where the steps say all.',
    wrong: 'lesson digits-1\n  practice say-it 8 items\n    do: Take turns.', right: 'lesson digits-1\n  practice say-it 8 items\n    name numbers 11 to 99\n    do: Take turns.',
    *find(file) {
        for (const { name, items, practice = [], head, whole, at } of practiceParts(file)) {
            if (!items || practice.length > 0 || file.brokenLines?.some(line => line > head.start.line && line <= whole.end.line + 1)) continue;
            yield {
                message: `'${name}' asks for ${items} ${items === 1 ? 'item' : 'items'} and does not say of what. Write a line such as 'name numbers 11 to 99' under it.`, at,
                fixes: ['name numbers 11 to 99', 'sums 2 to 20'].map(line => ({ title: `Add '${line}'`, edits: [{ uri: file.uri, afterLine: head.start.line, deeper: 1, lines: [line] }] }))
            };
        }
    }
};

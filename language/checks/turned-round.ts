import type { FileSheet, Range } from '../sheets/sheet.js';
import { isReturn, kindOf, lineInWords } from '../practice/practice-lines.js';
import type { Check, Finding } from './check.js';
import { isDate } from './dates.js';
import { replace } from './fixes.js';
import { practiceParts } from './practice-parts.js';

export const turnedRound: Check = {
    code: 'turned-round', severity: 'error', title: 'A range that is turned round',
    explains: 'The first end of the range is greater than the second, such as `ages 8 to 6`, days off that end before they begin, or a class that ends before it starts. Swap the two ends.',
    wrong: 'course measuring\n  ages 8 to 6', right: 'course measuring\n  ages 6 to 8',
    *find(file) {
        for (const { ages } of [...file.materials, ...file.courses, ...file.classes]) {
            if (ages?.to !== undefined && ages.from > ages.to) yield turned('These ages', ages.at, `${ages.to} to ${ages.from}`, file);
        }
        for (const { players } of file.games) {
            if (players?.to !== undefined && players.from > players.to) yield turned('These numbers of players', players.at, `${players.to} to ${players.from}`, file);
        }
        for (const { starts, ends } of file.classes) {
            if (!starts || !ends || !isDate(starts.date) || !isDate(ends.date) || starts.date <= ends.date) continue;
            yield {
                message: `The class ends on ${ends.date}, before it starts on ${starts.date}: swap the two dates, or mend the year.`, at: ends.at,
                fixes: [{ title: 'Swap the two dates', edits: [replace(file.uri, starts.at, ends.date), replace(file.uri, ends.at, starts.date)], preferred: true }]
            };
        }
        for (const { off } of file.classes) {
            for (const { from, to } of off) {
                if (!to || !isDate(from.date) || !isDate(to.date) || from.date <= to.date) continue;
                yield turned('These days off', { start: from.at.start, end: to.at.end }, `${to.date} to ${from.date}`, file);
            }
        }
        for (const { practice = [] } of practiceParts(file)) {
            for (const line of practice) {
                const [from, to] = line.numbers;
                if (isReturn(line) || !kindOf(line) || from === undefined || to === undefined || !(Number(from) > Number(to))) continue;
                yield turned('These numbers', line.at, lineInWords(line, [to, from]), file);
            }
        }
    }
};

function turned(what: string, at: Range, right: string, file: FileSheet): Finding {
    return {
        message: `${what} are turned round: write '${right}'.`, at,
        fixes: [{ title: `Change to '${right}'`, edits: [replace(file.uri, at, right)], preferred: true }]
    };
}

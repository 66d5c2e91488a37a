/** Every regular expression of the sources takes a time that grows as the text does, or reads only texts whose length is bounded. */
import { expect, test } from 'vitest';
import { asCommonNoun } from '@haversack/language/sheets/titles';
import { shortTitle } from '@haversack/server/brief/title-in-sentence';
import { messageText } from '@haversack/server/markdown/plain-text';
import { spokenWords } from '@haversack/server/planning/speaking/spoken-time';
import { growthOf } from './ambiguity.js';
import { worked } from './chance.js';
import { expressionsIn } from './expressions.js';

test('the judgement, on expressions whose growth is known', () => {
    // From memory: the usual examples of slow expressions, and mends of them.
    const known: [string, string][] = [
        ['/^(a+)+$/', 'exponential'], ['/^(a|a)*$/', 'exponential'], ['/^(a*)*b/', 'exponential'], ['/^(?:a?b?)*c/', 'exponential'], ['/^(\\w+\\s?)*$/', 'exponential'], ['/^([a-z]+)+[A-Z]$/', 'exponential'],
        ['/^a*a*b/', 'polynomial'], ['/\\s+$/', 'polynomial'], ['/^.*x.*y$/', 'polynomial'], ['/^\\d+\\d+$/', 'polynomial'], ['/a+b/', 'polynomial'], ['/\\[.*\\]/', 'polynomial'],
        ['/^a+b/', 'linear'], ['/a+b/y', 'linear'], ['/\\s+/g', 'linear'], ['/^(?:a|b)*$/', 'linear'], ['/^[a-z]+(?:-[a-z]+)*$/', 'linear'], ['/foo\\d+bar/', 'linear'], ['/^"(?:[^"\\\\]|\\\\.)*"$/', 'linear'], ['/^\\s*#/', 'linear'], ['/(?:^|[.])x/', 'linear']
    ];
    for (const [literal, growth] of known) expect({ literal, ...growthOf(literal), why: '' }).toEqual({ literal, growth, why: '' });
});

/**
 * Expressions that are not linear by their shape alone, with what bounds them. By file and expression, so that one that is changed is judged anew.
 */
const bounded: Readonly<Record<string, string>> = {
    'language/attachments/time-zones.ts /[A-Za-z]+\\/[\\w+-]+(?:\\/[\\w+-]+)?$/': 'the last 100 characters of a name',
    'language/lexer/read-lines.ts /[\\p{L}\\p{N}]+(?:-[\\p{L}\\p{N}]+)*/gu': 'matches wherever it begins: at most one hyphen is given back',
    'language/sheet-store.ts /[\\p{L}\\p{N}]+(?:-[\\p{L}\\p{N}]+)*/gu': 'matches wherever it begins: at most one hyphen is given back',
    'language/lexer/scan.ts /^-+|-+$/g': 'every run of hyphens was made one hyphen just before',
    'language/practice/number-names.ts /(hundred|thousand) (?!thousand)(?=[a-z-]+(?: thousand|$))/g': 'the name of a number, of a few words',
    'server/brief/drawing/fit-text.ts /[-\\s]+$/u': 'as many characters as fit a line of a drawing',
    'server/brief/prose.ts /[*_([]+$/': 'the last 80 characters before a name',
    'server/brief/prose.ts /\\n[ \\t]*\\n\\s*$/': 'the last 80 characters before a name',
    'server/brief/prose.ts /(?:^|\\n)[ \\t]*(?:[-*+]|\\d{1,9}[.)])[ \\t]+$/': 'the last 80 characters before a name',
    'server/brief/title-in-sentence.ts /(?<=\\S),\\s.*$/su': 'the first comma and blank match: everything up to the end is taken',
    'server/cli/import-command.ts /^\\s*([\\w -]+?)\\s*=\\s*(.+?)\\s*$/': 'a word of the command line of whoever typed it',
    'server/editing/added-needs.ts /\\S.*$/': 'a line that the tool wrote itself',
    'server/editing/block-snippets.ts /⟨([^⟩]*)⟩/g': 'a snippet of the tool\'s own',
    'server/editing/completion.ts /[\\p{L}\\p{N}-]*$/u': 'the last 80 or 400 characters before the cursor',
    'server/editing/inlay-hints.ts /[\\r\\n]+$/': 'one end of a line, of two characters at most',
    'server/editing/move-lesson.ts /([^\\r\\n]*)(\\r\\n|\\r|\\n|$)/g': 'matches wherever it begins: a line always has an end',
    'server/editing/signature-help.ts /[\\p{L}\\p{N}-]+$/u': 'the last 80 characters before the cursor',
    'server/importing/cells.ts / ?(?:\\/|per|in an?|to an?|a) ?([a-z]+)$/i': 'a cell of 200 characters at most',
    'server/importing/columns.ts /[([]\\s*(?:in\\s+)?([^)\\]]+?)\\s*[)\\]]/': 'the first 300 characters of a heading',
    'server/importing/money.ts /^(.*?\\d.*?)\\s*(?:\\/|\\bper\\b|(?=\\beach\\b|\\bea\\b))\\s*(?:an?\\s+)?([^/]+)$/i': 'a cell of 200 characters at most',
    'server/importing/money.ts /^((?:[\\p{L}]{1,3})?\\p{Sc}|[\\p{L}]{1,4}\\.?(?=[\\s\\d]))?\\s*(.*)$/u': 'a cell of 200 characters at most',
    'server/importing/numbers.ts /(\\d?)\\s*([½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])/gu': 'a text of 1,000 characters at most',
    'server/importing/numbers.ts /(?:^|[^\\d.,])\\d+(?:\\.\\d{3})*,(?:\\d{1,2}|\\d{4,})(?!\\d)/': 'a cell of 40 characters at most',
    'server/importing/numbers.ts /(?:^|[^\\d.,])\\d+(?:,\\d{3})*\\.(?:\\d{1,2}|\\d{4,})(?!\\d)/': 'a cell of 40 characters at most',
    'server/importing/workbook-cells.ts /\\[\\$([^\\]-]+)(?:-[^\\]]*)?\\]/': 'the first 500 characters of a format',
    'server/importing/workbook-cells.ts /\\[[^\\]]*\\]/g': 'the first 500 characters of a format',
    'server/markdown/outline.ts /\\n+$/': 'blank lines never stand side by side there',
    'server/planning/speaking/lesson.ts /(?<=[.!?…]["”’)]*)\\s+(?=[\\p{Lu}\\p{N}"“‘(])/u': 'begins behind the end of a sentence alone, and no blank is one',
    'server/planning/speaking/spoken-time.ts /[\\p{L}\\p{M}\\p{N}]+(?:(?:(?<=\\p{L})[\'’.](?=\\p{L})|(?<=\\p{N})[.,](?=\\p{N}))[\\p{L}\\p{M}\\p{N}]+)*/gu': 'of its two ways one asks for letters around the mark and the other for digits'
};

test('every expression in language, server and extension', () => {
    const { literals, built } = expressionsIn(['language', 'server', 'extension']);
    const judged = literals.map(expression => ({ ...expression, ...growthOf(expression.literal) }));
    const slow = judged.filter(({ growth }) => growth !== 'linear').map(({ place, literal, growth, why }) => ({ key: `${place.replace(/:\d+$/, '')} ${literal}`, place, growth, why }));
    console.log(`${literals.length} regular expressions: ${judged.length - slow.length} linear, ${slow.length} on texts of a bounded length (${Object.keys(bounded).length} reasons). ${built.length} put together while the program runs.`);
    expect(slow.filter(({ key }) => !(key in bounded))).toEqual([]);
    expect(Object.keys(bounded).filter(key => !slow.some(one => one.key === key))).toEqual([]);
    // Both take the tags of a workbook's XML, each from one "<" to the next, which they cannot run over.
    expect(built.map(({ place }) => place.replace(/:\d+$/, ''))).toEqual(['server/importing/workbook-cells.ts', 'server/importing/workbook-cells.ts']);
    expect(literals.length).toBeGreaterThan(200);
});

test('what reads unbounded text takes little longer for a long one', () => {
    const attacks = ['a'.repeat(200_000), ' '.repeat(200_000), `${'a.'.repeat(100_000)}!`, `${'a\'1.'.repeat(50_000)}`, '-'.repeat(200_000), '1.'.repeat(100_000), '! "'.repeat(60_000), `.${' '.repeat(200_000)}x`];
    for (const attack of attacks) {
        const before = worked();
        spokenWords(attack);
        messageText(attack);
        asCommonNoun(attack);
        shortTitle(attack);
        // Quadratic time would be minutes; nothing here is judged by less than that.
        expect(worked() - before).toBeLessThan(20_000);
    }
    console.log(`${attacks.length} attacks on what reads texts of any length.`);
});

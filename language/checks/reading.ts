import type { Explained } from './check.js';

/** Codes of the lexer: a line that cannot be read as it stands. The rest of the file is read all the same. */
export const readingCodes: readonly Explained[] = [
    {
        code: 'unknown-statement', severity: 'error', title: 'A line that begins with an unknown word',
        explains: 'Each line begins with a word of the language, such as `activity` or `ask:`, or inside a list with a name. This one begins with neither. Often it is a slip of the keys; then the nearest word is offered. If the line was meant to go on from the text above it, move it further in.',
        wrong: 'lesson weigh-1\n  acitvity two-bags 15 min', right: 'lesson weigh-1\n  activity two-bags 15 min'
    },
    {
        code: 'unfinished-line', severity: 'error', title: 'A line with a piece missing or too much',
        explains: 'The line begins well, but something is missing from it or something stands in it that does not belong. The message shows how such a line reads. What could be understood of the line still counts, and so does everything under it.',
        wrong: 'material gram-cube\n  reusable\n  pack of 100 for 14.50 USD', right: 'material gram-cube\n  reusable\n  pack of 100 costs 14.50 USD'
    },
    {
        code: 'wrong-place', severity: 'error', title: 'A line in a block where it does not belong',
        explains: 'The word is one of the language, but it stands in the wrong block: a `pack of` belongs to a material, not to a lesson. Move the line, or check whether the block it should be in has been closed by a line that stands too far left.',
        wrong: 'lesson weigh-1\n  pack of 100', right: 'material gram-cube\n  reusable\n  pack of 100'
    },
    {
        code: 'indentation', severity: 'error', title: 'A line that does not line up',
        explains: 'How far in a line begins says what it belongs to. This line could be read, but only at another depth than the one it stands at. Two spaces for each step in are customary; any depth is accepted as long as the lines of one block begin in the same column.',
        wrong: 'lesson weigh-1\n  activity two-bags\n    do: Lift one bag.\n   do: Lift the other.', right: 'lesson weigh-1\n  activity two-bags\n    do: Lift one bag.\n    do: Lift the other.'
    },
    {
        code: 'tabs-and-spaces', severity: 'error', title: 'Tabs and spaces mixed',
        explains: 'At the start of this line tabs and spaces are mixed in such a way that its depth depends on how wide a tab is. Use tabs or spaces throughout the file.',
        wrong: 'lesson weigh-1\n  activity two-bags\n \tdo: Lift one bag.', right: 'lesson weigh-1\n  activity two-bags\n    do: Lift one bag.'
    },
    {
        code: 'said-twice', severity: 'warning', title: 'Something said twice',
        explains: 'This block says something a second time that it can say only once, such as two sizes of one material. The line further down counts. Keep the one that is right.',
        wrong: 'material gram-cube\n  reusable\n  from kit\n  from shop', right: 'material gram-cube\n  reusable\n  from kit'
    },
    {
        code: 'name-spelling', severity: 'error', title: 'A name that is not in lower case with hyphens',
        explains: 'Names are lower-case words joined by hyphens, such as `pan-balance`, so that they are easy to type and to find. For how the thing is called in the brief, write a title in quotation marks after the name.',
        wrong: 'material Pan-Balance\n  reusable', right: 'material pan-balance "Pan balance"\n  reusable'
    },
    {
        code: 'open-brace', severity: 'error', title: 'A brace that is not closed',
        explains: 'A name in braces refers to a material, print, book, game, lesson, objective or word. The closing brace must stand on the same line. For a plain brace in the text write `\\{`.',
        wrong: 'lesson weigh-1\n  about: Look at the {pan-balance together.', right: 'lesson weigh-1\n  about: Look at the \\{ sign together.'
    },
    {
        code: 'name-in-braces', severity: 'error', title: 'Braces around something that is no name',
        explains: 'Between braces stands exactly one name, in lower-case words with hyphens. For a plain brace in the text write `\\{`.',
        wrong: 'lesson weigh-1\n  about: Look at the {Pan Balance}.', right: 'lesson weigh-1\n  about: Look at the \\{ sign.'
    },
    {
        code: 'missing-colon', severity: 'error', title: 'A colon is missing',
        explains: 'Words such as `do`, `ask` and `note` are followed by a colon; the text runs from there to the end of the line and on over deeper lines.',
        wrong: 'lesson weigh-1\n  about Children compare two masses.', right: 'lesson weigh-1\n  about: Children compare two masses.'
    }
];

/** The parser's own message, should a line pass the lexer and still not fit: never seen so far, and told plainly if it is. */
export const parserCode: Explained = {
    code: 'unread-text', severity: 'error', title: 'Text that could not be read',
    explains: 'This text could not be read. Compare the lines around it with the examples of the reference.',
    wrong: '', right: ''
};

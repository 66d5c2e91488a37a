/** Texts of any size that go beyond what anybody writes: each grows with `n`, and `full` is the size that the long run takes. */

export interface BigText {
    name: string;
    full: number;
    text: (n: number) => string;
}

const lines = (n: number, line: (index: number) => string): string => Array.from({ length: n }, (_, index) => line(index)).join('\n');
const inProse = (prose: string): string => `lesson long "Long"\n  about: ${prose}\n`;
const paragraph = 'Children lift the {hand-bell}, listen, and say what they hear before anybody tells them what it was. ';

const lesson = (index: number): string => `  activity step-${index} "Step ${index}" 5 min
    do: ${paragraph}
    ask: What did you hear in step ${index}?
      expect: A bell that was struck once.
    watch: The bell is held by its rim.
      help: Hold it by the handle.
`;

/** Large, yet of the kind that a person or a program might make. */
export const bigTexts: readonly BigText[] = [
    { name: 'a lesson of 5 MB', full: 5_000_000, text: n => `lesson long "Long"\n  materials\n    hand-bell 1 per pair\n${lines(Math.ceil(n / 300), lesson)}` },
    { name: 'many lessons, 5 MB', full: 5_000_000, text: n => lines(Math.ceil(n / 420), index => `lesson l-${index} "Lesson ${index}"\n  about: ${paragraph}\n  materials\n    hand-bell 1 per pair\n${lesson(index)}`) },
    { name: 'one line of 5 MB: letters', full: 5_000_000, text: n => 'x'.repeat(n) },
    { name: 'one line of 5 MB: a title', full: 5_000_000, text: n => `lesson long "${'Long '.repeat(n / 5)}"\n` },
    { name: 'one line of 5 MB: prose', full: 5_000_000, text: n => inProse(paragraph.repeat(n / paragraph.length)) },
    { name: 'one line of 5 MB: words of statements', full: 5_000_000, text: n => 'lesson material '.repeat(n / 16) },
    { name: 'one line of 5 MB: blanks', full: 5_000_000, text: n => `lesson long "Long"\n${' '.repeat(n)}about: x\n` },
    { name: 'one line of 5 MB: a comment', full: 5_000_000, text: n => `# ${'word '.repeat(n / 5)}\nlesson long "Long"\n` },
    { name: '5 MB of prose on many lines', full: 5_000_000, text: n => `lesson long "Long"\n  about: Begin.\n${lines(n / 105, () => `    ${paragraph}`)}\n` },
    { name: '5 MB of blank lines', full: 5_000_000, text: n => `lesson long "Long"\n${'  \n'.repeat(n / 3)}  about: x\n` },
    { name: '5 MB of comments', full: 5_000_000, text: n => `${'# a remark\n'.repeat(n / 11)}lesson long "Long"\n` },
    { name: '10,000 steps to the right', full: 10_000, text: n => lines(n, index => `${' '.repeat(index)}activity a${index} "A" 5 min`) },
    { name: '10,000 steps to the right, of nothing', full: 10_000, text: n => lines(n, index => `${' '.repeat(index)}about: x`) },
    { name: '10,000 steps to the left', full: 10_000, text: n => lines(n, index => `${' '.repeat(n - index)}ask: What?`) },
    { name: '10,000 tabs to the right', full: 10_000, text: n => lines(n, index => `${'\t'.repeat(index)}materials`) },
    { name: '100,000 materials in a lesson', full: 100_000, text: n => `lesson long "Long"\n  materials\n${lines(n, index => `    thing-${index} ${1 + (index % 9)} per pair`)}\n` },
    { name: '100,000 times one material', full: 100_000, text: n => `lesson long "Long"\n  materials\n${lines(n, () => '    hand-bell 1 per pair')}\n` },
    { name: '100,000 declared materials', full: 100_000, text: n => lines(n, index => `material thing-${index} "Thing ${index}"\n  reusable\n  from kit`) },
    { name: '100,000 declarations of one name', full: 100_000, text: n => lines(n, () => 'material thing "Thing"') },
    { name: '100,000 things in a kit', full: 100_000, text: n => `kit box "Box"\n  holds\n${lines(n, index => `    thing-${index} 4`)}\n` },
    { name: '100,000 units of a course', full: 100_000, text: n => `course c "C" edition 1\n${lines(n, index => `  unit u-${index} "U ${index}"\n    listen-1`)}\n` },
    { name: '100,000 lessons in one unit', full: 100_000, text: n => `course c "C" edition 1\n  unit u "U"\n${lines(n, index => `    l-${index}`)}\n` },
    { name: '100,000 lines of an adaptation', full: 100_000, text: n => `adaptation a of cupboard-orchestra edition 1 for attic\n${lines(n, index => `  skip activity travel-2.longer-${index} because: The room is small.`)}\n` },
    // Each line makes the lesson anew: the one list whose time grows with its square. Nobody changes one lesson twenty thousand times.
    { name: '20,000 lines that add to one lesson', full: 20_000, text: n => `adaptation a of cupboard-orchestra edition 1 for attic\n${lines(n, () => '  add to listen-1 because: It is short.\n    note: Wait.')}\n` },
    { name: '100,000 times on hand', full: 100_000, text: n => `class k "K"\n  teaches cupboard-orchestra\n  learners 5\n  starts 2026-10-03\n  meets sat\n  on hand\n${lines(n, () => '    rice 200 g')}\n` },
    { name: '100,000 days off', full: 100_000, text: n => `class k "K"\n  teaches cupboard-orchestra\n  learners 5\n  starts 2026-10-03\n  meets sat\n${lines(n, index => `  off 20${20 + (index % 70)}-0${1 + (index % 9)}-1${index % 9}`)}\n` },
    { name: '100,000 objectives that build on one another', full: 100_000, text: n => lines(n, index => `objective o-${index} "O ${index}"\n  in s${index > 0 ? `\n  builds on o-${index - 1}` : ''}`) },
    { name: '100,000 names that a lesson follows', full: 100_000, text: n => `lesson long "Long"\n  follows ${Array.from({ length: n }, (_, index) => `l-${index}`).join(', ')}\n` },
    { name: '100,000 lessons in a row, each after the one before', full: 100_000, text: n => lines(n, index => `lesson l-${index} "L"${index > 0 ? `\n  follows l-${index - 1}` : ''}`) },
    { name: '100,000 words of a lesson', full: 100_000, text: n => `lesson long "Long"\n  words ${Array.from({ length: n }, (_, index) => `w${index}`).join(', ')}\n` },
    { name: '100,000 practice lines', full: 100_000, text: n => `lesson long "Long"\n  practice p "P" 10 items 5 min\n${lines(n, () => '    name numbers 21 to 99')}\n` },
    { name: '100,000 numbers to return to', full: 100_000, text: n => `lesson long "Long"\n  practice p "P" 10 items 5 min\n    name numbers 21 to 99\n    return to ${Array.from({ length: n }, (_, index) => 21 + (index % 70)).join(', ')}\n` },
    { name: '100,000 broken lines', full: 100_000, text: n => lines(n, index => `${'  '.repeat(index % 4)}zzz qqq ${index}`) },
    { name: '100,000 questions in one activity', full: 100_000, text: n => `lesson long "Long"\n  activity a "A" 5 min\n${lines(n, index => `    ask: What ${index}?\n      expect: That.`)}\n` }
];

/** Prose that a careless reader of Markdown, braces or quotation marks takes time or depth for. */
export const pathologicalProse: readonly BigText[] = [
    ...([
        ['asterisks', '*'], ['underscores', '_'], ['opening brackets', '['], ['closing brackets', ']'], ['opening braces', '{'], ['closing braces', '}'], ['backticks', '`'], ['less than', '<'], ['ampersands', '&'], ['backslashes', '\\'],
        ['quotation marks', '"'], ['exclamation marks and brackets', '!['], ['emphasis opened', ' *a'], ['strong opened', ' **a'], ['emphasis of two kinds', '*a _b '], ['links half open', '[a]('], ['links in links', '[a](b'],
        ['braces around braces', '{a{b}'], ['names', '{hand-bell}'], ['names set apart', '*{hand-bell}* '], ['addresses half open', '<https://'], ['addresses', '<https://example.org> '], ['entities', '&#60;'], ['entities half open', '&a'], ['link with a title', '[a](b "'],
        ['spaces before a line end', '  \\\n    '], ['list marks', '- '], ['numbered list marks', '1. '], ['quotation begun', ', "'], ['abbreviations', 'e.g. '], ['combining marks', '\u0301'], ['right-to-left marks', '\u202e'], ['private use', '\ue000'], ['lone surrogates', '\ud800'], ['NUL', '\0'],
        ['joined emoji', '👩‍'], ['not-a-space blanks', '\u00a0'], ['colons', 'a: '], ['hyphens', 'a-'], ['line separators', 'a\u2028']
    ] satisfies [string, string][]).map(([name, unit]) => ({ name: `prose of ${name}`, full: 100_000, text: (n: number) => inProse(unit.repeat(n)) })),
    { name: 'prose of backticks of every length', full: 1200, text: n => inProse(Array.from({ length: n }, (_, length) => '`'.repeat(length)).join(' a ')) },
    { name: 'prose of nested links', full: 10_000, text: n => inProse(`${'['.repeat(n)}a${'](https://example.org)'.repeat(n)}`) },
    { name: 'prose of nested emphasis', full: 100_000, text: n => inProse(`${'*a '.repeat(n)}${'a* '.repeat(n)}`) },
    { name: 'prose of asterisks around a word', full: 100_000, text: n => inProse(`${'*'.repeat(n)}a${'*'.repeat(n)}`) },
    { name: 'prose of a list in a list', full: 10_000, text: n => `lesson long "Long"\n  about: Begin.\n\n${lines(n, index => `    ${' '.repeat(2 * Math.min(index, 500))}- a`)}\n` },
    { name: 'prose of 100,000 paragraphs', full: 100_000, text: n => `lesson long "Long"\n  about: Begin.\n${lines(n, () => '\n    Again.')}\n` },
    { name: 'prose of 100,000 list items', full: 100_000, text: n => `lesson long "Long"\n  about: Begin.\n${lines(n, index => `    - item ${index}`)}\n` }
];

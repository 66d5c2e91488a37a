/** A slip is told of once: what follows from it elsewhere waits until it is mended, and what has nothing to do with it does not. */
import { expect, test } from 'vitest';
import { problemsIn, readFixture } from './fixture.js';

const things = 'material cup\n  reusable\nmaterial rope\n  consumable\n  measured in m\n';
const course = 'course c\n  unit u\n    l-1\n    l-2\n';
const goals = 'objective mass\nobjective length\n';
const teaches = 'lesson l-1\n  objectives\n    introduces mass\n    introduces length\nlesson l-2\n  objectives\n    checks mass\n    checks length\n';

/** Codes of a text in the order in which they are told, each with the line it is told at. */
async function codes(text: string): Promise<string[]> {
    return (await problemsIn(readFixture(text).files)).map(({ code, at }) => `${code} ${at.start.line + 1}`);
}

test.each<[string, string, string[]]>([
    ['a lesson in no course, misspelt in one', `course c\n  unit u\n    sort-bgas\nlesson sort-bags\n  about: One.\n`, ['unknown-name 3']],
    ['a lesson in no course, half typed in one', `course c\n  unit u\n    sor\nlesson sort-bags\n  about: One.\n`, ['unknown-name 3']],
    ['another lesson is not meant by that', `course c\n  unit u\n    sor\nlesson weigh-bags\n  about: One.\n`, ['unknown-name 3', 'lesson-not-taught 4']],
    ['a game that nobody plays, misspelt in a lesson', 'game grocer\n  do: Sell.\nlesson l-1\n  game grocre 5 min\n', ['unknown-name 4']],
    ['a thing that nobody uses, misspelt in a game', 'material basket\n  reusable\ngame grocer\n  materials\n    baskett 1 per pair\nlesson l-1\n  game grocer 5 min\n', ['unknown-name 5']],
    ['a thing that nobody uses, misspelt in a kit', `material basket\n  reusable\nkit box\n  holds\n    baskett 1\n${course}  uses box 1 in all\nlesson l-1\n  about: One.\nlesson l-2\n  about: Two.\n`, ['unknown-name 5']],
    ['a thing that nobody uses, misspelt in braces', 'material basket\n  reusable\nlesson l-1\n  about: A {baskett}.\n', ['unknown-name 4']],
    ['a name in braces that is known says nothing of it', `${goals}material lenght-stick\n  reusable\nlesson l-1\n  about: Of {length} and {mass}.\n`, ['unused-thing 3']],
    ['an objective that nobody teaches, misspelt in a lesson', `${goals}lesson l-1\n  objectives\n    checks mass, lenght\n`, ['unknown-name 5']],
    ['an objective not introduced, misspelt where it is', `${goals}${course}${teaches.replace('introduces length', 'introduces lenght')}`, ['unknown-name 10']],
    ['an objective not checked, misspelt where it is', `${goals}${course}${teaches.replace('checks length', 'checks lenght')}`, ['unknown-name 14']],
    ['an objective not checked, in a lesson with a line that cannot be read', `${goals}${course}${teaches.replace('    checks length\n', '').replace('lesson l-2\n', 'lesson l-2\n  folows l-1\n')}`, ['unknown-statement 12']],
    ['a material that is neither, with a line that cannot be read', 'material cup\n  reusabel\n', ['unknown-statement 2']],
    ['a line above the first declaration belongs to nothing', 'reusabel\nmaterial cup\n  size 3 cm\n', ['unknown-statement 1', 'missing-use 2']],
    ['a broken line of one declaration leaves the next alone', 'material cup\n  reusabel\nmaterial rope\n  size 3 cm\n', ['unknown-statement 2', 'missing-use 3']],
    ['a broken line of another file as well', '--- a.kit\nmaterial cup\n  reusabel\n--- b.kit\nmaterial rope\n  size 3 cm\n', ['unknown-statement 2', 'missing-use 1']],
    ['the amount of a thing that a broken line declares', `${things.replace('measured in', 'mesured in')}lesson l-1\n  materials\n    rope 3 m\n  activity a 5 min\n    do: Tie the {rope}, fill the {cup}.\n`, ['unknown-statement 5', 'not-in-materials 10']],
    ['a caution of a line that is wrong in itself', 'class k\n  teaches c\n  learners 3\n  starts 2026-09-07\n  meets mon\n  session 30 minutes\ncourse c\n', ['unfinished-line 6']],
    ['a class that is not ready, with a line that cannot be read', 'course c\nclass k\n  teaches c\n  lerners 3\n', ['unknown-statement 4']],
    ['a word that a broken line may teach by then', `${course}lesson l-1\n  wrods heavier\nlesson l-2\n  words heavier\n  about: Two.\nlesson l-3\n  about: {heavier}.\n`, ['unknown-statement 6', 'lesson-not-taught 10']],
    ['a kit that nobody uses, named in a broken line', `${things}kit box\n  holds\n    cup 1\n    rope 1 m\n${course}  usses box 1 in all\nlesson l-1\n  not needed cup, rope\nlesson l-2\n  about: Two.\n`, ['unknown-statement 14']]
])('%s', async (_, text, told) => expect(await codes(text)).toEqual(told));

test('what is only missing so far is a hint in a draft, from its first line to its last, and not beside it', async () => {
    const untimed = (name: string, more = ''): string => `lesson ${name}\n${more}  activity a-${name}\n    do:\n`;
    const text = `${course}    l-3\nclass k\n  teaches c\n  learners 3\n  starts 2026-09-07\n  meets mon\n  session 30 min\n${untimed('l-1')}${untimed('l-2', '  draft\n')}${untimed('l-3')}`;
    const severities = (await problemsIn(readFixture(text).files)).map(({ code, severity, at }) => [code, severity, at.start.line + 1]);
    expect(severities).toEqual([
        ['activity-without-time', 'warning', 13], ['activity-without-time', 'hint', 17], ['activity-without-time', 'warning', 20],
        ['empty-text', 'warning', 14], ['empty-text', 'hint', 18], ['empty-text', 'warning', 21]
    ]);
});

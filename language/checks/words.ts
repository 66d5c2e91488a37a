import type { LessonSheet, Prose, Range } from '../sheets/sheet.js';
import type { Check, Finding, Fix } from './check.js';
import { inLessonHead, insertAfter, lastOf, teachBefore } from './fixes.js';
import type { ProgrammeView, Taught } from './programme-view.js';

const course = 'course measuring\n  unit weighing\n    weigh-1\n    weigh-2\n\n';

export const wordBeforeTaught: Check = {
    code: 'word-before-taught', severity: 'warning', title: 'A word used before it is taught',
    explains: 'The text uses a word in braces that the course teaches only in a later lesson: children hear it before anybody has told them what it means. Teach the word in this lesson, or change the order of the lessons. A word may be taught more than once; the first time counts.',
    wrong: `${course}lesson weigh-1\n  activity lift 10 min\n    do: Which bag is {heavier}?\n\nlesson weigh-2\n  words heavier`,
    right: `${course}lesson weigh-1\n  words heavier\n  activity lift 10 min\n    do: Which bag is {heavier}?\n\nlesson weigh-2\n  words heavier`,
    *find(file, view) {
        for (const { lesson, here, words } of lessonsWithLaterWords(file.lessons, view)) {
            for (const { name, at } of view.factsOf(lesson).named.values()) {
                const taught = words.get(name);
                if (taught && isWord(name, view)) yield tell(lesson, here, taught, name, at);
            }
        }
    }
};

export const plainWordBeforeTaught: Check = {
    code: 'plain-word-before-taught', severity: 'hint', title: 'A word said or asked before it is taught',
    explains: 'What the adult says or asks here contains a word that the course teaches only in a later lesson. If it is meant in that sense, teach it here or say it in another way; if it is an everyday word in its everyday sense, leave it.',
    wrong: `${course}lesson weigh-1\n  activity lift 10 min\n    ask: Which bag is heavier?\n\nlesson weigh-2\n  words heavier`,
    right: `${course}lesson weigh-1\n  activity lift 10 min\n    ask: Which bag pulls your hand down more?\n\nlesson weigh-2\n  words heavier`,
    *find(file, view) {
        for (const { lesson, here, words } of lessonsWithLaterWords(file.lessons, view)) {
            const { spoken, steps } = view.factsOf(lesson);
            if (![...spoken()].some(word => words.startingWith(word).length > 0)) continue;
            const told = new Set<string>();
            for (const { word, prose } of steps) {
                if (word !== 'say' && word !== 'ask') continue;
                for (const { name, at } of laterWordsIn(prose, words)) {
                    if (told.has(name)) continue;
                    told.add(name);
                    yield tell(lesson, here, words.get(name)!, name, at);
                }
            }
        }
    }
};

/** Lessons with their place in a course, where some word of that course is first taught after them. */
function* lessonsWithLaterWords(lessons: readonly LessonSheet[], view: ProgrammeView): Iterable<{ lesson: LessonSheet; here: Taught; words: LaterWords }> {
    for (const lesson of lessons) {
        const here = view.placesOf(lesson)[0];
        if (!here) continue;
        const { words, wordsByStart } = view.factsOfCourse(here.course);
        if (words.size > 0) yield { lesson, here, words: new LaterWords(words, wordsByStart, here.index, view.programme.unreadable) };
    }
}

const none: readonly string[] = [];

class LaterWords {
    constructor(
        private readonly words: ReadonlyMap<string, Taught>, private readonly byStart: ReadonlyMap<string, readonly string[]>,
        private readonly index: number, private readonly unreadable: ReadonlySet<string>
    ) {}

    get(name: string): Taught | undefined {
        const taught = this.words.get(name);
        return taught && taught.index > this.index && !this.unreadable.has(name) ? taught : undefined;
    }

    /** Words of the course that begin with this one: `place-value` begins with `place`. */
    startingWith(word: string): readonly string[] {
        return this.byStart.get(word)?.filter(name => this.get(name)) ?? none;
    }
}

function isWord(name: string, { programme }: ProgrammeView): boolean {
    return ![programme.materials, programme.prints, programme.books, programme.games, programme.lessons, programme.objectives].some(names => names.has(name));
}

function* laterWordsIn(prose: Prose, words: LaterWords): Iterable<{ name: string; at: Range }> {
    for (const part of prose.parts) {
        if (!('text' in part)) continue;
        for (const [lineNumber, line] of part.text.split('\n').entries()) {
            const start = part.starts?.[lineNumber];
            const pieces = [...line.matchAll(/[\p{L}\p{N}]+/gu)];
            for (const [index, piece] of pieces.entries()) {
                for (const name of words.startingWith(piece[0].toLowerCase())) {
                    const length = name.split('-').length;
                    const found = pieces.slice(index, index + length);
                    if (found.map(([word]) => word.toLowerCase()).join('-') !== name) continue;
                    const end = found[length - 1]!.index + found[length - 1]![0].length;
                    yield {
                        name,
                        at: start ? { start: { line: start.line, character: start.character + piece.index }, end: { line: start.line, character: start.character + end } } : prose.at
                    };
                }
            }
        }
    }
}

function tell(lesson: LessonSheet, here: Taught, taught: Taught, word: string, at: Range): Finding {
    const fixes: Fix[] = [{ title: `Teach '${word}' in this lesson`, edits: [teachWord(lesson, word)], preferred: true }];
    fixes.push(teachBefore(here.course, taught.mention, here.mention));
    return {
        message: `'${word}' is taught only later in the course '${here.course.name}', in lesson '${taught.mention.name}'.`, at, fixes,
        related: [{ message: `'${taught.mention.name}' is taught here`, place: { uri: here.course.uri, range: taught.mention.at } }]
    };
}

function teachWord(lesson: LessonSheet, word: string): Fix['edits'][number] {
    const last = lastOf(lesson.words.map(({ at }) => at));
    return last ? insertAfter(lesson.uri, last, `, ${word}`) : inLessonHead(lesson, [`words ${word}`]);
}

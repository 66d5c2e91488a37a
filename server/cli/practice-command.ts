import { existsSync } from 'node:fs';
import { URI } from 'langium';
import { programmeFile } from '@haversack/language/facts/programme-file';
import { adaptedFor } from '@haversack/language/adapting/adapt-course';
import type { Adapted } from '@haversack/language/adapting/adapted';
import { nearest } from '@haversack/language/lexer/nearest';
import { mostItems } from '@haversack/language/practice/sequence';
import type { Programme } from '@haversack/language/sheets/programme';
import type { LessonSheet } from '@haversack/language/sheets/sheet';
import { practiceSheetMarkdown } from '../brief/practice-sheet/markdown.js';
import { practiceSheetPage } from '../brief/practice-sheet/page.js';
import { practiceSheetText } from '../brief/practice-sheet/text.js';
import { figuresJson } from '../exports/json.js';
import { lessonAsTaught, planPracticeSheet, practicesOf } from '../planning/practice.js';
import { CouldNotRun } from './could-not-run.js';
import { deliver, errorsTold, mustKnowClass } from './output.js';
import { chosenFormat, chosenPaper, type PlanOptions, type Write } from './planned.js';
import { readProgramme, type ReadProgramme } from './read-programme.js';

export type PracticeOptions = PlanOptions & { in: string; practice?: string; more?: string; key?: boolean };

/** Writes a lesson's practice as a sheet, or its answer key. JSON has the answers in any case. */
export async function practiceCommand(wanted: string, options: PracticeOptions, write: Write, tell: Write): Promise<number> {
    const format = chosenFormat(options, ['text', 'md', 'html', 'json'], 'practice');
    const paper = chosenPaper(options, format);
    const more = numberOfItems(options.more);
    const isFile = programmeFile.test(wanted) && existsSync(wanted);
    const read = await readProgramme(isFile ? wanted : options.in);
    mustKnowClass(read.view.programme, options.class);
    const { programme } = read.view;
    const adapted = options.class === undefined ? undefined : adaptedFor(programme, { class: options.class });
    const lesson = isFile ? onlyLesson(wanted, read, adapted) : lessonNamed(wanted, options, programme, adapted);
    mustHavePractice(lesson, options.practice);
    const sheet = planPracticeSheet(lesson, { practice: options.practice, more });
    const text = format === 'html' ? practiceSheetPage(sheet, { key: options.key, root: URI.file(read.root).toString(), paper })
        : format === 'md' ? practiceSheetMarkdown(sheet, options.key)
            : format === 'json' ? figuresJson('haversack-practice', { practice: sheet })
                : practiceSheetText(sheet, options.key);
    deliver(text, options.out, write, tell);
    return errorsTold(read.problems.filter(({ uri }) => uri === lesson.uri), 'the sheet', tell);
}

function numberOfItems(written: string | undefined): number | undefined {
    if (written === undefined) return undefined;
    const count = Number(written);
    if (!/^\d+$/.test(written) || count < 1) throw new CouldNotRun(`'${written}' is no number of items: write a whole number from 1 up after --more.`);
    if (count > mostItems) throw new CouldNotRun(`${written} further items are more than anybody practises at once: ask for ${mostItems} at most.`);
    return count;
}

/** The lesson of a file that has practice, as it is taught. */
function onlyLesson(path: string, { files, view: { programme } }: ReadProgramme, adapted: Adapted | undefined): LessonSheet {
    const written = files.flatMap(uri => programme.files.get(uri)?.lessons ?? []);
    const lessons = [...new Set(written.map(lesson => lessonAsTaught(lesson.name, programme, adapted) ?? lesson))];
    const practised = lessons.filter(lesson => practicesOf(lesson).length > 0);
    const [only, another] = practised.length > 0 ? practised : lessons;
    if (!only) throw new CouldNotRun(`There is no lesson in ${path}.`);
    if (another) throw new CouldNotRun(`${path} has several lessons with practice: ${practised.map(({ name }) => name).join(', ')}. Name one, and give the folder with --in.`);
    return only;
}

function lessonNamed(name: string, options: PracticeOptions, programme: Programme, adapted: Adapted | undefined): LessonSheet {
    const lesson = lessonAsTaught(name, programme, adapted);
    if (lesson) return lesson;
    const meant = nearest(name, [...(adapted?.programme ?? programme).lessons.keys()]);
    const where = options.in === '.' ? 'this folder' : options.in;
    throw new CouldNotRun(`There is no lesson '${name}' in ${where}.${meant === undefined ? ` Give the folder of the programme with --in.` : ` Did you mean ${meant}?`}`);
}

function mustHavePractice(lesson: LessonSheet, name: string | undefined): void {
    const names = practicesOf(lesson).map(part => part.name);
    if (names.length === 0) throw new CouldNotRun(`No practice items can be made for lesson '${lesson.name}': write a practice in it, with a line such as 'name numbers 11 to 99'.`);
    if (name !== undefined && !names.includes(name)) throw new CouldNotRun(`Lesson '${lesson.name}' has no practice '${name}' with items. It has ${names.join(', ')}.`);
}

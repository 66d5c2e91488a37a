import type { Programme } from '@haversack/language/sheets/programme';
import type { ScheduleFigures } from '../planning/schedule-figures.js';
import { planSchedule } from '../planning/schedule.js';
import { papers, type Paper } from '../brief/look/paper.css.js';
import { CouldNotRun } from './could-not-run.js';
import { formatOf, mustKnowClass } from './output.js';
import { readProgramme, type ReadProgramme } from './read-programme.js';

/** What the commands that show the plan can be asked. */
export interface PlanOptions {
    class?: string;
    format?: string;
    out?: string;
    today?: string;
    week?: string;
    records?: boolean;
    /** The paper of a page. */
    paper?: string;
}

export type Write = (text: string) => void;

/** The programme with the schedule of the class that is asked for, or of the first. */
export async function planned(path: string, options: PlanOptions): Promise<{ read: ReadProgramme; schedule: ScheduleFigures }> {
    const read = await readProgramme(path);
    mustKnowClass(read.view.programme, options.class);
    return { read, schedule: planSchedule(read.view.programme, { class: options.class }) };
}

/** The format that is asked for, else that of the file's ending, else `otherwise`. */
export function chosenFormat(options: PlanOptions, formats: readonly string[], what: string, otherwise = 'text'): string {
    const format = options.format ?? formatOf(options.out, otherwise);
    if (formats.includes(format)) return format;
    throw new CouldNotRun(`There is no format '${format}' for ${what}: use ${formats.slice(0, -1).join(', ')} or ${formats[formats.length - 1]}.`);
}

/** The paper that a page is asked for; undefined where none is named, so that the printer's counts. */
export function chosenPaper({ paper }: Pick<PlanOptions, 'paper'>, format: string): Paper | undefined {
    if (paper === undefined) return undefined;
    const known = papers.find(one => one === paper.toLowerCase());
    if (known === undefined) throw new CouldNotRun(`There is no paper '${paper}': use a4 or letter.`);
    if (format !== 'html') throw new CouldNotRun(`--paper is for a page to print: ask for it with --format html.`);
    return known;
}

/** The week that is asked for, counted from 1; undefined where none is. */
export function weekOf(written: string | undefined, { weeks }: ScheduleFigures): number | undefined {
    if (written === undefined) return undefined;
    const week = Number(written);
    if (!/^\d+$/.test(written) || week < 1) throw new CouldNotRun(`'${written}' is no week: weeks are counted from 1.`);
    if (week > weeks.length) throw new CouldNotRun(`There is no week ${week}: the plan has ${weeks.length} ${weeks.length === 1 ? 'week' : 'weeks'}.`);
    return week;
}

/** "Measure and Make, Harbour co-op": the course and the class, as far as there are any. */
export function titleOf(programme: Programme, schedule: ScheduleFigures): string {
    const course = schedule.course === undefined ? 'All lessons' : programme.courses.get(schedule.course)?.title ?? schedule.course;
    const group = schedule.class === undefined ? undefined : programme.classes.get(schedule.class)?.title;
    return group === undefined ? course : `${course}, ${group}`;
}

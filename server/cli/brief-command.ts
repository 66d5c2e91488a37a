import { URI } from 'langium';
import { briefMarkdown } from '../brief/markdown.js';
import { briefPage } from '../brief/page.js';
import { briefJson } from '../exports/brief-json.js';
import type { WeekBrief } from '../planning/figures.js';
import { planSchedule } from '../planning/schedule.js';
import { planWeek } from '../planning/week.js';
import { CouldNotRun } from './could-not-run.js';
import { deliver, errorsTold, formatOf, mustKnowClass } from './output.js';
import { readProgramme } from './read-programme.js';
import { todayOf } from './today.js';

export interface BriefOptions {
    week: string;
    class?: string;
    format?: string;
    out?: string;
    today?: string;
}

const writers: Record<string, (brief: WeekBrief, root: string) => string> = {
    html: (brief, root) => briefPage(brief, { root }),
    md: brief => briefMarkdown(brief),
    json: brief => briefJson(brief)
};

/** Writes a week's brief. With errors in the text the brief shows what could be read, and the exit code says so. */
export async function briefCommand(path: string, options: BriefOptions, write: (text: string) => void, tell: (text: string) => void): Promise<number> {
    const format = options.format ?? formatOf(options.out, 'md');
    const writer = Object.hasOwn(writers, format) ? writers[format] : undefined;
    if (!writer) throw new CouldNotRun(`There is no format '${format}' for a brief: use html, md or json.`);
    const week = Number(options.week);
    if (!/^\d+$/.test(options.week) || week < 1) throw new CouldNotRun(`'${options.week}' is no week: weeks are counted from 1.`);
    const { view: { programme }, problems, root } = await readProgramme(path);
    mustKnowClass(programme, options.class);
    const schedule = planSchedule(programme, { class: options.class });
    const weeks = schedule.weeks.length;
    if (weeks === 0) throw new CouldNotRun('No lesson of this programme stands in a course, so there is no week to write about.');
    if (week > weeks) throw new CouldNotRun(`There is no week ${week}: the plan has ${weeks} ${weeks === 1 ? 'week' : 'weeks'}.`);
    const text = writer(planWeek(programme, { class: options.class, week }, { schedule, today: todayOf(options.today) }), URI.file(root).toString());
    deliver(text, options.out, write, tell);
    return errorsTold(problems, 'the brief', tell);
}

import { existsSync, writeFileSync } from 'node:fs';
import { dirname, extname } from 'node:path';
import { URI } from 'langium';
import { briefJson } from '../brief/json.js';
import { briefMarkdown } from '../brief/markdown.js';
import { briefPage } from '../brief/page.js';
import type { WeekBrief } from '../planning/figures.js';
import { planSchedule } from '../planning/schedule.js';
import { planWeek } from '../planning/week.js';
import { CouldNotRun, exitCodes } from './could-not-run.js';
import { readProgramme, reason } from './read-programme.js';

export interface BriefOptions {
    week: string;
    class?: string;
    format?: string;
    out?: string;
}

const writers: Record<string, (brief: WeekBrief, root: string) => string> = {
    html: (brief, root) => briefPage(brief, { root }),
    md: brief => briefMarkdown(brief),
    json: brief => briefJson(brief)
};

/** Writes a week's brief. With errors in the text the brief shows what could be read, and the exit code says so. */
export async function briefCommand(path: string, options: BriefOptions, write: (text: string) => void, tell: (text: string) => void): Promise<number> {
    const format = options.format ?? formatOf(options.out);
    const writer = Object.hasOwn(writers, format) ? writers[format] : undefined;
    if (!writer) throw new CouldNotRun(`There is no format '${format}' for a brief: use html, md or json.`);
    const week = Number(options.week);
    if (!/^\d+$/.test(options.week) || week < 1) throw new CouldNotRun(`'${options.week}' is no week: weeks are counted from 1.`);
    const { view: { programme }, problems, root } = await readProgramme(path);
    if (options.class !== undefined && !programme.classes.has(options.class)) {
        const known = [...programme.classes.keys()];
        const there = known.length === 0 ? 'This programme declares no class.' : known.length === 1 ? `The only class is ${known[0]}.` : `The classes are ${known.join(', ')}.`;
        throw new CouldNotRun(`There is no class '${options.class}'. ${there}`);
    }
    const schedule = planSchedule(programme, { class: options.class });
    const weeks = schedule.weeks.length;
    if (weeks === 0) throw new CouldNotRun('No lesson of this programme stands in a course, so there is no week to write about.');
    if (week > weeks) throw new CouldNotRun(`There is no week ${week}: the plan has ${weeks} ${weeks === 1 ? 'week' : 'weeks'}.`);
    const text = writer(planWeek(programme, { class: options.class, week }, { schedule }), URI.file(root).toString());
    if (options.out === undefined) write(text);
    else save(options.out, text, tell);
    const errors = problems.filter(({ severity }) => severity === 'error').length;
    if (errors > 0) tell(`${errors} ${errors === 1 ? 'error' : 'errors'} in the text: the brief shows what could be read. 'haversack check' lists them.\n`);
    return errors > 0 ? exitCodes.problems : exitCodes.fine;
}

function formatOf(out: string | undefined): string {
    const ending = out === undefined ? '' : extname(out).slice(1).toLowerCase();
    return ending === 'htm' ? 'html' : ending === 'markdown' || ending === '' ? 'md' : ending;
}

function save(out: string, text: string, tell: (text: string) => void): void {
    try {
        writeFileSync(out, text);
    } catch (error) {
        const folder = dirname(out);
        throw new CouldNotRun(`${out} could not be written: ${existsSync(folder) ? reason(error) : `there is no folder ${folder}`}.`);
    }
    tell(`Wrote ${out}\n`);
}

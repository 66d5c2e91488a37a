import { URI } from 'langium';
import { briefMarkdown } from '../brief/markdown.js';
import { briefPage } from '../brief/page.js';
import { briefJson } from '../exports/brief-json.js';
import { nothingTaught } from '../planning/nothing-taught.js';
import { planWeek } from '../planning/week.js';
import { CouldNotRun } from './could-not-run.js';
import { deliver, errorsTold } from './output.js';
import { chosenFormat, chosenPaper, planned, weekOf, type PlanOptions, type Write } from './planned.js';
import { todayOf } from './today.js';

export type BriefOptions = PlanOptions & { week: string };

/** Writes a week's brief. With errors in the text the brief shows what could be read, and the exit code says so. */
export async function briefCommand(path: string, options: BriefOptions, write: Write, tell: Write): Promise<number> {
    const format = chosenFormat(options, ['html', 'md', 'json'], 'a brief', 'md');
    const paper = chosenPaper(options, format);
    const { read: { view: { programme }, problems, root }, schedule } = await planned(path, options);
    if (schedule.weeks.length === 0) throw new CouldNotRun(`${nothingTaught(programme, { class: options.class })}, so there is no week to write about.`);
    const brief = planWeek(programme, { class: options.class, week: weekOf(options.week, schedule)! }, { schedule, today: todayOf(options.today) });
    const text = format === 'html' ? briefPage(brief, { root: URI.file(root).toString(), paper }) : format === 'json' ? briefJson(brief) : briefMarkdown(brief);
    deliver(text, options.out, write, tell);
    return errorsTold(problems, 'the brief', tell);
}

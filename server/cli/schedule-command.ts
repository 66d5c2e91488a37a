import { URI } from 'langium';
import type { Programme } from '@haversack/language/sheets/programme';
import type { Paper } from '../brief/look/paper.css.js';
import { termPage } from '../brief/term/page.js';
import { scheduleCalendar, sectionHours, withoutDates } from '../exports/calendar.js';
import { figuresJson } from '../exports/json.js';
import { scheduleMarkdown } from '../exports/schedule-markdown.js';
import { scheduleText } from '../exports/schedule-text.js';
import { newPlanningCache } from '../planning/cache.js';
import type { ScheduleFigures } from '../planning/schedule-figures.js';
import { planSupplies } from '../planning/supplies/plan-supplies.js';
import { planTerm } from '../planning/term.js';
import { CouldNotRun } from './could-not-run.js';
import { deliver, errorsTold, writtenBefore } from './output.js';
import { chosenFormat, chosenPaper, planned, titleOf, type PlanOptions, type Write } from './planned.js';
import type { ReadProgramme } from './read-programme.js';
import { momentOf, todayOf } from './today.js';

/** Which lesson on which day. Written over an earlier calendar, what did not change keeps its stamp and what is gone is called off. */
export async function scheduleCommand(path: string, options: PlanOptions, write: Write, tell: Write): Promise<number> {
    const format = chosenFormat(options, ['text', 'md', 'json', 'ics', 'html'], 'a schedule');
    const paper = chosenPaper(options, format);
    const { read, schedule } = await planned(path, options);
    const { programme } = read.view;
    const title = titleOf(programme, schedule);
    const refusal = format === 'ics' ? withoutDates(schedule) : undefined;
    if (refusal !== undefined) throw new CouldNotRun(refusal);
    const text = format === 'ics' ? calendarOf(programme, schedule, title, options)
        : format === 'html' ? termHtml(read, schedule, options, paper)
            : format === 'md' ? scheduleMarkdown(schedule, title)
                : format === 'json' ? figuresJson('haversack-schedule', { schedule })
                    : scheduleText(schedule, title);
    deliver(text, options.out, write, tell);
    return errorsTold(read.problems, 'the schedule', tell);
}

function calendarOf(programme: Programme, schedule: ScheduleFigures, title: string, options: PlanOptions): string {
    const sections = schedule.class === undefined ? [] : programme.classes.get(schedule.class)?.sections ?? [];
    const { orders } = planSupplies(programme, { class: options.class }, { schedule, today: todayOf(options.today) });
    return scheduleCalendar(schedule, {
        title, orders, now: momentOf(options.today), before: writtenBefore(options.out),
        hours: sectionHours(sections)
    });
}

/** The whole term view: calendar, stock, buying, coverage. */
function termHtml({ view: { programme }, root }: ReadProgramme, schedule: ScheduleFigures, options: PlanOptions, paper: Paper | undefined): string {
    const term = planTerm(programme, { class: options.class }, { schedule, today: todayOf(options.today), cache: newPlanningCache() });
    return termPage(term, { root: URI.file(root).toString(), paper });
}

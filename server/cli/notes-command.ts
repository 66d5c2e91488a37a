import { proseOf } from '../brief/prose-in-words.js';
import { notesMarkdown } from '../brief/speaking/markdown.js';
import { notesText } from '../brief/speaking/text.js';
import { figuresJson } from '../exports/json.js';
import { nothingTaught } from '../planning/nothing-taught.js';
import { speakingNotes } from '../planning/speaking.js';
import { fastestRate, slowestRate } from '../planning/speaking/spoken-time.js';
import { planWeek } from '../planning/week.js';
import { CouldNotRun } from './could-not-run.js';
import { deliver, errorsTold } from './output.js';
import { chosenFormat, planned, weekOf, type PlanOptions, type Write } from './planned.js';
import { todayOf } from './today.js';

export type NotesOptions = PlanOptions & { week: string; rate?: string };

/** Writes an outline for walking families through a week aloud. */
export async function notesCommand(path: string, options: NotesOptions, write: Write, tell: Write): Promise<number> {
    const format = chosenFormat(options, ['md', 'text', 'json'], 'speaking notes', 'md');
    const rate = rateOf(options.rate);
    const { read: { view: { programme }, problems }, schedule } = await planned(path, options);
    if (schedule.weeks.length === 0) throw new CouldNotRun(`${nothingTaught(programme, { class: options.class })}, so there is no week to speak about.`);
    const brief = planWeek(programme, { class: options.class, week: weekOf(options.week, schedule)! }, { schedule, today: todayOf(options.today) });
    const notes = speakingNotes(brief, { rate, inWords: proseOf(brief) });
    deliver(format === 'json' ? figuresJson('haversack-notes', { notes }) : format === 'text' ? notesText(notes) : notesMarkdown(notes), options.out, write, tell);
    return errorsTold(problems, 'the outline', tell);
}

function rateOf(written: string | undefined): number | undefined {
    if (written === undefined) return undefined;
    const rate = Number(written);
    if (/^\d+$/.test(written) && rate >= slowestRate && rate <= fastestRate) return rate;
    throw new CouldNotRun(`'${written}' is no rate: give words a minute, a whole number from ${slowestRate} to ${fastestRate}.`);
}

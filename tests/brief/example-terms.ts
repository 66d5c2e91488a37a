/** The examples' terms, read and planned as the command line does it. */
import { fileURLToPath } from 'node:url';
import type { TermFigures } from '@haversack/server/planning/term-figures';
import { readProgramme } from '@haversack/server/cli/read-programme';
import { planCoverage } from '@haversack/server/planning/coverage';
import { planSchedule } from '@haversack/server/planning/schedule';
import { planSupplies } from '@haversack/server/planning/supplies/plan-supplies';

export async function exampleTerm(folder: string, className: string | undefined, today?: string): Promise<TermFigures> {
    const { view: { programme } } = await readProgramme(fileURLToPath(new URL(`../../examples/${folder}`, import.meta.url)));
    const wanted = { class: className };
    const schedule = planSchedule(programme, wanted);
    const course = programme.courses.get(schedule.course ?? '');
    const group = programme.classes.get(schedule.class ?? '');
    return {
        schedule, supplies: planSupplies(programme, wanted, { today, schedule }), coverage: planCoverage(programme, wanted, { schedule }), today,
        course: course && { title: course.title, place: { uri: course.uri, range: course.at } },
        class: group && { title: group.title, place: { uri: group.uri, range: group.at } }
    };
}

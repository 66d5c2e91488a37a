import type { LessonSheet, ObjectiveSheet, Place } from '@haversack/language/sheets/sheet';
import type { CoverageGap, Does, GapKind } from '../coverage-figures.js';
import { counted, listing, quoted } from '@haversack/language/facts/wording';
import { inWeek } from './columns.js';
import { visitsOf, type Cell } from './visits.js';

/** What a row is judged by. */
export interface Row {
    objective: ObjectiveSheet;
    cells: readonly Cell[];
    /** Lessons that name the objective and are not taught: they do not fit in the term, an adaptation leaves them out, or they stand in no course. */
    untaught: readonly { lesson: LessonSheet; ofCourse: boolean; leftOut?: boolean }[];
    lastMeeting: number;
    revisitWithin: number;
}

/** What is missing between an objective's introduction and its check. */
export function gapsOf(row: Row): CoverageGap[] {
    if (row.cells.length === 0) return [neverUsed(row)];
    const introduced = row.cells.find(c => c.does.includes('introduces'));
    if (!introduced) return [neverIntroduced(row, row.cells[0]!)];
    const gaps: CoverageGap[] = [];
    if (introduced !== row.cells[0]) {
        gaps.push(...tooEarly(row, introduced, 'practises', 'practised-before-introduced'), ...tooEarly(row, introduced, 'checks', 'checked-before-introduced'));
    }
    addNotRevisited(gaps, row, introduced);
    gaps.push(...neverChecked(row, introduced));
    return gaps;
}

function neverUsed(row: Row): CoverageGap {
    const { objective, untaught } = row;
    const title = quoted(objective.title);
    const ofCourse = untaught.filter(u => u.ofCourse);
    const left = untaught.filter(u => u.leftOut);
    const lessons = listing((ofCourse.length > 0 ? ofCourse : left.length > 0 ? left : untaught).slice(0, 3).map(u => quoted(u.lesson.title)));
    const message = ofCourse.length > 0
        ? `No lesson of this term works on ${title}: ${lessons} would, but there is no room for it. Make room in the term, or name it in a lesson that is taught.`
        : left.length > 0
            ? `No lesson of this term works on ${title}: ${lessons} would, but ${left.length === 1 ? 'it is' : 'they are'} left out for this class. Name the objective in a lesson that is taught.`
        : untaught.length > 0
            ? `No lesson of the course works on ${title}: only ${lessons} does, outside the course. Take it into the course, or name the objective in one of its lessons.`
            : `No lesson works on ${title}. Write \`introduces ${objective.name}\` under the objectives of a lesson.`;
    return gap(row, 'never-used', message, { uri: objective.uri, range: objective.at });
}

function neverIntroduced(row: Row, first: Cell): CoverageGap {
    return gap(row, 'never-introduced',
        `${inWeek(first.column)} ${first.does.includes('practises') ? 'practises' : 'checks'} ${quoted(row.objective.title)}, but no lesson of this plan introduces it.${
            withoutRoom(row, 'introduces')} Write \`introduces ${row.objective.name}\` in that lesson or an earlier one.`,
        first.places[0]!, first);
}

function tooEarly(row: Row, introduced: Cell, does: Does, kind: GapKind): CoverageGap[] {
    return row.cells.filter(c => c.does.includes(does) && c.column.index < introduced.column.index).map(early => gap(row, kind,
        `${inWeek(early.column)} ${does} ${quoted(row.objective.title)}, which is introduced only later, in ${inWeek(introduced.column)}. Introduce it in ${
            quoted(early.column.lesson.title)} or before, or change the order.`,
        early.places[early.does.indexOf(does)]!, early));
}

/** From the introduction to the first check, or to the end of the course. */
function addNotRevisited(gaps: CoverageGap[], row: Row, introduced: Cell): void {
    const { revisitWithin, lastMeeting, objective } = row;
    const visits = visitsOf(row.cells);
    const from = visits.findIndex(v => v.cell === introduced);
    for (let i = from; i < visits.length; i++) {
        const { cell, at, again } = visits[i]!;
        if (cell.does.includes('checks') && !again) return;
        const next = visits[i + 1];
        const waits = (next?.at.meeting ?? lastMeeting) - at.meeting;
        if (waits <= revisitWithin) continue;
        const when = next ? `until ${inWeek(next.cell.column)}` : 'to the end of the course';
        gaps.push(gap(row, 'not-revisited',
            `After ${inWeek(cell.column)}, ${quoted(objective.title)} is not met again for ${counted(waits, 'meeting')}, ${when}, and it has not been checked yet. Let a lesson in between practise it: \`practices ${
                objective.name}\`.`,
            cell.places[0]!, cell));
    }
}

function neverChecked(row: Row, introduced: Cell): CoverageGap[] {
    if (row.cells.some(c => c.does.includes('checks') && c.column.index >= introduced.column.index)) return [];
    const last = row.cells[row.cells.length - 1]!;
    return [gap(row, 'never-checked',
        `${quoted(row.objective.title)} is introduced in ${inWeek(introduced.column)}, but no lesson from there on checks it.${withoutRoom(row, 'checks')} Write \`checks ${
            row.objective.name}\` in a lesson whose closing questions ask for it.`,
        last.places[0]!, last)];
}

/** Lessons of the course that would, if the term had room for them or no adaptation left them out. */
function withoutRoom({ untaught, objective }: Row, does: Does): string {
    const found = untaught.find(u => (u.ofCourse || u.leftOut) && u.lesson[does].some(m => m.name === objective.name));
    return found ? ` ${quoted(found.lesson.title)} would, but ${found.leftOut ? 'it is left out for this class' : 'the term has no room for it'}.` : '';
}

function gap({ objective }: Row, kind: GapKind, message: string, place: Place, cell?: Cell): CoverageGap {
    return { kind, objective: objective.name, message, place, ...(cell && { lesson: cell.column.lesson.name }) };
}

import type { Programme } from '@haversack/language/sheets/programme';
import type { CourseSheet, LessonSheet, ObjectiveSheet } from '@haversack/language/sheets/sheet';
import type { Adapted } from '@haversack/language/adapting/adapted';
import { chooseClass, type Audience, type Wanted } from './audience.js';
import type { CoverageFigures, CoverageGap, CoverageObjective } from './coverage-figures.js';
import { columnFigures, columnsOf, type Columns } from './coverage/columns.js';
import { frameworkShare } from './coverage/framework-share.js';
import { gapsOf, type Row } from './coverage/gaps.js';
import { Namings } from './coverage/namings.js';
import { Cell, isWidening, spacingOf, visitsOf, visitsText, visitsTrail } from './coverage/visits.js';
import { planSchedule } from './schedule.js';
import type { ScheduleFigures } from './schedule-figures.js';
import { counted, listing, once, quoted } from '@haversack/language/facts/wording';

export interface CoverageOptions {
    /** Of the same programme and class, where it is already known. */
    schedule?: ScheduleFigures;
    /** In meetings, a whole number above 0; 15 where nothing is said. */
    revisitWithin?: number;
    /** Kept by the caller for several classes: what lessons name. */
    namings?: Namings;
}

/**
 * Common practice, no source: at four meetings a week about a month. Research is a guide here and not a law: Cepeda et al. (Psychological
 * Science 19, 2008, 1095-1102; adults, facts) found the best gap near 5 to 10 % of the time to a test one year off, 18 to 37 days,
 * which at four meetings a week is 10 to 21 meetings; for a test one week off it was 20 to 40 %.
 */
const usualRevisitWithin = 15;

/**
 * Which taught lesson introduces, practises or checks which objective, in the order of the schedule; what is missing; and how much of
 * each framework is met. Lessons that the term has no room for do not count. Never throws.
 */
export function planCoverage(programme: Programme, wanted: Wanted = {}, options: CoverageOptions = {}): CoverageFigures {
    const audience = chooseClass(programme, wanted);
    return coverageFigures(coverageGrid(audience, options.schedule ?? planSchedule(programme, wanted, { audience }), options));
}

/** The grid and its gaps, without what is shown of them. */
export interface CoverageGrid extends Pick<CoverageFigures, 'course' | 'class' | 'revisitWithin' | 'assumptions'> {
    programme: Programme;
    columns: Columns;
    cells: ReadonlyMap<string, readonly Cell[]>;
    rows: JudgedRow[];
}

interface JudgedRow {
    row: Row;
    gaps: CoverageGap[];
}

/** `schedule` is that of the audience. */
export function coverageGrid({ programme, adapted }: Pick<Audience, 'programme' | 'adapted'>, schedule: ScheduleFigures, options: CoverageOptions = {}): CoverageGrid {
    const revisitWithin = wholeAbove0(options.revisitWithin) ?? usualRevisitWithin;
    const course = schedule.course === undefined ? undefined : programme.courses.get(schedule.course);
    const namings = options.namings ?? new Namings();
    const columns = columnsOf(programme, schedule, namings);
    const cells = cellsOf(columns);
    const untaught = untaughtOf(programme, course, columns, { namings, adapted });
    const rows: JudgedRow[] = [];
    for (const objective of programme.objectives.values()) {
        const own = cells.get(objective.name) ?? none;
        const missed = untaught.get(objective.name) ?? none;
        // An objective of another course alone is no gap of this one.
        if (own.length === 0 && missed.some(m => m.elsewhere) && !missed.some(m => m.ofCourse)) continue;
        const row = { objective, cells: own, untaught: missed, lastMeeting: columns.last, revisitWithin };
        rows.push({ row, gaps: gapsOf(row) });
    }
    return {
        programme, course: schedule.course, class: schedule.class, columns, cells, rows, revisitWithin,
        assumptions: once([...schedule.assumptions, ...leftOut(programme, columns, cells, course)])
    };
}

/** Lessons with their objectives, texts and trails, and frameworks are made when they are first read. */
export function coverageFigures({ programme, columns, cells, rows, ...plain }: CoverageGrid): CoverageFigures {
    const lessons = whenAsked(() => columns.lessons.map(columnFigures));
    const objectives = whenAsked(() => rows.map(rowFigures));
    const frameworks = whenAsked(() => [...programme.frameworks.values()].map(f => frameworkShare(programme, f, cells)));
    return {
        ...plain,
        get lessons() { return lessons(); },
        get objectives() { return objectives(); },
        gaps: rows.flatMap(({ gaps }) => gaps),
        get frameworks() { return frameworks(); }
    };
}

/** On to a lesson that says the same in other lines. */
export function moveInGrid({ columns, rows }: CoverageGrid, lesson: LessonSheet, namings: Namings): void {
    const column = columns.byName.get(lesson.name);
    if (!column) return;
    column.lesson = lesson;
    column.namings = namings.of(lesson);
    for (const judged of rows) if (judged.gaps.some(({ place }) => place.uri === lesson.uri)) judged.gaps = gapsOf(judged.row);
}

const none: readonly never[] = [];

/** What is worked out when it is first asked for. */
function whenAsked<T>(work: () => T): () => T {
    let made: { value: T } | undefined;
    return () => (made ??= { value: work() }).value;
}

function wholeAbove0(value: number | undefined): number | undefined {
    return value !== undefined && Number.isInteger(value) && value > 0 ? value : undefined;
}

/** The grid by objective, lessons in teaching order. */
function cellsOf({ lessons }: Columns): ReadonlyMap<string, readonly Cell[]> {
    const rows = new Map<string, Cell[]>();
    for (const column of lessons) {
        column.namings.forEach(({ objective }, i) => {
            const cells = rows.get(objective);
            if (cells) cells.push(new Cell(column, i));
            else rows.set(objective, [new Cell(column, i)]);
        });
    }
    return rows;
}

type Untaught = Row['untaught'][number] & { elsewhere: boolean };

/** Lessons that name an objective and that this plan does not teach, by objective. */
function untaughtOf(
    programme: Programme, course: CourseSheet | undefined, { byName }: Columns, { namings, adapted }: { namings: Namings; adapted?: Adapted }
): ReadonlyMap<string, readonly Untaught[]> {
    const joined = new Set([...adapted?.madeOf.values() ?? []].flat());
    const ofCourse = course && namesIn(course);
    const elsewhere = new Set([...programme.courses.values()].filter(c => c !== course).flatMap(c => [...namesIn(c)]));
    const found = new Map<string, Untaught[]>();
    for (const lesson of programme.lessons.values()) {
        const { name } = lesson;
        if (byName.get(name)?.lesson === lesson || (joined.has(name) && !ofCourse?.has(name))) continue;
        const entry = { lesson, ofCourse: ofCourse?.has(name) ?? true, elsewhere: elsewhere.has(name), leftOut: adapted?.leftOut.has(name) ?? false };
        for (const { objective } of namings.of(lesson)) {
            const entries = found.get(objective);
            if (entries) entries.push(entry);
            else found.set(objective, [entry]);
        }
    }
    return found;
}

function namesIn(course: CourseSheet): ReadonlySet<string> {
    return new Set(course.units.flatMap(u => u.lessons.map(m => m.name)));
}

function rowFigures({ row, gaps }: JudgedRow): CoverageObjective {
    const { objective, cells } = row;
    const visits = visitsOf(cells);
    const spacing = spacingOf(visits);
    const widening = isWidening(spacing);
    return {
        name: objective.name,
        title: objective.title,
        place: { uri: objective.uri, range: objective.at },
        ...(objective.strand !== undefined && { strand: objective.strand }),
        cells: cells.map(({ column, does, places }) => ({ lesson: column.index, does: [...does], place: places[0]! })),
        spacing,
        text: visitsText(visits, spacing),
        ...(widening !== undefined && { widening }),
        gaps,
        trail: [...visitsTrail(visits), ...(gaps.some(g => g.kind === 'not-revisited')
            ? [{ words: `more than ${counted(row.revisitWithin, 'meeting')} without a visit, before any check, counts as not revisited (common practice, no source)` }] : [])],
        alignsTo: alignments(objective)
    };
}

function alignments(objective: ObjectiveSheet): CoverageObjective['alignsTo'] {
    return objective.alignsTo.map(({ framework, code }) => ({ framework: framework.name, code }));
}

function leftOut(programme: Programme, columns: Columns, cells: ReadonlyMap<string, readonly Cell[]>, course: CourseSheet | undefined): string[] {
    const sentences: string[] = [];
    const ofCourse = course ? namesIn(course) : programme.lessons.keys();
    const noRoom: LessonSheet[] = [];
    for (const name of ofCourse) {
        const lesson = columns.byName.has(name) ? undefined : programme.lessons.get(name);
        if (lesson) noRoom.push(lesson);
    }
    if (noRoom.length > 0) {
        sentences.push(`${noRoom.length === 1 ? 'One lesson has' : `${noRoom.length} lessons have`} no room in the term and ${noRoom.length === 1 ? 'is' : 'are'} not counted: ${named(noRoom.map(l => l.title))}.`);
    }
    const undeclared = [...cells.keys()].filter(name => !programme.objectives.has(name));
    if (undeclared.length > 0) sentences.push(`Lessons name objectives that no file declares; they are left out: ${named(undeclared)}.`);
    return sentences;
}

function named(names: readonly string[]): string {
    const shown = names.slice(0, 3).map(quoted);
    return names.length > 3 ? `${shown.join(', ')} and ${names.length - 3} more` : listing(shown);
}

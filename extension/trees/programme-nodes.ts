import type { AdaptationNode, ClassNode, CourseNode, LessonNode, ProgrammeNode, SourcePlace, UnitNode } from '@haversack/server/protocol/programme';

/** What a row of the programme tree stands for. */
export type NodeKind =
    | { kind: 'programme'; programme: ProgrammeNode }
    | { kind: 'course'; course: CourseNode }
    | { kind: 'unit'; unit: UnitNode }
    | { kind: 'lesson'; lesson: LessonNode }
    | { kind: 'other lessons'; count: number }
    | { kind: 'classes'; count: number }
    | { kind: 'class'; group: ClassNode; programme: string }
    | { kind: 'adaptations'; count: number }
    | { kind: 'adaptation'; adaptation: AdaptationNode }
    | { kind: 'change'; says: string; at: SourcePlace; idle?: string };

/** A row of the programme tree. Its id stays the same when the text changes, so that what is open and chosen stays so. */
export interface ProgrammeRow {
    readonly id: string;
    readonly is: NodeKind;
    readonly parent?: ProgrammeRow;
    readonly children: readonly ProgrammeRow[];
}

/** The rows of all programmes: with several, each under a row of its own. */
export function rowsOf(programmes: readonly ProgrammeNode[]): ProgrammeRow[] {
    const several = programmes.length > 1;
    return programmes.flatMap(programme => (several ? row(programme.key, { kind: 'programme', programme }, undefined, parent => inProgramme(programme, parent)) : inProgramme(programme)));
}

function inProgramme(programme: ProgrammeNode, parent?: ProgrammeRow): ProgrammeRow[] {
    const { key, courses, otherLessons, classes, adaptations } = programme;
    const group = <T>(kind: 'other lessons' | 'classes' | 'adaptations', all: readonly T[], each: (one: T, under: ProgrammeRow) => ProgrammeRow): ProgrammeRow[] =>
        (all.length === 0 ? [] : [row(`${key} ${kind}`, { kind, count: all.length }, parent, under => all.map(one => each(one, under)))]);
    return [
        ...courses.map(course => row(`${key} course ${course.name}`, { kind: 'course', course }, parent, under => inCourse(course, under))),
        ...group('other lessons', otherLessons, (lesson, under) => row(`${under.id} ${lesson.name}`, { kind: 'lesson', lesson }, under)),
        ...group('classes', classes, (one, under) => row(`${under.id} ${one.name}`, { kind: 'class', group: one, programme: key }, under)),
        ...group('adaptations', adaptations, (adaptation, under) => row(`${under.id} ${adaptation.name}`, { kind: 'adaptation', adaptation }, under, own =>
            numbered(adaptation.changes, ({ says }) => says).map(([change, nth]) => row(`${own.id} ${change.says} ${nth}`, { kind: 'change', ...change }, own))))
    ];
}

/** A lesson keeps its row when it comes to another unit: its id has the course and its own name, and which time it is listed. */
function inCourse(course: CourseNode, under: ProgrammeRow): ProgrammeRow[] {
    const times = new Map<string, number>();
    return numbered(course.units, ({ name }) => name).map(([unit, which]) => row(`${under.id} unit ${unit.name} ${which}`, { kind: 'unit', unit }, under, own => unit.lessons.map(lesson => {
        const nth = (times.get(lesson.name) ?? 0) + 1;
        times.set(lesson.name, nth);
        return row(`${under.id} lesson ${lesson.name} ${nth}`, { kind: 'lesson', lesson }, own);
    })));
}

function numbered<T>(all: readonly T[], by: (one: T) => string): [T, number][] {
    const times = new Map<string, number>();
    return all.map(one => {
        const nth = (times.get(by(one)) ?? 0) + 1;
        times.set(by(one), nth);
        return [one, nth];
    });
}

function row(id: string, is: NodeKind, parent: ProgrammeRow | undefined, below: (own: ProgrammeRow) => ProgrammeRow[] = () => []): ProgrammeRow {
    const children: ProgrammeRow[] = [];
    const own: ProgrammeRow = { id, is, parent, children };
    children.push(...below(own));
    return own;
}

/** All rows below, by id. */
export function rowsById(rows: readonly ProgrammeRow[]): Map<string, ProgrammeRow> {
    const all = new Map<string, ProgrammeRow>();
    const take = (one: ProgrammeRow): void => {
        all.set(one.id, one);
        one.children.forEach(take);
    };
    rows.forEach(take);
    return all;
}

/** The place in the text that a row stands for. */
export function placeOf({ is }: ProgrammeRow): SourcePlace | undefined {
    switch (is.kind) {
        case 'course': return is.course.at;
        case 'unit': return is.unit.at;
        case 'lesson': return is.lesson.at ?? is.lesson.line;
        case 'class': return is.group.at;
        case 'adaptation': return is.adaptation.at;
        case 'change': return is.at;
        default: return undefined;
    }
}

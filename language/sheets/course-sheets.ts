import type * as ast from '../generated/ast.js';
import { mention, mentions, propertyRange, rangeOf } from './ast-ranges.js';
import { ages, count, day, declared, held, keyword, notes, prose } from './common-parts.js';
import type { ClassSheet, CourseSheet, FrameworkSheet, KitUse, Mention, ObjectiveSheet, Prose, UnitSheet } from './sheet.js';

export function objectiveSheet(node: ast.Objective, uri: string): ObjectiveSheet {
    return {
        kind: 'objective',
        ...declared(node, uri),
        strand: node.strand,
        buildsOn: mentions(node.buildsOn),
        alignsTo: node.alignments.map(line => ({ framework: mention(line.framework), code: line.code, at: rangeOf(line) })),
        about: about(node.about)
    };
}

export function frameworkSheet(node: ast.Framework, uri: string): FrameworkSheet {
    return {
        kind: 'framework', ...declared(node, uri),
        from: node.path === undefined ? undefined : { path: node.path, at: propertyRange(node, 'path') }
    };
}

export function courseSheet(node: ast.Course, uri: string): CourseSheet {
    return {
        kind: 'course', ...declared(node, uri), edition: node.edition, ages: ages(node.ages),
        uses: node.uses.map(kitUse), units: node.units.map(unit => unitSheet(unit, uri)), about: about(node.about)
    };
}

function unitSheet(node: ast.Unit, uri: string): UnitSheet {
    const { name, title, at, whole } = declared(node, uri);
    return { name, title, at, whole, about: about(node.about), lessons: mentions(node.lessons.map(line => line.lesson)) };
}

function kitUse(node: ast.KitUse): KitUse {
    const per: KitUse['per'] = node.inAll ? { who: 'all' } : node.learners === undefined ? { who: 'family' } : { who: 'learners', of: Number(node.learners) };
    return { kit: mention(node.kit), count: Number(node.count), per, at: rangeOf(node) };
}

export function classSheet(node: ast.Class, uri: string): ClassSheet {
    return {
        kind: 'class',
        ...declared(node, uri),
        teaches: optional(node.teaches && mention(node.teaches)),
        learners: node.learners === undefined ? undefined : { count: Number(node.learners), at: propertyRange(node, 'learners') },
        adults: count(node.adults),
        ages: ages(node.ages),
        groupsOf: count(node.groupsOf),
        sections: node.sections.map(section => {
            const { name, title, at } = declared(section, uri);
            return { name, title, at, learners: count(section.learners), adults: count(section.adults), groupsOf: count(section.groupsOf), clock: section.clock };
        }),
        kits: node.kits.map(line => ({ kit: mention(line.kit), count: Number(line.count), at: rangeOf(line) })),
        onHand: node.onHand.map(held),
        onOrder: node.onOrder.map(held),
        starts: day(node.starts),
        ends: day(node.ends),
        meets: node.meets.map(line => ({ day: keyword(line.day, ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun']), at: rangeOf(line) })),
        session: node.session === undefined ? undefined : { minutes: Number(node.session), at: propertyRange(node, 'session') },
        lessonsPerMeeting: node.lessonsPerMeeting === undefined ? undefined : { count: Number(node.lessonsPerMeeting), at: propertyRange(node, 'lessonsPerMeeting') },
        fixed: node.fixed.flatMap(line => (line.on ? [{ lesson: mention(line.lesson), on: day(line.on)!, title: line.title, at: rangeOf(line) }] : [])),
        sharesWith: mentions(node.sharesWith),
        off: node.daysOff.flatMap(line => (line.from ? [{ from: day(line.from)!, to: day(line.to), title: line.title, at: rangeOf(line) }] : [])),
        offFrom: node.daysOff.flatMap(line => (line.path === undefined ? [] : [{ path: line.path, named: line.named, at: propertyRange(line, 'path') }])),
        catchUp: node.catchUp && { days: Number(node.catchUp.days), everyLessons: Number(node.catchUp.everyLessons), at: rangeOf(node.catchUp) },
        present: node.present.map(line => ({ who: line.who, at: rangeOf(line) })),
        log: node.log.flatMap(line => (line.on ? [{ lesson: mention(line.lesson), on: day(line.on)!, at: rangeOf(line) }] : [])),
        notes: notes(node.notes)
    };
}

function about(steps: readonly ast.Step[]): Prose | undefined {
    return steps[0] && prose(steps[0]);
}

function optional(found: Mention | undefined): Mention | undefined {
    return found && found.name !== '' ? found : undefined;
}

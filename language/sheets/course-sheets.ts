import type * as ast from '../generated/ast.js';
import { mention, mentions, propertyRange, rangeOf } from './ast-ranges.js';
import { ages, count, day, declared, held, keyword, notes, prose } from './common-parts.js';
import type { AdaptationSheet, Change, ClassSheet, CourseSheet, FrameworkSheet, KitUse, Mention, ObjectiveSheet, Prose, UnitSheet } from './sheet.js';

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

export function adaptationSheet(node: ast.Adaptation, uri: string): AdaptationSheet {
    return {
        kind: 'adaptation',
        ...declared(node, uri),
        of: optional(mention(node.of)),
        edition: node.edition,
        editionAt: node.edition === undefined ? undefined : propertyRange(node, 'edition'),
        forClass: optional(node.forClass && mention(node.forClass)),
        changes: node.changes.map(line => ({ ...change(line), because: line.hasProse ? prose(line) : undefined, at: rangeOf(line) }))
    };
}

function change(node: ast.Change): Change {
    const lesson = (reference: ast.SkipLesson['lesson']): Mention => mention(reference);
    switch (node.$type) {
        case 'SkipLesson': return { does: 'skip lesson', lesson: lesson(node.lesson) };
        case 'SkipActivity': return { does: 'skip activity', lesson: lesson(node.lesson), activity: mention(node.activity) };
        case 'Swap': return { does: 'swap', thing: mention(node.thing), forThing: mention(node.forThing) };
        case 'Move': return { does: 'move', lesson: lesson(node.lesson), side: keyword(node.side, ['after', 'before']), anchor: mention(node.anchor) };
        case 'Split': return { does: 'split', lesson: lesson(node.lesson), after: mention(node.activity) };
    }
}

function about(steps: readonly ast.Step[]): Prose | undefined {
    return steps[0] && prose(steps[0]);
}

function optional(found: Mention | undefined): Mention | undefined {
    return found && found.name !== '' ? found : undefined;
}

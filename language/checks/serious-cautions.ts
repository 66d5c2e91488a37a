import { cautionKind } from '../facts/cautions.js';
import { mayBeSmallPart } from '../facts/small-parts.js';
import type { ClassSheet, CourseSheet, LessonSheet, MaterialSheet } from '../sheets/sheet.js';
import type { Check, Edit, Fix } from './check.js';
import { inLessonHead, lastOf } from './fixes.js';
import type { ProgrammeView } from './programme-view.js';
import { roomOf, type Room } from './rooms.js';

/**
 * Kinds that are a danger below an age, in years. Small parts, small balls and marbles: 16 CFR 1501.4, 1500.18(a)(17), 1500.19;
 * balloons under eight: 16 CFR 1500.19(b)(4). Magnets and button cells under three: our judgement (common practice, no source), they harm
 * at any age and their own caution always stands in the brief.
 */
const seriousBelow: Readonly<Record<string, number>> = { 'small-parts': 3, 'small-ball': 3, magnet: 3, 'button-cell': 3, balloon: 8 };

const inventory = 'material gram-cube\n  reusable\n  caution small-parts\n\ncourse measuring\n  unit weighing\n    weigh-1\n\nclass harbour\n  teaches measuring\n  learners 7\n  starts 2026-09-07\n  meets mon\n  present under-threes\n\n';

export const seriousCaution: Check = {
    code: 'serious-caution', severity: 'warning', title: 'A caution that the ages in the room make serious',
    explains: 'Lessons of the course use things with a caution that matters for children as young as those of this class: choking, magnets, button cells. Keep these things out of reach of the youngest, or use something else; and say in the lesson how you do it: a `caution` of that kind with a text, in the lesson or one of its parts, settles it. These are reminders, not a safety assessment: local rules, product labels and qualified advice come first.',
    wrong: `${inventory}lesson weigh-1\n  materials\n    gram-cube 20 per pair\n  activity build 10 min\n    do: Build with {gram-cube}.`,
    right: `${inventory}lesson weigh-1\n  materials\n    gram-cube 20 per pair\n  caution small-parts: The {gram-cube} stays on the high table, away from the little ones.\n  activity build 10 min\n    do: Build with {gram-cube}.`,
    *find(file, view) {
        for (const group of file.classes) {
            const room = roomOf(group, view.programme);
            if (!room) continue;
            const open = [...dangersIn(room, view)];
            if (open.length === 0) continue;
            const names = [...new Set(open.map(({ material, kind }) => `'${material.name}' (${cautionKind(kind)!.title.toLowerCase()})`))];
            const shown = names.length > 4 ? `${names.slice(0, 4).join(', ')} and ${names.length - 4} more` : names.join(', ');
            yield {
                message: `${room.who}, and lessons use what is a danger at that age: ${shown}. Keep it out of their reach, and say in the lesson how. Local rules, product labels and qualified advice come first.`,
                at: room.at,
                related: open.slice(0, 12).map(({ material, lesson }) => ({ message: `'${material.name}' in lesson '${lesson.name}'`, place: { uri: lesson.uri, range: lesson.at } })),
                fixes: [{ title: 'Add the caution to each of these lessons', edits: cautionLines(open) }]
            };
        }
    }
};

export const undeclaredSmallPart: Check = {
    code: 'undeclared-small-part', severity: 'warning', title: 'A small thing without a caution',
    explains: 'By its declared size this thing may fit the small-parts cylinder (16 CFR 1501, about 32 mm wide), and a class that uses it has children under three in the room. Write `caution small-parts` under it, so that the lessons and briefs say so. Whether it really fits a gauge decides; local rules, product labels and qualified advice come first.',
    wrong: `${inventory.replace('  caution small-parts', '  size 10 x 10 x 10 mm')}lesson weigh-1\n  materials\n    gram-cube 20 per pair\n  caution small-parts: On the high table only.\n  activity build 10 min\n    do: Build with {gram-cube}.`,
    right: `${inventory.replace('  caution small-parts', '  size 10 x 10 x 10 mm\n  caution small-parts')}lesson weigh-1\n  materials\n    gram-cube 20 per pair\n  caution small-parts: On the high table only.\n  activity build 10 min\n    do: Build with {gram-cube}.`,
    *find(file, view) {
        for (const material of file.materials) {
            const { size, cautions, name } = material;
            if (!size || !mayBeSmallPart(size.sides.map(Number), size.unit) || cautions.some(({ kind }) => kind in seriousBelow) || view.isBroken(material)) continue;
            const room = view.youngRooms.find(({ course }) => view.factsOfCourse(course).things.has(name));
            if (!room) continue;
            const last = lastOf(cautions.map(({ at }) => at));
            yield {
                message: `'${name}' may be small enough to choke on, and class '${room.group.name}' has children under three in the room. Write 'caution small-parts' under it.`,
                at: size.at,
                fixes: [{
                    title: "Add 'caution small-parts'", preferred: true,
                    edits: [{ uri: file.uri, afterLine: (last ?? size.at).end.line, like: (last ?? size.at).start.line, deeper: 0, lines: ['caution small-parts'] }]
                }]
            };
        }
    }
};

export const tooYoung: Check = {
    code: 'too-young', severity: 'warning', title: 'A material that is not for children as young as the class',
    explains: 'The material says from which age it is suitable, and the class has younger learners. Use something else for them, as an adaptation can say with `swap`, or correct the ages.',
    wrong: 'material hot-glue\n  reusable\n  ages 8 and up\n\nmaterial paste\n  reusable\n\ncourse making\n  unit boxes\n    box-1\n\nclass harbour\n  teaches making\n  learners 7\n  ages 6 to 9\n  starts 2026-09-07\n  meets mon\n\nlesson box-1\n  materials\n    hot-glue 1 per class\n    paste 1 per pair\n  activity build 10 min\n    do: Fix the lid with {hot-glue} or {paste}.',
    right: 'material hot-glue\n  reusable\n  ages 8 and up\n\nmaterial paste\n  reusable\n\ncourse making\n  unit boxes\n    box-1\n\nclass harbour\n  teaches making\n  learners 7\n  ages 8 to 9\n  starts 2026-09-07\n  meets mon\n\nlesson box-1\n  materials\n    hot-glue 1 per class\n    paste 1 per pair\n  activity build 10 min\n    do: Fix the lid with {hot-glue} or {paste}.',
    *find(file, view) {
        for (const group of file.classes) {
            const course = group.teaches && view.programme.courses.get(group.teaches.name);
            const ages = group.ages ?? course?.ages;
            if (!course || !ages) continue;
            const swapped = swappedFor(group, view);
            for (const [name, lessons] of view.factsOfCourse(course).things) {
                const material = view.programme.materials.get(name);
                if (!material?.ages || material.ages.from <= ages.from || swapped.has(name)) continue;
                yield {
                    message: `'${name}' is for ages from ${material.ages.from}, and class '${group.name}' has learners of ${ages.from}. It is used in lesson '${lessons[0]!.name}'.`,
                    at: group.ages?.at ?? group.at,
                    related: [{ message: `The ages of '${name}'`, place: { uri: material.uri, range: material.ages.at } }],
                    fixes: standInFix(group, course, material)
                };
            }
        }
    }
};

interface Danger {
    material: MaterialSheet;
    kind: string;
    lesson: LessonSheet;
}

/** Things of the course with a caution that is serious in this room, in each lesson that does not speak of it. */
function* dangersIn({ group, course, youngest }: Room, view: ProgrammeView): Iterable<Danger> {
    const swapped = swappedFor(group, view);
    for (const [name, lessons] of view.factsOfCourse(course).things) {
        const material = view.programme.materials.get(name);
        if (!material || swapped.has(name)) continue;
        for (const { kind } of material.cautions) {
            if (youngest >= (seriousBelow[kind] ?? 0)) continue;
            for (const lesson of lessons) if (!speaksOf(lesson, kind)) yield { material, kind, lesson };
        }
    }
}

function speaksOf(lesson: LessonSheet, kind: string): boolean {
    return [lesson, ...lesson.parts].some(({ cautions }) => cautions.some(caution => caution.kind === kind && caution.prose && caution.prose.parts.length > 0));
}

/** Things that an adaptation for the class swaps for others. */
function swappedFor(group: ClassSheet, view: ProgrammeView): Set<string> {
    const names = [...view.programme.adaptations.values()]
        .filter(({ of, forClass }) => of?.name === group.teaches?.name && (!forClass || forClass.name === group.name))
        .flatMap(({ changes }) => changes.flatMap(change => (change.does === 'swap thing' ? [change.thing.name] : [])));
    return new Set(names);
}

function cautionLines(open: readonly Danger[]): Edit[] {
    const lessons = new Map<LessonSheet, Map<string, string[]>>();
    for (const { lesson, kind, material } of open) {
        const kinds = lessons.get(lesson) ?? new Map<string, string[]>();
        lessons.set(lesson, kinds.set(kind, [...(kinds.get(kind) ?? []), `{${material.name}}`]));
    }
    return [...lessons].map(([lesson, kinds]) => inLessonHead(lesson, [...kinds].map(([kind, names]) =>
        `caution ${kind}: Out of reach of the youngest: ${names.join(', ')}. Count out, count back.`)));
}

function standInFix(group: ClassSheet, course: CourseSheet, material: MaterialSheet): Fix[] {
    const standIn = material.standIns[0]?.thing.name;
    if (!standIn) return [];
    const lines = ['', `adaptation ${group.name}-${material.name} of ${course.name} for ${group.name}`, `  swap ${material.name} for ${standIn}`];
    return [{ title: `Swap it for '${standIn}' in this class`, edits: [{ uri: group.uri, afterLine: group.whole.end.line, like: group.whole.start.line, deeper: 0, lines }] }];
}

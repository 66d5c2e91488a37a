import type { Adapted } from '../adapting/adapted.js';
import { isSerious, seriousBelow } from '../facts/caution-ages.js';
import { cautionKind } from '../facts/cautions.js';
import { gaugeAnswer, isSmallBall } from '../facts/small-parts.js';
import type { ClassSheet, CourseSheet, LessonSheet, MaterialSheet } from '../sheets/sheet.js';
import type { Check, Edit, Fix } from './check.js';
import { inLessonHead, lastOf } from './fixes.js';
import type { ProgrammeView } from './programme-view.js';
import { roomOf, type Room } from './rooms.js';

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
    explains: 'By its declared size this thing fits, or may fit, the small-parts cylinder (16 CFR 1501.4, 1.25 in wide), or it is a ball that passes a hole of 1.75 in (16 CFR 1500.18), and a class that uses it has children under three in the room. The brief warns of it already; write `caution small-parts` or `caution small-ball` under it, so that every lesson is asked how it keeps the thing from them. Whether it really fits a gauge decides; local rules, product labels and qualified advice come first.',
    wrong: `${inventory.replace('  caution small-parts', '  size 10 x 10 x 10 mm')}lesson weigh-1\n  materials\n    gram-cube 20 per pair\n  caution small-parts: On the high table only.\n  activity build 10 min\n    do: Build with {gram-cube}.`,
    right: `${inventory.replace('  caution small-parts', '  size 10 x 10 x 10 mm\n  caution small-parts')}lesson weigh-1\n  materials\n    gram-cube 20 per pair\n  caution small-parts: On the high table only.\n  activity build 10 min\n    do: Build with {gram-cube}.`,
    *find(file, view) {
        if (view.youngRooms.length === 0) return;
        for (const material of file.materials) {
            const { size, cautions, name } = material;
            if (!size || cautions.some(({ kind }) => Object.hasOwn(seriousBelow, kind)) || view.isBroken(material)) continue;
            const answer = gaugeAnswer(size.sides, size.unit);
            const kind = isSmallBall(size.sides, size.unit) ? 'small-ball' : 'small-parts';
            if (kind === 'small-parts' && (!answer || answer === 'does not fit')) continue;
            const room = view.youngRooms.find(({ course, group }) => view.factsFor(course, group).things.has(name));
            if (!room) continue;
            const last = lastOf(cautions.map(({ at }) => at));
            yield {
                message: `'${name}' ${answer === 'check with a real gauge' ? 'may be' : 'is'} small enough to choke on, and class '${room.group.name}' has children under three in the room. Write 'caution ${kind}' under it.`,
                at: size.at,
                fixes: [{
                    title: `Add 'caution ${kind}'`, preferred: true,
                    edits: [{ uri: file.uri, afterLine: (last ?? size.at).end.line, like: (last ?? size.at).start.line, deeper: 0, lines: [`caution ${kind}`] }]
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
            for (const [name, lessons] of view.factsFor(course, group).things) {
                const material = view.programme.materials.get(name);
                if (!material?.ages || material.ages.from <= ages.from) continue;
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
function* dangersIn({ group, course, youngest, who }: Room, view: ProgrammeView): Iterable<Danger> {
    const adapted = view.adapted(course, group);
    for (const [name, lessons] of view.factsFor(course, group).things) {
        const material = view.programme.materials.get(name);
        if (!material) continue;
        for (const { kind } of material.cautions) {
            if (!isSerious(kind, { years: youngest, who })) continue;
            for (const lesson of lessons) if (!speaksOf(lesson, kind)) yield { material, kind, lesson: writtenAs(lesson, adapted, view) };
        }
    }
}

/** The lesson that an adapted one was made of, where a line can be added. */
function writtenAs(lesson: LessonSheet, adapted: Adapted | undefined, { programme }: ProgrammeView): LessonSheet {
    return programme.lessons.get(adapted?.madeOf.get(lesson.name)?.[0] ?? lesson.name) ?? lesson;
}

function speaksOf(lesson: LessonSheet, kind: string): boolean {
    return [lesson, ...lesson.parts].some(({ cautions }) => cautions.some(caution => caution.kind === kind && caution.prose && caution.prose.parts.length > 0));
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

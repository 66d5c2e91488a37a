import type { ClassSheet, FileSheet, Step } from '../sheets/sheet.js';
import type { Check, Fix } from './check.js';
import { removeLinesOf } from './fixes.js';
import type { ProgrammeView } from './programme-view.js';
import { allSteps } from './walk-lessons.js';

export const missingUse: Check = {
    code: 'missing-use', severity: 'warning', title: 'A material that is neither reusable nor consumable',
    explains: 'Of a reusable thing a class needs as many as it ever uses at once; of a consumable one the amounts of all lessons add up. Without the word the amount to have ready cannot be told. Write `reusable` or `consumable` under the material.',
    wrong: 'material gram-cube\n  size 10 x 10 x 10 mm', right: 'material gram-cube\n  reusable\n  size 10 x 10 x 10 mm',
    *find(file, view) {
        for (const material of file.materials) {
            if (material.use || view.isBroken(material)) continue;
            const likely = material.measured || material.loss || material.keeps ? 'consumable' : 'reusable';
            const head = material.at.start.line;
            yield {
                message: `Is '${material.name}' handed back or used up? Write 'reusable' or 'consumable' under it.`, at: material.at,
                fixes: (['reusable', 'consumable'] as const).map((use): Fix => ({
                    title: `Add '${use}'`, edits: [{ uri: file.uri, afterLine: head, deeper: 1, lines: [use] }], preferred: use === likely
                }))
            };
        }
    }
};

export const emptyText: Check = {
    code: 'empty-text', severity: 'warning', missing: true, title: 'A word with no text after it',
    explains: 'After words such as `do:` and `ask:` stands what is to be done or asked. Here nothing stands. Write the text on the same line or on deeper lines below, or remove the word.',
    wrong: 'lesson weigh-1\n  activity lift 10 min\n    do:', right: 'lesson weigh-1\n  activity lift 10 min\n    do: Lift one bag, then the other.',
    *find(file, view) {
        for (const step of stepsIn(file, view)) {
            if (step.show || step.prose.parts.length > 0) continue;
            const fixes: Fix[] = step.under.length > 0 ? [] : [{ title: `Remove '${step.word}:'`, edits: [removeLinesOf(file.uri, step.at)] }];
            yield { message: `Nothing stands after '${step.word}:'. Write what is meant, or remove the line.`, at: step.at, fixes };
        }
        for (const { kept } of [...file.materials, ...file.prints, ...file.books, ...file.games]) {
            if (!kept || kept.parts.length > 0) continue;
            yield { message: "Nothing stands after 'kept in:'. Write where it is kept, or remove the line.", at: kept.at, fixes: [{ title: "Remove 'kept in:'", edits: [removeLinesOf(file.uri, kept.at)] }] };
        }
    }
};

function* stepsIn(file: FileSheet, view: ProgrammeView): Iterable<Step> {
    for (const lesson of file.lessons) yield* view.factsOf(lesson).steps;
    for (const game of file.games) yield* allSteps(game.steps);
}

export const classNotReady: Check = {
    code: 'class-not-ready', severity: 'information', missing: true, title: 'A class without what a plan needs',
    explains: 'A week can be planned when the class says what it is taught (`teaches`), how many children it has (`learners`), when it begins (`starts`) and on which days it meets (`meets`). Until then something is assumed in its place, and the brief says what.',
    wrong: 'course measuring\n\nclass harbour\n  learners 7\n  starts 2026-09-07\n  meets mon, thu', right: 'course measuring\n\nclass harbour\n  teaches measuring\n  learners 7\n  starts 2026-09-07\n  meets mon, thu',
    *find(file, view) {
        for (const group of file.classes) {
            if (view.isBroken(group)) continue;
            const silent = notSaid(group);
            if (silent.length === 0) continue;
            yield {
                message: `Class '${group.name}' does not say ${silent.length > 1 ? `${silent.slice(0, -1).join(', ')} and ${silent[silent.length - 1]}` : silent[0]}.`,
                at: group.at, fixes: teachOnly(group, view)
            };
        }
    }
};

function notSaid({ teaches, learners, sections, starts, meets }: ClassSheet): string[] {
    const counted = learners ?? sections.some(section => section.learners !== undefined);
    return [
        ...(teaches ? [] : ["which course it 'teaches'"]), ...(counted ? [] : ["how many 'learners' it has"]),
        ...(starts ? [] : ["when it 'starts'"]), ...(meets.length > 0 ? [] : ["on which days it 'meets'"])
    ];
}

/** With one course there is no doubt which. */
function teachOnly(group: ClassSheet, { programme }: ProgrammeView): Fix[] {
    const only = programme.courses.size === 1 ? [...programme.courses.keys()][0] : undefined;
    if (group.teaches || only === undefined) return [];
    return [{ title: `Teach '${only}'`, edits: [{ uri: group.uri, afterLine: group.at.start.line, deeper: 1, lines: [`teaches ${only}`] }], preferred: true }];
}

import { thingNamed } from '../sheets/programme.js';
import type { GameSheet, LessonSheet, Mention, Need, ThingSheet } from '../sheets/sheet.js';
import { measureOf } from './amounts-in.js';
import type { Check, Fix } from './check.js';
import { inLessonHead, removeLinesOf } from './fixes.js';
import { firstMentions, gameThings } from './lesson-facts.js';
import type { ProgrammeView } from './programme-view.js';
import { allSteps } from './walk-lessons.js';

const materials = 'material pan-balance\n  reusable\n\nmaterial scarf\n  reusable\n\n';

export const notInMaterials: Check = {
    code: 'not-in-materials', severity: 'warning', missing: true, title: 'A thing in the text that is missing from the materials',
    explains: 'A step names a thing in braces, but neither the materials of the lesson nor a game that it plays bring it, so it will not be on the table. Add it to the materials with its amount. A thing that stays on the shelf can be listed after `not needed` instead. Stand-ins of what is listed count as being there.',
    wrong: `${materials}lesson weigh-1\n  materials\n    scarf 1 per pair\n  activity lift 10 min\n    do: Put the {scarf} on the {pan-balance}.`,
    right: `${materials}lesson weigh-1\n  materials\n    scarf 1 per pair\n    pan-balance 1 per pair\n  activity lift 10 min\n    do: Put the {scarf} on the {pan-balance}.`,
    *find(file, view) {
        for (const lesson of file.lessons) {
            const { named, there } = view.factsOf(lesson);
            const away = new Set(lesson.notNeeded.map(({ name }) => name));
            for (const mention of named.values()) {
                const thing = missingThing(mention, there, view);
                if (!thing || away.has(mention.name)) continue;
                yield {
                    message: `Lesson '${lesson.name}' uses '${mention.name}' here, but its materials do not list it.`, at: mention.at,
                    fixes: [addNeed(thing, lesson.needs, lines => inLessonHead(lesson, lines), lesson, view)]
                };
            }
        }
        for (const game of file.games) {
            const named = firstMentions(allSteps(game.steps).map(({ prose }) => prose));
            if (named.size === 0) continue;
            const there = gameThings(game, view.programme);
            for (const mention of named.values()) {
                const thing = missingThing(mention, there, view);
                if (!thing) continue;
                const head = game.found?.at.end.line ?? game.at.end.line;
                yield {
                    message: `The game '${game.name}' uses '${mention.name}' here, but its materials do not list it.`, at: mention.at,
                    fixes: [addNeed(thing, game.needs, lines => ({ uri: game.uri, afterLine: head, like: game.at.start.line, deeper: 1, lines, until: game.whole.end.line }), game, view)]
                };
            }
        }
    }
};

/** A name that is also a word taught somewhere may mean the word. */
function missingThing({ name }: Mention, there: ReadonlySet<string>, view: ProgrammeView): ThingSheet | undefined {
    if (there.has(name) || view.taughtWords.has(name) || view.isDoubtful('thing', name)) return undefined;
    return thingNamed(view.programme, name);
}

function addNeed(thing: ThingSheet, needs: readonly Need[], block: (lines: string[]) => Fix['edits'][number], to: LessonSheet | GameSheet, view: ProgrammeView): Fix {
    const line = [thing.name, usualAmount(thing, view)].filter(Boolean).join(' ');
    const last = needs[needs.length - 1];
    const edit = last
        ? { uri: to.uri, afterLine: last.at.end.line, like: last.at.start.line, deeper: 0, lines: [line] }
        : block(['materials', `  ${line}`]);
    return { title: `Add '${thing.name}' to the materials of ${to.kind} '${to.name}'`, edits: [edit], preferred: true };
}

/** As another lesson asks for it; else one of it. How many grams are meant only the writer knows. */
function usualAmount(thing: ThingSheet, view: ProgrammeView): string {
    const other = view.usualNeeds.get(thing.name);
    if (other?.amount) {
        const { amount, per } = other;
        const who = per && (per.who === 'group' && per.size !== undefined ? `group of ${per.size}` : per.who);
        return [amount.value, amount.unit, who && `per ${who}`].filter(Boolean).join(' ');
    }
    if (thing.kind === 'print') return '1 per learner';
    if (thing.kind === 'book') return '1 per class';
    const measure = measureOf(thing, view);
    if (measure === 'pieces') return '1 per group';
    return typeof measure === 'object' && 'one' in measure ? `1 ${measure.one} per group` : '';
}

export const unusedNeed: Check = {
    code: 'unused-need', severity: 'information', missing: true, title: 'A thing in the materials that no step uses',
    explains: 'The lesson lists this thing, but none of its steps names it and no game of the lesson needs it, so families would bring it for nothing. Name it in a step, best in braces so that it is checked, or remove the line.',
    wrong: `${materials}lesson weigh-1\n  materials\n    pan-balance 1 per pair\n    scarf 1 per pair\n  activity lift 10 min\n    do: Use the {pan-balance}.`,
    right: `${materials}lesson weigh-1\n  materials\n    pan-balance 1 per pair\n    scarf 1 per pair\n  activity lift 10 min\n    do: Lay the {scarf} in the {pan-balance}.`,
    *find(file, view) {
        for (const lesson of file.lessons) {
            const { needs, named, games, prose, steps } = view.factsOf(lesson);
            if (lesson.parts.length === 0 || steps.length === 0) continue;
            let text: string | undefined;
            for (const need of needs) {
                const names = need.options.map(({ thing }) => thing.name);
                if (names.length === 0 || names.some(name => named.has(name) || view.isDoubtful('thing', name) || !thingNamed(view.programme, name))) continue;
                if (games.some(game => names.some(name => gameThings(game, view.programme).has(name)))) continue;
                text ??= plainText(prose.flatMap(({ parts }) => parts.map(part => ('text' in part ? part.text : part.name))).join(' '));
                if (names.some(name => saidIn(text!, name, view))) continue;
                yield {
                    message: `Lesson '${lesson.name}' lists '${names.join("' or '")}', but no step uses it. Name it in a step as {${names[0]}}, or remove the line.`,
                    at: need.at, unused: true, fixes: [{ title: `Remove '${names[0]}' from the materials`, edits: [removeLinesOf(file.uri, need.at)], preferred: true }]
                };
            }
        }
    }
};

const plainText = (text: string): string => ` ${text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ')} `;

/** True when the text names the thing without braces: by the words of its name or by its title, one or several of it. */
function saidIn(text: string, name: string, view: ProgrammeView): boolean {
    const title = thingNamed(view.programme, name)?.title ?? name;
    return [name, title].some(words => {
        const plain = plainText(words).trim();
        return [plain, `${plain}s`, `${plain}es`, plain.replace(/s$/, '')].some(form => form !== '' && text.includes(` ${form} `));
    });
}

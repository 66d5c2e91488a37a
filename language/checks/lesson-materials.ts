import { thingNamed } from '../sheets/programme.js';
import type { GameSheet, LessonSheet, Mention, ThingSheet } from '../sheets/sheet.js';
import type { Check, Fix } from './check.js';
import { removeLinesOf } from './fixes.js';
import { firstMentions, gameThings } from './lesson-facts.js';
import { needToAdd } from './need-lines.js';
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
                    fixes: [addNeed(thing, lesson, view)]
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
                yield {
                    message: `The game '${game.name}' uses '${mention.name}' here, but its materials do not list it.`, at: mention.at,
                    fixes: [addNeed(thing, game, view)]
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

function addNeed(thing: ThingSheet, to: LessonSheet | GameSheet, view: ProgrammeView): Fix {
    return { title: `Add '${thing.name}' to the materials of ${to.kind} '${to.name}'`, edits: [needToAdd(thing, to, view).edit], preferred: true };
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

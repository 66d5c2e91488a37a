import type { Declared } from '../sheets/sheet.js';
import type { Check, Finding } from './check.js';
import { removeLinesOf } from './fixes.js';

export const unusedThing: Check = {
    code: 'unused-thing', severity: 'information', title: 'A thing that no lesson uses',
    explains: 'No lesson and no game names this material, print or book, no lesson plays this game, or no course and no class uses this kit. It may be left over from a lesson that has gone, or still wait for one. It changes no amount. Remove it, or leave it for later.',
    wrong: 'material pan-balance\n  reusable\n\nmaterial funnel\n  reusable\n\nlesson weigh-1\n  materials\n    pan-balance 1 per pair',
    right: 'material pan-balance\n  reusable\n\nlesson weigh-1\n  materials\n    pan-balance 1 per pair',
    *find(file, view) {
        const { programme } = view;
        if (programme.lessons.size === 0) return;
        const used = view.usedThings;
        for (const thing of [...file.materials, ...file.prints, ...file.books]) {
            if (!used.has(thing.name) && !view.isDoubtful('thing', thing.name)) yield unused(thing, `No lesson or game uses the ${thing.kind} '${thing.name}'.`);
        }
        for (const game of file.games) {
            if (!view.playedIn.has(game.name) && !used.has(game.name) && !view.isDoubtful('game', game.name)) yield unused(game, `No lesson plays the game '${game.name}'.`);
        }
        if (file.kits.length === 0 || programme.courses.size === 0) return;
        const kits = new Set([
            ...[...programme.courses.values()].flatMap(course => course.uses.map(({ kit }) => kit.name)),
            ...[...programme.classes.values()].flatMap(group => group.kits.map(({ kit }) => kit.name))
        ]);
        for (const kit of file.kits) {
            if (!kits.has(kit.name) && !programme.unreadable.has(kit.name)) yield unused(kit, `No course and no class uses the kit '${kit.name}'.`);
        }
    }
};

export const unusedObjective: Check = {
    code: 'unused-objective', severity: 'information', title: 'An objective that no lesson teaches',
    explains: 'The objective is declared, but no lesson introduces, practises or checks it, so nobody will learn it from this programme. Name it under `objectives` of the lesson that teaches it, or remove it.',
    wrong: 'objective compare-mass\nobjective estimate-mass\n\nlesson weigh-1\n  objectives\n    introduces compare-mass',
    right: 'objective compare-mass\nobjective estimate-mass\n\nlesson weigh-1\n  objectives\n    introduces compare-mass, estimate-mass',
    *find(file, view) {
        if (view.programme.lessons.size === 0) return;
        for (const objective of file.objectives) {
            if (view.usedObjectives.has(objective.name) || view.isDoubtful('objective', objective.name)) continue;
            yield unused(objective, `No lesson introduces, practises or checks the objective '${objective.name}'.`);
        }
    }
};

function unused(declared: Declared, message: string): Finding {
    return {
        message, at: declared.at, unused: true,
        fixes: [{ title: `Remove '${declared.name}'`, edits: [removeLinesOf(declared.uri, declared.whole)] }]
    };
}

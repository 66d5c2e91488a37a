import type { Held, Need } from '../sheets/sheet.js';
import { measureNamed, needsIn } from './amounts-in.js';
import type { Check, Fix } from './check.js';
import { insertAfter } from './fixes.js';
import type { ProgrammeView } from './programme-view.js';

export const missingAmount: Check = {
    code: 'missing-amount', severity: 'warning', missing: true, title: 'A need without an amount',
    explains: 'The line names a thing but not how many or how much of it, so it cannot be counted into any list. Write the amount and for whom: `1 per learner`, `20 per pair`, `150 g per group`, `1 per class`. In a kit, on hand and on order the amount alone is enough.',
    wrong: 'material pan-balance\n  reusable\n\nlesson weigh-1\n  materials\n    pan-balance per pair',
    right: 'material pan-balance\n  reusable\n\nlesson weigh-1\n  materials\n    pan-balance 1 per pair',
    *find(file, view) {
        for (const { need, lesson } of needsIn(file, view)) {
            const thing = need.options[0]?.thing;
            if (!thing || need.amount) continue;
            const who = lesson ? `Lesson ${lesson.name}` : 'This game';
            yield { message: `${who} needs '${thing.name}' but does not say how much of it, as in '1 per pair'.`, at: thing.at, fixes: needFixes(need, file.uri, view) };
        }
        for (const kit of file.kits) {
            for (const held of kit.holds) if (!held.amount) yield { message: `How many '${held.thing.name}' does ${kit.name} hold?`, at: held.at, fixes: heldFixes(held, file.uri, view) };
        }
        for (const group of file.classes) {
            for (const held of [...group.onHand, ...group.onOrder]) {
                if (!held.amount) yield { message: `How much of '${held.thing.name}' is it?`, at: held.at, fixes: heldFixes(held, file.uri, view) };
            }
        }
    }
};

/** One of a counted thing can be offered; how many grams are meant only the writer knows. */
function countsAs(name: string, view: ProgrammeView): string | undefined {
    const measure = measureNamed(name, view)?.measure;
    if (!measure || (typeof measure === 'object' && 'unit' in measure && measure.unit.dimension !== 'sheet')) return undefined;
    if (measure === 'pieces' || (typeof measure === 'object' && 'one' in measure && measure.one === 'copy')) return '1';
    return 'one' in measure ? `1 ${measure.one}` : `1 ${measure.unit.symbol}`;
}

function needFixes(need: Need, uri: string, view: ProgrammeView): Fix[] {
    const option = need.options[need.options.length - 1]!;
    const one = countsAs(need.options[0]!.thing.name, view);
    if (one === undefined || !option.at) return [];
    const after = option.at;
    if (need.per) return [{ title: `Write '${one}'`, edits: [insertAfter(uri, after, ` ${one}`)], preferred: true }];
    return ['learner', 'pair', 'group', 'class'].map((who, index) => ({
        title: `Write '${one} per ${who}'`, edits: [insertAfter(uri, after, ` ${one} per ${who}`)], preferred: index === 0
    }));
}

function heldFixes(held: Held, uri: string, view: ProgrammeView): Fix[] {
    const one = countsAs(held.thing.name, view);
    return one === undefined ? [] : [{ title: `Write '${one}'`, edits: [insertAfter(uri, held.thing.at, ` ${one}`)], preferred: true }];
}

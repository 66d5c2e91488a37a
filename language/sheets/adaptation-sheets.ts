import type * as ast from '../generated/ast.js';
import type { Added, AdaptationSheet, Change, PartMention, WrittenChange } from './adaptation-sheet.js';
import { endBefore, headRange, mention, propertyRange, rangeOf } from './ast-ranges.js';
import { cautions, count, declared, keyword, need, notes, prose, step } from './common-parts.js';
import { objectiveUses, partSheet, taughtWords } from './lesson-sheets.js';
import type { Mention } from './sheet.js';

export function adaptationSheet(node: ast.Adaptation, uri: string): AdaptationSheet {
    return {
        kind: 'adaptation',
        ...declared(node, uri),
        of: named(node.of),
        edition: node.edition,
        editionAt: node.edition === undefined ? undefined : propertyRange(node, 'edition'),
        forClass: node.forClass && named(node.forClass),
        changes: node.changes.flatMap(line => writtenChange(line) ?? []),
        notes: notes(node.notes)
    };
}

/** Undefined where the line breaks off before it says what it changes: that is told where it stands. */
function writtenChange(node: ast.Change): WrittenChange | undefined {
    const does = change(node);
    return does && {
        ...does,
        because: node.hasProse ? prose(node) : undefined,
        asOf: node.asOf === undefined ? undefined : { edition: node.asOf, at: propertyRange(node, 'asOf') },
        wordsEnd: wordsEnd(node),
        head: headRange(node),
        at: rangeOf(node)
    };
}

/** The end of the last word before `as of` and `because`, or of the line. */
function wordsEnd(node: ast.Change): WrittenChange['wordsEnd'] {
    const first = node.asOf !== undefined ? 'as' : node.hasProse ? 'because' : undefined;
    return (first !== undefined && endBefore(node, first)) || headRange(node).end;
}

function change(node: ast.Change): Change | undefined {
    switch (node.$type) {
        case 'SkipLesson': return { does: 'skip lesson', lesson: mention(node.lesson) };
        case 'SkipActivity': return withPart(node.activity, activity => ({ does: 'skip activity', activity }));
        case 'SwapThing': return {
            does: 'swap thing', thing: mention(node.thing), forThing: mention(node.forThing),
            ratio: node.give === undefined || node.replaces === undefined ? undefined : { give: node.give, replaces: node.replaces },
            within: node.activity ? withPart(node.activity, ({ lesson, part }) => ({ lesson, part })) : node.lesson && { lesson: mention(node.lesson) }
        };
        case 'SwapLesson': return { does: 'swap lesson', lesson: mention(node.lesson), forLesson: mention(node.forLesson) };
        case 'SwapActivity': return withParts(node.activity, node.forActivity, (activity, forActivity) => ({ does: 'swap activity', activity, forActivity }));
        case 'MoveLesson': return { does: 'move lesson', lesson: mention(node.lesson), side: side(node.side), anchor: mention(node.anchor) };
        case 'MoveActivity': return withParts(node.activity, node.anchor, (activity, anchor) => ({ does: 'move activity', activity, side: side(node.side), anchor }));
        case 'SplitLesson': return { does: 'split lesson', lesson: mention(node.lesson), after: mention(node.part) };
        case 'SplitActivity': return withPart(node.activity, activity => ({ does: 'split activity', activity, minutes: count(node.minutes) }));
        case 'JoinLessons': return { does: 'join lessons', lesson: mention(node.lesson), others: node.others.map(mention) };
        case 'JoinActivities': return withPart(node.activity, activity => ({ does: 'join activities', activity, others: node.others.flatMap(other => partMention(other) ?? []) }));
        case 'InsertLesson': return { does: 'insert lesson', lesson: mention(node.lesson), side: side(node.side), anchor: mention(node.anchor) };
        case 'InsertActivity': return withParts(node.activity, node.anchor, (activity, anchor) => ({ does: 'insert activity', activity, side: side(node.side), anchor }));
        case 'RetimeLesson': return { does: 'retime lesson', lesson: mention(node.lesson), minutes: count(node.minutes) };
        case 'RetimeActivity': return withPart(node.activity, activity => ({ does: 'retime activity', activity, minutes: count(node.minutes) }));
        case 'AddToLesson': return {
            does: 'add to lesson', lesson: mention(node.lesson), side: node.side && side(node.side), anchor: node.part && mention(node.part),
            added: { ...objectiveUses(node.objectives), ...addedTo(node), words: taughtWords(node.words), parts: node.parts.map(partSheet) }
        };
        case 'AddToActivity': return withPart(node.activity, activity => ({ does: 'add to activity', activity, added: { introduces: [], practises: [], checks: [], ...addedTo(node), words: [], parts: [] } }));
    }
}

function addedTo(node: ast.AddToLesson | ast.AddToActivity): Pick<Added, 'steps' | 'needs' | 'cautions'> {
    return { steps: node.steps.map(step), needs: node.needs.map(need), cautions: cautions(node.cautions) };
}

function withPart<T>(node: ast.PartOfLesson | undefined, make: (part: PartMention) => T): T | undefined {
    const part = partMention(node);
    return part && make(part);
}

function withParts<T>(one: ast.PartOfLesson | undefined, other: ast.PartOfLesson | undefined, make: (one: PartMention, other: PartMention) => T): T | undefined {
    return withPart(one, first => withPart(other, second => make(first, second)));
}

function partMention(node: ast.PartOfLesson | undefined): PartMention | undefined {
    const lesson = node?.lesson && mention(node.lesson);
    const part = node?.part && mention(node.part);
    return lesson && part && { lesson, part, at: rangeOf(node) };
}

function side(written: ast.MoveLesson['side']): 'after' | 'before' {
    return keyword(written, ['after', 'before']);
}

function named(reference: Parameters<typeof mention>[0]): Mention | undefined {
    const found = mention(reference);
    return found.name === '' ? undefined : found;
}

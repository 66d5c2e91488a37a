import * as ast from '../generated/ast.js';
import { headRange, mention, mentions, propertyRange, rangeOf } from './ast-ranges.js';
import { cautions, count, declared, keyword, need, step } from './common-parts.js';
import type { LessonSheet, Mention, PartKind, PartSheet, Unsure } from './sheet.js';
import { titleFromName } from './titles.js';

const kinds: Record<ast.LessonPart['$type'], PartKind> = {
    WarmUp: 'warm-up', Activity: 'activity', GamePlay: 'game', Practice: 'practice', Checkpoint: 'checkpoint'
};

export function lessonSheet(node: ast.Lesson, uri: string): LessonSheet {
    return {
        kind: 'lesson',
        ...declared(node, uri),
        draft: node.draft,
        steps: node.steps.map(step),
        follows: mentions(node.follows),
        ...objectiveUses(node.objectives),
        needs: node.needs.map(need),
        notNeeded: mentions(node.notNeeded),
        words: taughtWords(node.words),
        cautions: cautions(node.cautions),
        parts: node.parts.map(partSheet)
    };
}

export function taughtWords(words: readonly ast.TaughtWord[]): Mention[] {
    return words.map(word => ({ name: word.name, at: rangeOf(word) })).filter(({ name }) => name !== '');
}

/** What the lines under `objectives` name. */
export function objectiveUses(lines: readonly ast.ObjectiveUse[]): Pick<LessonSheet, 'introduces' | 'practises' | 'checks'> {
    const named = (...words: ast.ObjectiveUse['does'][]): Mention[] =>
        lines.filter(line => words.includes(keyword(line.does, ['introduces', 'practices', 'practises', 'checks']))).flatMap(line => mentions(line.objectives));
    return { introduces: named('introduces'), practises: named('practices', 'practises'), checks: named('checks') };
}

export function partSheet(node: ast.LessonPart): PartSheet {
    const name = ast.isGamePlay(node) ? mention(node.game).name : node.name ?? '';
    const title = ast.isGamePlay(node) ? undefined : node.title?.trim();
    return {
        kind: kinds[node.$type],
        name,
        title: title || titleFromName(name),
        at: ast.isGamePlay(node) ? mention(node.game).at : propertyRange(node, 'name'),
        head: headRange(node),
        whole: rangeOf(node),
        minutes: count(node.minutes),
        steps: node.steps.map(step),
        needs: node.needs.map(need),
        cautions: cautions(node.cautions),
        items: ast.isPractice(node) ? count(node.items) : undefined,
        ...(ast.isPractice(node) && node.items !== undefined && { itemsAt: propertyRange(node, 'items') }),
        practice: ast.isPractice(node) ? node.lines.map(line => ({ words: [...line.words], numbers: [...line.numbers], at: rangeOf(line) })) : undefined,
        unsure: ast.isCheckpoint(node) && node.unsure ? unsure(node.unsure) : undefined
    };
}

function unsure(node: ast.Unsure): Unsure | undefined {
    const at = rangeOf(node);
    const when = node.when && keyword(node.when, ['today', 'tomorrow']);
    if (node.lessons !== undefined) return { then: 'revisit', lessons: Number(node.lessons), at };
    if (node.lesson) return { then: 'repeat lesson', when, at };
    return node.activity && { then: 'repeat', activity: mention(node.activity), when: when ?? 'today', at };
}

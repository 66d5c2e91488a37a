import type * as ast from '../generated/ast.js';
import { mention, propertyRange, rangeOf } from './ast-ranges.js';
import { ages, amount, cautions, count, declared, held, keyword, money, need, notes, prose, span, step, unitWord } from './common-parts.js';
import type { BookSheet, GameSheet, KitSheet, MaterialSheet, Mention, PrintSheet } from './sheet.js';

const named = (node: ast.MaterialPart): Mention => ({ name: node.name, at: rangeOf(node) });
const uses = ['reusable', 'consumable'] as const;
const sources = ['kit', 'home', 'shop', 'library', 'printed'] as const;
const percent = (text: string): string => text.slice(0, -1);

export function materialSheet(node: ast.Material, uri: string): MaterialSheet {
    return {
        kind: 'material',
        ...declared(node, uri),
        use: node.use && keyword(node.use, uses),
        useAt: node.use && propertyRange(node, 'use'),
        counted: node.counted && { one: node.counted.one, many: node.counted.many ?? node.counted.one, at: rangeOf(node.counted) },
        measured: node.measured === undefined ? undefined : { unit: unitWord(node.measured)!, at: propertyRange(node, 'measured') },
        parts: node.parts.map(named),
        size: node.size?.unit ? { sides: [...node.size.sides], unit: node.size.unit, at: rangeOf(node.size) } : undefined,
        packs: node.packs.flatMap(pack => (pack.amount ? [{ amount: amount(pack.amount)!, cost: money(pack.cost), at: rangeOf(pack) }] : [])),
        arrives: span(node.arrives),
        keeps: span(node.keeps),
        spare: node.spare === undefined ? undefined : { percent: percent(node.spare), at: propertyRange(node, 'spare') },
        loss: node.loss === undefined ? undefined : { percent: percent(node.loss), at: propertyRange(node, 'loss') },
        safetyStock: amount(node.safetyStock),
        delivery: money(node.delivery),
        source: node.source && keyword(node.source, sources),
        sourceAt: node.source && propertyRange(node, 'source'),
        standIns: node.standIns.map(standIn => ({ thing: mention(standIn.thing), give: standIn.give, replaces: standIn.replaces, at: rangeOf(standIn) })),
        cautions: cautions(node.cautions),
        ages: ages(node.ages),
        kept: node.kept && prose(node.kept),
        notes: notes(node.notes)
    };
}

export function printSheet(node: ast.Print, uri: string): PrintSheet {
    return {
        kind: 'print', ...declared(node, uri), pages: count(node.pages) ?? 1, twoSided: node.twoSided,
        kept: node.kept && prose(node.kept), cautions: cautions(node.cautions), notes: notes(node.notes)
    };
}

export function bookSheet(node: ast.Book, uri: string): BookSheet {
    return {
        kind: 'book', ...declared(node, uri), edition: node.edition, source: node.source && keyword(node.source, sources), cost: money(node.cost),
        kept: node.kept && prose(node.kept), notes: notes(node.notes)
    };
}

export function gameSheet(node: ast.Game, uri: string): GameSheet {
    const { found, players } = node;
    return {
        kind: 'game',
        ...declared(node, uri),
        found: found && {
            book: mention(found.book), edition: found.edition, editionAt: found.edition === undefined ? undefined : propertyRange(found, 'edition'),
            chapter: found.chapter, number: found.number, page: found.page, at: rangeOf(found)
        },
        players: players && { from: Number(players.from), to: count(players.to), at: rangeOf(players) },
        kept: node.kept && prose(node.kept),
        needs: node.needs.map(need),
        steps: node.steps.map(step),
        cautions: cautions(node.cautions)
    };
}

export function kitSheet(node: ast.Kit, uri: string): KitSheet {
    return { kind: 'kit', ...declared(node, uri), holds: node.holds.map(held), notes: notes(node.notes) };
}


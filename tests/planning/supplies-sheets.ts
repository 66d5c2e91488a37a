/** A class whose lessons each need one amount of one thing, and the supplies of its term. */
import type { ClassSheet, MaterialSheet, Need } from '@haversack/language/sheets/sheet';
import { planSupplies } from '../../server/planning/supplies/plan-supplies.js';
import type { SupplyFigures } from '../../server/planning/supply-figures.js';
import { consumable, course, klass, lesson, measured, meets, need, on, programme } from './sheets.js';

type Declared = Parameters<typeof programme>[number];

/** One lesson a week on Mondays from 7 September 2026, for seven learners; each needs so much of one thing for the class. */
export function weekly(thing: MaterialSheet, amounts: (string | Need | undefined)[], own: Partial<ClassSheet> = {}, extra: Declared[] = []) {
    const needs = amounts.map(one => (one === undefined ? [] : [typeof one === 'string' ? need(thing.name, one, 'class') : one]));
    const lessons = needs.map((own, i) => lesson(`l${i + 1}`, own));
    return programme(thing, ...extra, ...lessons, course('c', lessons.map(l => l.name)), klass('k', 'c', 7, { starts: on('2026-09-07'), meets: meets('mon'), ...own }));
}

export const supplies = (sheets: ReturnType<typeof programme>, today?: string, name = 'k') => planSupplies(sheets, { class: name }, { today });
export const bean = (more: Partial<MaterialSheet> = {}) => consumable('bean', { ...measured('g'), source: 'shop', ...more });
export const rows = ({ things }: SupplyFigures, name: string) => things.find(t => t.name === name)?.weeks.map(w => [w.gross, w.scheduled, w.receipts, w.onHand].map(q => q.exact));

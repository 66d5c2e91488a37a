import Fraction from 'fraction.js';
import type { Fix } from '@haversack/language/checks/check';
import { insertAfter, lastOf, lineIn, replace } from '@haversack/language/checks/fixes';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import type { ClassSheet, MaterialSheet } from '@haversack/language/sheets/sheet';
import type { Figure } from '../planning/figure.js';
import type { NeedLine } from './need-lines.js';

/** Writes down in the class what has been ordered. */
export function noteOrder(group: ClassSheet, name: string, amount: Figure, arriving: string): Fix {
    const line = `${name} ${written(amount)} arriving ${arriving}`;
    const title = `It is ordered: note '${line}' in class '${group.name}'`;
    if (group.onOrder.length > 0) return { title, edits: [lineIn(group.uri, group.at.start.line, group.onOrder.map(({ at }) => at), line)] };
    return { title, edits: [inNewBlock(group, 'on order', line)] };
}

/** Writes down in the class that more of a thing has been found. */
export function noteOnHand(group: ClassSheet, name: string, more: Figure): Fix[] {
    const held = group.onHand.find(({ thing }) => thing.name === name);
    if (!held) {
        const line = `${name} ${written(more)}`;
        const title = `They are there: note '${line}' on hand in class '${group.name}'`;
        return [{
            title,
            edits: [group.onHand.length > 0 ? lineIn(group.uri, group.at.start.line, group.onHand.map(({ at }) => at), line) : inNewBlock(group, 'on hand', line)]
        }];
    }
    if (!held.amount || held.amount.unit !== more.unit) return [];
    const amount = written({ ...more, exact: sum(held.amount.value, more.exact) });
    return [{ title: `They are there: note ${amount} on hand in class '${group.name}'`, edits: [replace(group.uri, held.amount.at, amount)] }];
}

/** Another kit, where one kit in the class's list holds the thing. */
export function countKits(group: ClassSheet, name: string, missing: Figure, { programme }: ProgrammeView): Fix[] {
    return group.kits.flatMap(line => {
        const held = programme.kits.get(line.kit.name)?.holds.find(({ thing }) => thing.name === name);
        const each = held && (held.amount?.unit === missing.unit ? new Fraction(held.amount?.value ?? 1) : undefined);
        if (!each || each.compare(0) <= 0) return [];
        const count = line.count + Number(new Fraction(missing.exact).div(each).ceil());
        return [{ title: `There are ${count} of the kit '${line.kit.name}', not ${line.count}`, edits: [replace(group.uri, line.at, `${line.kit.name} ${count}`)] }];
    });
}

/** Lets a stand-in do as well. One that needs another amount makes up for what is missing, not for all that the line asks for: no line can say that. */
export function useStandIn(line: NeedLine, standIn: string, material: MaterialSheet | undefined): Fix[] {
    const { need, option, uri } = line;
    // What stands there names what was swapped.
    if (need.adapted || need.options.some(({ thing }) => thing.name === standIn)) return [];
    const found = material?.standIns.find(({ thing }) => thing.name === standIn);
    if (!found || !new Fraction(found.give).equals(new Fraction(found.replaces))) return [];
    return [{ title: `Let '${standIn}' do as well`, edits: [insertAfter(uri, option.at ?? option.thing.at, ` or ${standIn}`)] }];
}

/** As a line of the class says it: "20", "1 1/2 kg". */
function written({ exact, unit }: Pick<Figure, 'exact' | 'unit'>): string {
    return unit === undefined ? exact : `${exact} ${unit}`;
}

function sum(a: string, b: string): string {
    return new Fraction(a).add(b).toFraction(true);
}

function inNewBlock(group: ClassSheet, head: string, line: string): Fix['edits'][number] {
    const above = lastOf([...group.kits, ...group.onHand, ...(group.learners ? [group.learners] : [])].map(({ at }) => at));
    return {
        uri: group.uri, afterLine: (above ?? group.at).end.line, like: group.at.start.line, deeper: 1, lines: [head, `  ${line}`], until: group.whole.end.line
    };
}

import type { Edit } from '@haversack/language/checks/check';
import { insertAfter, replace } from '@haversack/language/checks/fixes';
import type { ClassSheet, Held, KitSheet } from '@haversack/language/sheets/sheet';
import { fitted, type ThingMeasure } from './fit-quantity.js';
import type { WantedThing } from './merge-rows.js';
import { amountIn, quantityIn, written } from './quantities.js';

/** Where amounts go: what a class has on hand, or what a kit holds. */
export type Holder = ClassSheet | KitSheet;

/** Gathers the changes to one block of amounts, so that new lines go into it together and in order. */
export class HoldingsEdits {
    private readonly changed: Edit[] = [];
    private readonly fresh: { name: string; amount: string }[] = [];
    private readonly held: Held[];
    private readonly byName = new Map<string, Held>();

    constructor(private readonly holder: Holder) {
        this.held = holder.kind === 'class' ? holder.onHand : holder.holds;
        for (const held of this.held) if (!this.byName.has(held.thing.name)) this.byName.set(held.thing.name, held);
    }

    /** Takes in what is on hand of a thing; tells what changes, or why it cannot be written. */
    take(name: string, wanted: WantedThing, { measure }: ThingMeasure): { changes: string[]; remarks: string[]; lost: boolean } {
        const { onHand, title, packs } = wanted;
        if (!onHand) return { changes: [], remarks: [], lost: false };
        const block = this.holder.kind === 'class' ? 'on hand' : `in ${this.holder.name}`;
        const fits = fitted(onHand, measure, title, packs);
        if ('cannot' in fits) return { changes: [], remarks: [`${block}: ${fits.cannot}`], lost: true };
        const remarks = fits.remark === undefined ? [] : [`${block}: ${fits.remark}`];
        const amount = written(fits.value);
        const now = this.byName.get(name);
        if (this.holder.kind === 'kit' && fits.value.value.equals(0)) return { changes: [], remarks: [...remarks, ...(now ? [`${block}: a kit cannot hold none of it; take its line out of the kit`] : [])], lost: now !== undefined };
        if (!now) {
            this.fresh.push({ name, amount });
            return { changes: [`${block} ${amount}`], remarks, lost: false };
        }
        const size = quantityIn(fits.value, measure);
        if (now.amount && size && amountIn(now.amount, measure)?.equals(size)) return { changes: [], remarks, lost: false };
        this.changed.push(now.amount ? replace(this.holder.uri, now.amount.at, amount) : insertAfter(this.holder.uri, now.thing.at, `  ${amount}`));
        const before = now.amount ? [now.amount.value, now.amount.unit].filter(Boolean).join(' ') : 'without an amount';
        return { changes: [`${block} ${amount}, was ${before}`], remarks, lost: false };
    }

    edits(): Edit[] {
        if (this.fresh.length === 0) return this.changed;
        const { uri, at, whole } = this.holder;
        const last = this.held.reduce<Held | undefined>((latest, held) => (!latest || held.at.start.line > latest.at.start.line ? held : latest), undefined);
        const gap = this.gap();
        const column = this.amountColumn(gap.length);
        const lines = this.fresh.map(({ name, amount }) => `${name.padEnd(column)}${gap}${amount}`);
        if (last) return [...this.changed, { uri, afterLine: last.at.end.line, like: last.at.start.line, deeper: 0, lines }];
        const head = this.holder.kind === 'class' ? 'on hand' : 'holds';
        return [...this.changed, { uri, afterLine: Math.max(whole.end.line, at.end.line), like: at.start.line, deeper: 1, lines: [head, ...lines.map(line => `  ${line}`)], until: whole.end.line }];
    }

    /** The width of the names: as of those that stand there, where their amounts stand below each other. */
    private amountColumn(gap: number): number {
        const columns = new Set(this.held.flatMap(({ thing, amount }) => (amount ? [amount.at.start.character - thing.at.start.character] : [])));
        const longest = Math.min(this.fresh.reduce((most, { name }) => Math.max(most, name.length), 0), 30);
        if (this.held.length === 0) return longest;
        if (columns.size !== 1 || gap === 1) return 0;
        return Math.max([...columns][0]! - gap, longest);
    }

    /** The least that stands between a name and its amount. */
    private gap(): string {
        const gaps = this.held.flatMap(({ thing, amount }) => (amount ? [amount.at.start.character - thing.at.end.character] : []));
        return ' '.repeat(gaps.length > 0 ? Math.max(1, Math.min(...gaps, 2)) : 2);
    }
}

import type { Edit } from '@haversack/language/checks/check';
import { insertAfter, replace } from '@haversack/language/checks/fixes';
import { titleFromName } from '@haversack/language/sheets/titles';
import type { MaterialSheet, Prose, Range, Source } from '@haversack/language/sheets/sheet';
import { fitted, type ThingMeasure } from './fit-quantity.js';
import type { WantedThing } from './merge-rows.js';
import { amountIn, exactly, quantityIn, written, type Quantity } from './quantities.js';
import { readingOf, safeProse, titleKey } from './safe-text.js';

/** What is to be written for one thing, in edits and in words. */
export interface ThingChange {
    edits: Edit[];
    changes: string[];
    remarks: string[];
    lost: boolean;
}

interface Pack {
    amount: Quantity;
    cost?: { value: string; currency: string };
}

/** The lines of a material that the programme does not have yet. */
export function newMaterial(name: string, wanted: WantedThing, measure: ThingMeasure): { lines: string[]; remarks: string[]; lost: boolean } {
    const { packs, safetyStock, remarks } = fitAll(wanted, measure);
    const { title, use, lead, keeps, spare, source, notes } = wanted;
    const head = title === '' || title === titleFromName(name) ? `material ${name}` : `material ${name} "${title}"`;
    const facts = [
        use, measure.line, ...packs.map(packLine), lead && `arrives in ${lead.text}`, keeps && `keeps ${keeps.text}`, spare && `spare ${spare}%`,
        safetyStock && `safety stock ${written(safetyStock)}`, source && sourceLine(source), ...notes.map(noteLine)
    ].filter(line => line !== undefined && line !== '');
    return { lines: [head, ...facts.map(line => `  ${line}`)], remarks, lost: remarks.length > 0 };
}

/** The edits that make a material say what the rows say. What they do not say stays as it is. `lineAt` gives a line of its file. */
export function materialEdits(material: MaterialSheet, by: 'name' | 'title' | undefined, wanted: WantedThing, measure: ThingMeasure, lineAt: (line: number) => string): ThingChange {
    const writer = new MaterialWriter(material, measure, lineAt);
    const { packs, safetyStock, remarks } = fitAll(wanted, measure);
    if (by === 'name') writer.title(wanted.title);
    writer.use(wanted.use);
    if (measure.line !== undefined) writer.add(measure.line);
    for (const pack of packs) writer.pack(pack);
    if (wanted.lead) writer.days('arrives in', material.arrives, wanted.lead);
    if (wanted.keeps) writer.days('keeps', material.keeps, wanted.keeps);
    writer.spare(wanted.spare);
    if (safetyStock) writer.safetyStock(safetyStock);
    writer.source(wanted.source);
    writer.notes(wanted.notes);
    return { edits: writer.edits(), changes: writer.changes, remarks: [...remarks, ...writer.remarks], lost: remarks.length + writer.remarks.length > 0 };
}

function fitAll(wanted: WantedThing, { measure }: ThingMeasure): { packs: Pack[]; safetyStock?: Quantity; remarks: string[] } {
    const remarks: string[] = [];
    const fit = (quantity: Quantity, what: string): Quantity | undefined => {
        const fits = fitted(quantity, measure, wanted.title, wanted.packs);
        if ('value' in fits) return fits.value;
        remarks.push(`${what}: ${fits.cannot}`);
        return undefined;
    };
    const packs = wanted.packs.flatMap(({ amount, cost }) => {
        const fits = fit(amount, cost ? 'pack and price' : 'pack');
        return fits ? [{ amount: fits, cost }] : [];
    });
    return { packs, safetyStock: wanted.safetyStock && fit(wanted.safetyStock, 'safety stock'), remarks };
}

const packLine = ({ amount, cost }: Pack): string => `pack of ${written(amount)}${cost ? ` costs ${cost.value} ${cost.currency}` : ''}`;
const sourceLine = (source: Source): string => (source === 'printed' ? source : `from ${source}`);
const noteLine = (note: string): string => `note: ${safeProse(note).text}`;

class MaterialWriter {
    readonly changes: string[] = [];
    readonly remarks: string[] = [];
    private readonly made: Edit[] = [];
    private readonly lines: string[] = [];
    private readonly packLines: string[] = [];
    private readonly packsBySize = new Map<string, MaterialSheet['packs'][number]>();

    constructor(private readonly material: MaterialSheet, private readonly measure: ThingMeasure, private readonly lineAt: (line: number) => string) {
        for (const pack of material.packs) {
            const size = amountIn(pack.amount, measure.measure)?.toFraction();
            if (size !== undefined && !this.packsBySize.has(size)) this.packsBySize.set(size, pack);
        }
    }

    /** New packs stand with the others, everything else new at the end of the material. */
    edits(): Edit[] {
        const { uri, at, whole, packs } = this.material;
        const last = packs.reduce<Range | undefined>((latest, { at: place }) => (!latest || place.start.line > latest.start.line ? place : latest), undefined);
        const edits = [...this.made];
        if (last && this.packLines.length > 0) edits.push({ uri, afterLine: last.end.line, like: last.start.line, deeper: 0, lines: this.packLines });
        const lines = last ? this.lines : [...this.packLines, ...this.lines];
        if (lines.length > 0) edits.push({ uri, afterLine: Math.max(whole.end.line, at.end.line), like: at.start.line, deeper: 1, lines });
        return edits;
    }

    add(line: string): void {
        this.lines.push(line);
        this.changes.push(line);
    }

    title(title: string): void {
        const { uri, at, title: now, name } = this.material;
        if (title === '' || titleKey(title) === titleKey(now)) return;
        const line = this.lineAt(at.end.line);
        const written = /^[^\S\r\n]*(?:"[^"]*"|“[^”]*”)/.exec(line.slice(at.end.character));
        const end = { line: at.end.line, character: at.end.character + (written?.[0].length ?? 0) };
        this.made.push(replace(uri, { start: at.end, end }, title === titleFromName(name) ? '' : ` "${title}"`));
        this.changes.push(`title "${title}", was "${now}"`);
    }

    use(use: MaterialSheet['use']): void {
        const { uri, use: now, useAt } = this.material;
        if (use === undefined || use === now) return;
        if (!useAt) return this.add(use);
        this.made.push(replace(uri, useAt, use));
        this.changes.push(`${use}, was ${now}`);
    }

    pack(pack: Pack): void {
        const { uri } = this.material;
        const size = quantityIn(pack.amount, this.measure.measure);
        const there = size && this.packsBySize.get(size.toFraction());
        if (!there) {
            this.packLines.push(packLine(pack));
            this.changes.push(packLine(pack));
        } else if (pack.cost && !there.cost) {
            this.made.push(insertAfter(uri, there.amount.at, ` costs ${pack.cost.value} ${pack.cost.currency}`));
            this.changes.push(packLine(pack));
        } else if (pack.cost && there.cost && !(there.cost.currency.toUpperCase() === pack.cost.currency && exactly(there.cost.value)?.equals(exactly(pack.cost.value)!))) {
            this.made.push(replace(uri, there.cost.at, `${pack.cost.value} ${pack.cost.currency}`));
            this.changes.push(`${packLine(pack)}, was ${there.cost.value} ${there.cost.currency}`);
        }
    }

    days(words: 'arrives in' | 'keeps', now: MaterialSheet['arrives'], wanted: { days: number; working: boolean; text: string }): void {
        if (now && now.days === wanted.days && (now.working ?? false) === wanted.working) return;
        if (!now) return this.add(`${words} ${wanted.text}`);
        this.made.push(replace(this.material.uri, now.at, wanted.text));
        this.changes.push(`${words} ${wanted.text}, was ${now.days} ${now.working ? 'working ' : ''}days`);
    }

    spare(percent: string | undefined): void {
        const { uri, spare } = this.material;
        if (percent === undefined || (spare && exactly(spare.percent)?.equals(exactly(percent) ?? -1))) return;
        if (!spare) return this.add(`spare ${percent}%`);
        this.made.push(replace(uri, spare.at, `${percent}%`));
        this.changes.push(`spare ${percent}%, was ${spare.percent}%`);
    }

    safetyStock(wanted: Quantity): void {
        const { uri, safetyStock: now } = this.material;
        const size = quantityIn(wanted, this.measure.measure);
        if (now && size && amountIn(now, this.measure.measure)?.equals(size)) return;
        if (!now) return this.add(`safety stock ${written(wanted)}`);
        this.made.push(replace(uri, now.at, written(wanted)));
        this.changes.push(`safety stock ${written(wanted)}, was ${[now.value, now.unit].filter(Boolean).join(' ')}`);
    }

    source(source: Source | undefined): void {
        const { uri, source: now, sourceAt } = this.material;
        if (source === undefined || source === now) return;
        if (!sourceAt) return this.add(sourceLine(source));
        const before = this.lineAt(sourceAt.start.line).slice(0, sourceAt.start.character);
        const from = now === 'printed' ? before.length : before.lastIndexOf('from');
        const start = { line: sourceAt.start.line, character: from < 0 ? before.length : from };
        this.made.push(replace(uri, { start, end: sourceAt.end }, sourceLine(source)));
        this.changes.push(`${sourceLine(source)}, was ${sourceLine(now!)}`);
    }

    /** Notes that stand in the file are their writer's: a cell adds one where there is none and changes none. */
    notes(notes: readonly string[]): void {
        const there = this.material.notes.map(plainProse);
        for (const note of notes) {
            if (there.includes(note)) continue;
            if (there.length === 0) this.add(noteLine(note));
            else this.remarks.push(`the note '${note.length > 60 ? `${note.slice(0, 59)}…` : note}' is not in the file, whose own note is kept`);
        }
    }
}

function plainProse({ parts }: Prose): string {
    return readingOf(parts.map(part => ('text' in part ? part.text : part.name)).join(''));
}

/** Reads an SVG back as a list of its elements, without anything of what wrote it. */
import type { Picture } from '@haversack/language/pictures/picture';
import { renderToString } from 'preact-render-to-string';
import { h } from 'preact';
import { PictureSvg } from '../../server/brief/picture/picture-svg.js';

export interface Drawn {
    name: string;
    classes: string[];
    /** Classes of the groups around it, outermost first. */
    within: string[];
    /** Attributes that are numbers. */
    at: Record<string, number>;
    d: string;
    text: string;
    /** Elements of the same group have the same number. */
    group: number;
}

export function drawn(picture: Picture): Drawn[] {
    const svg = renderToString(h(PictureSvg, { picture }));
    if (/NaN|undefined|Infinity|null/.test(svg)) throw new Error(`A drawing holds what is no number: ${svg}`);
    const found: Drawn[] = [];
    const open: { classes: string[]; group: number }[] = [];
    let groups = 0;
    for (const [, closes, name = '', attributes = '', empty, text = ''] of svg.matchAll(/<(\/)?(\w+)((?:\s[\w:-]+(?:="[^"]*")?)*)\s*(\/)?>([^<]*)/g)) {
        if (closes) {
            if (name === 'g') open.pop();
            continue;
        }
        const value = (attribute: string): string => new RegExp(`\\s${attribute}="([^"]*)"`).exec(attributes)?.[1] ?? '';
        const classes = value('class').split(' ').filter(Boolean);
        if (name === 'g' && !empty) open.push({ classes, group: ++groups });
        const at = Object.fromEntries([...attributes.matchAll(/\s([\w-]+)="(-?[\d.]+)"/g)].map(([, key = '', number]) => [key, Number(number)]));
        found.push({ name, classes, within: open.flatMap(group => group.classes), at, d: value('d'), text, group: open.at(-1)?.group ?? 0 });
    }
    return found;
}

export function withClass(elements: readonly Drawn[], ...classes: string[]): Drawn[] {
    return elements.filter(element => classes.every(one => element.classes.includes(one)));
}

/** Elements of the same group together, in their order. */
export function byGroup(elements: readonly Drawn[]): Drawn[][] {
    const groups = new Map<number, Drawn[]>();
    for (const element of elements) groups.set(element.group, [...groups.get(element.group) ?? [], element]);
    return [...groups.values()];
}

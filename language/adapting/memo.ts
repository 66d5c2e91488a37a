import type { LessonSheet } from '../sheets/sheet.js';
import { namesIn } from './moved-parts.js';

interface Kept {
    inputs: readonly unknown[];
    made: unknown;
}

/** So many different adaptations of one sheet are kept; more would be those of former versions of a file. */
const keptOfOne = 24;

/**
 * What was made of sheets, kept by the caller from one version of a programme to the next: the same sheets changed by the same lines give
 * the very same object again. A former version of a file is forgotten with its sheets.
 */
export class AdaptingMemo {
    private readonly made = new WeakMap<object, Kept[]>();
    private readonly named = new WeakMap<LessonSheet, ReadonlySet<string>>();

    /** `make` must depend on the base and the inputs alone; inputs are compared by identity. */
    of<T>(base: object, inputs: readonly unknown[], make: () => T): T {
        const all = this.made.get(base) ?? [];
        const known = all.find(({ inputs: others }) => others.length === inputs.length && others.every((input, i) => input === inputs[i]));
        if (known) return known.made as T;
        const made = make();
        this.made.set(base, [{ inputs, made }, ...all].slice(0, keptOfOne));
        return made;
    }

    /** Names of things that a lesson asks for or speaks of, or says that it does not need: what a swap may reach. */
    namedIn(sheet: LessonSheet): ReadonlySet<string> {
        let names = this.named.get(sheet);
        if (!names) this.named.set(sheet, names = allNames(sheet));
        return names;
    }
}

function allNames({ needs, notNeeded, steps, cautions, parts }: LessonSheet): Set<string> {
    const names = new Set(notNeeded.map(({ name }) => name));
    for (const block of [{ needs, steps, cautions }, ...parts]) {
        for (const { options } of block.needs) for (const { thing } of options) names.add(thing.name);
        for (const name of namesIn(block.steps)) names.add(name);
        for (const { prose } of block.cautions) for (const part of prose?.parts ?? []) if ('name' in part) names.add(part.name);
    }
    return names;
}

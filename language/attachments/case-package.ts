/** Finds a CFPackage of CASE 1.0 in parsed JSON, and reads its loosely kept values. */

export type JsonObject = Partial<Record<string, unknown>>;

/** So many values are looked at in search of a package that is wrapped in something else. */
const searched = 1000;

export interface FoundPackage {
    package: JsonObject;
    document?: JsonObject;
    /** Further packages in the same file. */
    others: number;
}

/** The package itself, or the first one that an outer object or list wraps. */
export function frameworkPackage(json: unknown): FoundPackage | undefined {
    const queue: unknown[] = [json];
    let found: JsonObject | undefined;
    let others = 0;
    for (let i = 0; i < queue.length && i < searched; i++) {
        const value = queue[i];
        if (isObject(value) && (own(value, 'CFItems') || own(value, 'CFDocument'))) {
            if (found) others += 1;
            else found = value;
        } else if (Array.isArray(value)) {
            queue.push(...value.slice(0, searched));
        } else if (isObject(value)) {
            queue.push(...Object.values(value).slice(0, searched));
        }
    }
    const document = found && own(found, 'CFDocument') ? listOf(found.CFDocument)[0] : undefined;
    return found && { package: found, document: isObject(document) ? document : undefined, others };
}

/** What a file holds in place of a framework, in words. */
export function looksLike(json: unknown): string {
    if (Array.isArray(json)) return json.length === 0 ? 'an empty list' : 'a list of other things';
    if (!isObject(json)) return json === null ? 'the word null' : `a single ${typeof json === 'string' ? 'text' : typeof json === 'number' ? 'number' : 'word'}`;
    const names = Object.keys(json);
    if (names.length === 0) return 'an empty object';
    const shown = names.slice(0, 3).map(name => `“${(wordsOf(name) ?? '').slice(0, 40)}”`);
    return `an object with ${shown.join(', ')}${names.length > 3 ? ` and ${names.length - 3} more` : ''}`;
}

export function isObject(value: unknown): value is JsonObject {
    return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** A list, though some files write a single value in its place, or null. */
export function listOf(value: unknown): readonly unknown[] {
    if (Array.isArray(value)) return value;
    return value === null || value === undefined ? [] : [value];
}

/** One line of text, though some files write numbers, lists of one, or an object with a title; undefined where nothing is said. */
export function wordsOf(value: unknown): string | undefined {
    const one = Array.isArray(value) ? value[0] as unknown : value;
    const said = isObject(one) ? one.title : one;
    if (typeof said !== 'string' && typeof said !== 'number') return undefined;
    // Control characters could steer a terminal that shows the text.
    // eslint-disable-next-line no-control-regex
    return String(said).replace(/[\s\u0000-\u001f\u007f-\u009f]+/g, ' ').trim() || undefined;
}

function own(object: JsonObject, key: string): boolean {
    return Object.prototype.hasOwnProperty.call(object, key);
}

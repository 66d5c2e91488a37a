/** Tells what kind a value is that came over the wire. */
type Kind = (value: unknown) => boolean;

export const isText: Kind = value => typeof value === 'string';
export const isFlag: Kind = value => typeof value === 'boolean';
export const isNumber: Kind = value => typeof value === 'number';
export const isListOf = (kinds: Readonly<Record<string, Kind>>): Kind => value => Array.isArray(value) && value.every(one => isRecord(one) && Object.entries(kinds).every(([name, is]) => is(one[name])));
export const isOneOf = (values: readonly string[]): Kind => value => typeof value === 'string' && values.includes(value);
/** Texts by name. */
export const isTexts: Kind = value => isRecord(value) && Object.values(value).every(isText);

/** The members of a request's parameters that are of the wanted kind; any other counts as not given. */
export function readParams<T extends object>(params: unknown, kinds: Readonly<Record<keyof Required<T>, Kind>>): Partial<T> {
    if (!isRecord(params)) return {};
    return Object.fromEntries(Object.entries<Kind>(kinds).flatMap(([name, is]) => (is(params[name]) ? [[name, params[name]]] : []))) as Partial<T>;
}

export function isRecord(value: unknown): value is Record<string, unknown> {
    return typeof value === 'object' && value !== null && !Array.isArray(value);
}

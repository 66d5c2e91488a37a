import type { Mention } from '../sheets/sheet.js';

/** Names that lead back to themselves, each with the names of its circle in order, beginning with itself. Linear. */
export function circlesOf<T>(declared: ReadonlyMap<string, T>, before: (one: T) => readonly Mention[]): Map<string, readonly string[]> {
    const circles = new Map<string, readonly string[]>();
    const done = new Set<string>();
    for (const start of declared.keys()) {
        const path: { name: string; next: string[] }[] = [];
        const onPath = new Map<string, number>();
        const enter = (name: string): void => {
            const one = declared.get(name);
            if (!one || done.has(name)) return;
            onPath.set(name, path.length);
            path.push({ name, next: before(one).map(mention => mention.name) });
        };
        enter(start);
        while (path.length > 0) {
            const top = path[path.length - 1]!;
            const next = top.next.shift();
            if (next === undefined) {
                path.pop();
                onPath.delete(top.name);
                done.add(top.name);
                continue;
            }
            const from = onPath.get(next);
            if (from === undefined) {
                enter(next);
                continue;
            }
            const names = path.slice(from).map(({ name }) => name);
            names.forEach((name, index) => {
                if (!circles.has(name)) circles.set(name, [...names.slice(index), ...names.slice(0, index)]);
            });
        }
    }
    return circles;
}

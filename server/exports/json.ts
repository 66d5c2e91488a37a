/**
 * Figures for programs: `{ "format": "haversack-…", "version": 1, … }` with what stands in planning/*figures.ts, such as
 * `"coverage": CoverageFigures` in haversack-coverage. Keys stand in alphabetical order, so equal figures give
 * equal text. `version` rises when a field is renamed, removed or changes its meaning; new fields may come without that.
 */
export function figuresJson(format: string, content: Record<string, unknown>): string {
    return `${JSON.stringify({ format, version: 1, ...ordered(content) as object }, null, 2)}\n`;
}

function ordered(value: unknown): unknown {
    if (Array.isArray(value)) return value.map(ordered);
    if (value === null || typeof value !== 'object') return value;
    return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)).map(([key, inner]) => [key, ordered(inner)]));
}

import type { WeekBrief } from '../planning/figures.js';

/**
 * The brief for programs: `{ "format": "haversack-brief", "version": 1, "brief": WeekBrief }` with WeekBrief as documented in
 * planning/figures.ts. Amounts are exact text that reads as a rational ("20", "1/2"), with their unit beside them; dates are ISO 8601; places are
 * zero-based lines and UTF-16 characters. Keys stand in alphabetical order, so equal briefs give equal text.
 * `version` rises when a field is renamed, removed or changes its meaning; new fields may come without that.
 */
export function briefJson(brief: WeekBrief): string {
    return `${JSON.stringify({ format: 'haversack-brief', version: 1, brief: ordered(brief) }, null, 2)}\n`;
}

function ordered(value: unknown): unknown {
    if (Array.isArray(value)) return value.map(ordered);
    if (value === null || typeof value !== 'object') return value;
    return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)).map(([key, inner]) => [key, ordered(inner)]));
}

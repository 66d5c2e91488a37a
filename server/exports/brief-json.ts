import type { WeekBrief } from '../planning/figures.js';
import { figuresJson } from './json.js';

/**
 * The brief for programs: `{ "format": "haversack-brief", "version": 1, "brief": WeekBrief }` with WeekBrief as documented in
 * planning/figures.ts. Amounts are exact text that reads as a rational ("20", "1/2"), with their unit beside them; dates are ISO 8601; places are
 * zero-based lines and UTF-16 characters.
 */
export function briefJson(brief: WeekBrief): string {
    return figuresJson('haversack-brief', { brief });
}

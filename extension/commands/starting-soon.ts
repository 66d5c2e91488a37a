import { nextMonday } from '../local-day.js';

/** The first Monday after a day, in the line that says when the class starts. */
export function startingSoon(text: string, today: Date): string {
    return text.replace(/^([ \t]*starts )\d{4}-\d{2}-\d{2}$/m, `$1${nextMonday(today)}`);
}

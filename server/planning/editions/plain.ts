import type { LessonSheet, PartSheet, Place, Prose, Range, Step } from '@haversack/language/sheets/sheet';

/** How a name is called on the other side: itself where nothing was renamed. */
export type Renamed = (name: string) => string;

export const sameName: Renamed = name => name;

/** Members of a sheet that say where something stands and not what. */
const places = new Set(['at', 'whole', 'head', 'uri', 'useAt', 'sourceAt', 'flagAt', 'kindAt', 'editionAt', 'starts', 'adapted']);

/** Everything that a sheet says, without where: equal texts say the same. */
export function saying(sheet: unknown): string {
    return JSON.stringify(sheet, (key, value: unknown) => {
        if (places.has(key)) return undefined;
        return isProse(value) ? proseText(value) : value;
    });
}

/** Other sheets have parts and a place too, but more besides. */
function isProse(value: unknown): value is Prose {
    return typeof value === 'object' && value !== null && 'parts' in value && 'at' in value && Object.keys(value).length === 2;
}

/** On one line; how the lines are broken and how wide the gaps are means nothing. Names stand in braces, as `renamed` calls them. */
export function proseText({ parts }: Prose, renamed: Renamed = sameName): string {
    return oneLine(parts.map(part => ('name' in part ? `{${renamed(part.name)}}` : part.text)).join(''));
}

/** The same for people, names as their titles. */
export function proseForPeople({ parts }: Prose, titleOf: (name: string) => string): string {
    return oneLine(parts.map(part => ('name' in part ? titleOf(part.name) : part.text)).join(''));
}

export function oneLine(text: string): string {
    return text.replace(/\s+/gu, ' ').trim();
}

/** Steps with those under them, in reading order. */
export function flatSteps(steps: readonly Step[]): Step[] {
    return steps.flatMap(step => [step, ...flatSteps(step.under)]);
}

/** What a step says, whatever word it stands under. */
export function stepText(step: Step, renamed: Renamed = sameName): string {
    if (!step.show) return proseText(step.prose, renamed);
    const { picture, settings, title } = step.show;
    return [picture.name, ...settings.map(({ text }) => text), ...(title === undefined ? [] : [`“${title}”`])].join(' ').replace(/ ,/g, ',');
}

export function placeIn(uri: string, range: Range): Place {
    return { uri, range };
}

export function minutesOf({ parts }: LessonSheet): number {
    return parts.reduce((sum, { minutes }) => sum + (minutes ?? 0), 0);
}

/** Lessons hold everything that their parts do; the text of both, step by step. */
export function stepsOf({ steps, parts }: Pick<LessonSheet, 'steps' | 'parts'>): Step[] {
    return [...flatSteps(steps), ...parts.flatMap((part: PartSheet) => flatSteps(part.steps))];
}

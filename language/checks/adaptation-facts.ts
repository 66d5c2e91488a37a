import { lessonsBrought } from '../sheets/adaptation-names.js';
import type { Change } from '../sheets/adaptation-sheet.js';
import type { Prose } from '../sheets/sheet.js';
import { firstMentions } from './lesson-facts.js';
import { allNeeds, allSteps } from './walk-lessons.js';

/** Names of lessons that a change takes from elsewhere, whole or with one of their parts. */
export function broughtByChanges(change: Change): string[] {
    const names = lessonsBrought(change).map(({ name }) => name);
    if (change.does === 'insert activity') names.push(change.activity.lesson.name);
    if (change.does === 'swap activity') names.push(change.forActivity.lesson.name);
    return names;
}

/** What the lines under `add to` name: things and games in needs and parts, objectives, and whatever stands in braces. */
export function namedInAdditions(change: Change): { things: string[]; objectives: string[] } {
    if (change.does !== 'add to lesson' && change.does !== 'add to activity') return { things: [], objectives: [] };
    const { added } = change;
    const prose: Prose[] = [added, ...added.parts].flatMap(({ steps, cautions }) => [...allSteps(steps).map(step => step.prose), ...cautions.flatMap(caution => caution.prose ?? [])]);
    const named = [...firstMentions(prose).keys()];
    const needed = allNeeds(added).flatMap(({ options }) => options.map(({ thing }) => thing.name));
    const played = added.parts.flatMap(({ kind, name }) => (kind === 'game' ? [name] : []));
    return {
        things: [...needed, ...played, ...named],
        objectives: [...[added.introduces, added.practises, added.checks].flatMap(list => list.map(({ name }) => name)), ...named]
    };
}

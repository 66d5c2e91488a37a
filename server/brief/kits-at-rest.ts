/** Kit pieces that no lesson of the week uses, put together by kit and by when they come back, so that a family sees what to leave out of the bag. */
import type { Place, WeekBrief } from '../planning/figures.js';
import { titleInSentence } from './title-in-sentence.js';
import { words } from './words.js';

export interface KitAtRest {
    kit: { title: string; place: Place };
    groups: { when: string; pieces: { title: string; place: Place }[] }[];
}

export function kitsAtRest(brief: WeekBrief): KitAtRest[] {
    const kits = new Map<string, { kit: KitAtRest['kit']; lines: WeekBrief['stayOnShelf'] }>();
    for (const line of brief.stayOnShelf) {
        if (!line.kit) continue;
        const rest = kits.get(line.kit.name) ?? { kit: line.kit, lines: [] };
        rest.lines.push(line);
        kits.set(line.kit.name, rest);
    }
    return [...kits.values()].map(({ kit, lines }) => ({ kit, groups: byReturn(lines, brief.week) }));
}

const never = Number.MAX_SAFE_INTEGER;

function byReturn(lines: WeekBrief['stayOnShelf'], week: number): KitAtRest['groups'] {
    const sorted = lines.slice().sort((a, b) => (a.nextWeek ?? never) - (b.nextWeek ?? never));
    const whens = [words.backNextWeek, words.backLater, words.neverUsed];
    const of = (next: number | undefined): string => (next === undefined ? words.neverUsed : next === week + 1 ? words.backNextWeek : words.backLater);
    return whens.flatMap(when => {
        const pieces = sorted.filter(line => of(line.nextWeek) === when)
            .map(({ name, title, kind, place }) => ({ title: titleInSentence(name, title, kind, { listed: true }), place }));
        return pieces.length > 0 ? [{ when, pieces }] : [];
    });
}

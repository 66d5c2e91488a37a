import type { LessonSheet, ObjectiveSheet } from '@haversack/language/sheets/sheet';
import type { Difference, EditionGroup } from '../edition-figures.js';
import { listing, quoted } from '@haversack/language/facts/wording';
import type { Pair } from './alike.js';
import type { Matched } from './matched.js';
import type { ObjectiveShifts, Taught } from './objective-shifts.js';
import { placeIn, proseForPeople } from './plain.js';
import { comings, difference, group, instead, sureness, titles } from './words.js';

const does = [['introduces', 'Introduced'], ['practises', 'Practised'], ['checks', 'Checked']] as const;

/** Objectives that came, went, are called otherwise, or are introduced, practised or checked in other lessons. */
export function objectiveDifferences(matched: Matched, taught: Taught, shifts: ObjectiveShifts): EditionGroup[] {
    const { pairs, gone, added } = matched.objectives;
    const used = (objective: ObjectiveSheet, lessons: readonly LessonSheet[]): boolean => lessons.some(lesson => does.some(([word]) => lesson[word].some(({ name }) => name === objective.name)));
    return [
        ...pairs.flatMap(pair => group({
            title: pair.new.title, old: placeIn(pair.old.uri, pair.old.at), new: placeIn(pair.new.uri, pair.new.at),
            differences: [...named(pair), ...taughtElsewhere(pair, shifts), ...facts(matched, pair)]
        })),
        ...gone.filter(one => used(one, taught.old)).map(one => ({
            title: one.title, old: placeIn(one.uri, one.at),
            differences: [difference('objective-removed', `No longer an objective; it was worked on in ${titles(lessonsWith(one, taught.old))}`, { old: placeIn(one.uri, one.at) })]
        })),
        ...added.filter(one => used(one, taught.new)).map(one => ({
            title: one.title, new: placeIn(one.uri, one.at),
            differences: [difference('objective-added', `A new objective: ${newlyTaught(one, taught.new)}`, { new: placeIn(one.uri, one.at) })]
        }))
    ];
}

function lessonsWith(objective: ObjectiveSheet, lessons: readonly LessonSheet[]): string[] {
    return lessons.filter(lesson => does.some(([word]) => lesson[word].some(({ name }) => name === objective.name))).map(({ title }) => title);
}

function newlyTaught(objective: ObjectiveSheet, lessons: readonly LessonSheet[]): string {
    return does.flatMap(([word, says]) => {
        const there = lessons.filter(lesson => lesson[word].some(({ name }) => name === objective.name)).map(({ title }) => title);
        return there.length > 0 ? [`${says.toLowerCase()} in ${titles(there)}`] : [];
    }).join('; ');
}

function named({ old, new: now, recognised }: Pair<ObjectiveSheet>): Difference[] {
    const sides = { old: placeIn(old.uri, old.at), new: placeIn(now.uri, now.at) };
    if (old.title !== now.title) return [difference('objective-renamed', `Now called ${quoted(now.title)}, before ${quoted(old.title)}`, { ...sides, why: recognised && sureness(recognised) })];
    return old.name === now.name ? [] : [difference('objective-renamed', `Now written as ${now.name}, not ${old.name}`, { ...sides, why: recognised && sureness(recognised) })];
}

/** What no lesson tells that both editions teach. By lesson, not by place in the row: a lesson that moved takes its objectives with it. */
function taughtElsewhere({ old, new: now }: Pair<ObjectiveSheet>, shifts: ObjectiveShifts): Difference[] {
    return does.flatMap(([word, says]) => {
        const shift = shifts.of(word, now.name);
        if (!shift || shift.inLessons) return [];
        const { before, after, gone, added } = shift;
        const line = (lesson: LessonSheet | undefined, name: string): ReturnType<typeof placeIn> | undefined => {
            const mention = lesson?.[word].find(one => one.name === name);
            return lesson && mention && placeIn(lesson.uri, mention.at);
        };
        const sides = { old: line(gone[0], old.name), new: line(added[0], now.name) };
        const here = titles(added.map(({ title }) => title));
        const there = titles(gone.map(({ title }) => title));
        if (after.length === 0) return [difference('objective-taught', `No longer ${says.toLowerCase()}: it was in ${there}`, sides)];
        if (added.length === 0) return [difference('objective-taught', `${says}: no longer in ${there}, still in ${titles(after.map(({ title }) => title))}`, sides)];
        if (gone.length === 0) return [difference('objective-taught', before.length === 0 ? `${says}: now in ${here}` : `${says}: also in ${here}`, sides)];
        return [difference('objective-taught', `${says}: in ${here} instead of ${there}`, sides)];
    });
}

function facts(matched: Matched, { old, new: now }: Pair<ObjectiveSheet>): Difference[] {
    const sides = { old: placeIn(old.uri, old.at), new: placeIn(now.uri, now.at) };
    const strand = instead(old.strand, now.strand);
    const builds = comings(old.buildsOn, now.buildsOn, ({ name }) => matched.newObjective(name), ({ name }) => name);
    const codes = comings(old.alignsTo, now.alignsTo, code, code);
    const about = (sheet: ObjectiveSheet, side: 'old' | 'new'): string | undefined => sheet.about && proseForPeople(sheet.about, matched.titleIn(side));
    const [before, after] = [about(old, 'old'), about(now, 'new')];
    const list = (head: string, titled: readonly string[]): Difference[] => (titled.length > 0 ? [difference('objective-fact', `${head} ${listing(titled)}`, sides)] : []);
    return [
        ...(strand === undefined ? [] : [difference('objective-fact', `Strand: ${strand}`, sides)]),
        ...list('Now builds on', builds.added.map(({ name }) => quoted(matched.titleIn('new')(name)))),
        ...list('No longer builds on', builds.gone.map(({ name }) => quoted(matched.titleIn('old')(name)))),
        ...list('Now aligned to', codes.added.map(code)), ...list('No longer aligned to', codes.gone.map(code)),
        ...(before === after ? [] : [difference('objective-fact', 'What is said of it is worded anew', { ...sides, before, after })])
    ];
}

function code({ framework, code: item }: ObjectiveSheet['alignsTo'][number]): string {
    return `${item} of ${framework.name}`;
}

/** Sentences that HTML and Markdown share, put together from finished figures. */
import type { CautionGroup } from './caution-groups.js';
import type { BuyFigures, LessonFigures, PartFigures, Place, ThingFigures, WeekBrief } from '../planning/figures.js';
import { spanInWords } from './days.js';
import { taughtRemark } from './meetings.js';
import { partLabels, words } from './words.js';
import type { View } from './view.js';

export function plural(count: number, one: string): string {
    return `${count} ${one}${count === 1 ? '' : 's'}`;
}

export function weekTitle(brief: WeekBrief): string {
    return brief.week <= brief.weeks ? `Week ${brief.week} of ${brief.weeks}` : `Week ${brief.week}`;
}

/** "Mon 14 Sep to Thu 17 Sep 2026, 3 lessons, 138 minutes" */
export function weekFacts(brief: WeekBrief): string {
    return [spanInWords(brief.from, brief.to), plural(brief.lessons.length, 'lesson'), ...minutesOfWeek(brief)]
        .filter(fact => fact !== undefined).join(', ');
}

/** Nothing where no part of the week has minutes. */
function minutesOfWeek(brief: WeekBrief): string[] {
    if (brief.minutes === 0) return [];
    const untimed = brief.lessons.some(lesson => lesson.minutesIncomplete || lesson.minutes === 0);
    return [plural(brief.minutes, 'minute'), ...(untimed ? [words.someUntimed] : [])];
}

/** "7 learners: 4 pairs. Ages 6 to 9." */
export function room(brief: WeekBrief): string {
    const ages = brief.ages && (brief.ages.to === undefined ? `Ages ${brief.ages.from} and up.` : `Ages ${brief.ages.from} to ${brief.ages.to}.`);
    return [sentence(brief.people.text), ages].filter(Boolean).join(' ');
}

export function assumptions(brief: WeekBrief): string[] {
    return [...new Set([...brief.people.assumptions, ...brief.assumptions])];
}

export function hasCautions(brief: WeekBrief): boolean {
    return brief.cautions.length > 0
        || brief.lessons.some(lesson => lesson.cautions.length > 0 || lesson.parts.some(part => part.cautions.length > 0));
}

/** The things a group of cautions is about: "Linking cubes", "spot dice". Cautions about no thing add nothing. */
export function cautionThings(group: CautionGroup, view: View): { title: string; place: Place }[] {
    const things = group.cautions.flatMap(({ thing, place }) => (thing === undefined ? [] : [{ thing, place }]));
    return things.map(({ thing, place }, index) => ({ title: index === 0 ? view.titleOf(thing) : view.inSentence(thing, { listed: true }), place }));
}

/** "Caution", or more where the ages in the room make it serious. */
export function cautionLabel({ cautions: [first] }: CautionGroup): string {
    return first.serious === undefined ? words.caution : words.seriousCaution;
}

/** The usual advice in full, behind what makes it serious in this room; or "Small parts, as above." where the same advice has been given before. */
export function cautionAdvice({ again, cautions: [first] }: CautionGroup): string {
    if (!again || first.title === undefined) return [first.serious, first.text].filter(Boolean).join(' ');
    return `${first.title}, ${words.asAbove}.`;
}

/** Why a caution stands here that nobody declared: "Linking cubes: 20 x 20 x 20 mm; the youngest learners are 4". */
export function cautionReasons({ worked }: CautionGroup, view: View): { words: string; place: Place }[] {
    return worked.map(({ thing, computed = '', place }) => ({ words: thing === undefined ? computed : `${view.titleOf(thing)}: ${computed}`, place }));
}

/** "Kits and cupboard hold 60; 20 more needed." Undefined where nothing is known about the stock. */
export function stock(thing: Pick<ThingFigures, 'atHand' | 'missing' | 'source'>): string | undefined {
    const holds = thing.atHand && `${thing.source === 'kit' ? 'Kits and cupboard hold' : 'At hand:'} ${thing.atHand.text}`;
    const missing = thing.missing && `${thing.missing.text} more needed`;
    if (!holds && !missing) return undefined;
    return `${[holds, missing].filter(Boolean).join('; ')}.`;
}

/** "Only these parts: Ones, Tens" */
export function onlyParts(thing: Pick<ThingFigures, 'parts'>): string | undefined {
    return thing.parts.length ? `${words.parts}: ${thing.parts.map(part => part.title).join(', ')}` : undefined;
}

/** "Needed Thu 26 Nov; arrives in 4 days, so order by Sun 22 Nov. The last day to order is before this week begins." */
export function whenToBuy(line: BuyFigures, brief: WeekBrief): string {
    const early = !line.late && line.orderBy !== undefined && brief.from !== undefined && line.orderBy < brief.from;
    return early ? `${sentence(line.when)} ${words.beforeTheWeek}` : sentence(line.when);
}

/** How it is sold, where nobody knows yet which packs to take. */
export function packs(line: BuyFigures): string | undefined {
    return line.packs.length && !line.packsToBuy?.length ? `Sold in ${line.packs.join(', or ')}.` : undefined;
}

/** "The term has no day left for “A”, “B”." */
export function leftOut({ unplaced = [] }: WeekBrief): string | undefined {
    return unplaced.length > 0 ? `${words.leftOut} ${unplaced.map(({ title }) => `“${title}”`).join(', ')}.` : undefined;
}

/** "new this week, optional"; in the first week all is new, so nothing is called so. */
export function marks(thing: ThingFigures, brief: WeekBrief): string {
    return [thing.isNew && brief.week > 1 && words.isNew, thing.optional && words.optional].filter(Boolean).join(', ');
}

/** "Mon 14 Sep, part 1 of 2, 48 min, some parts without a time" */
export function lessonFacts(lesson: LessonFigures): string {
    return [lesson.meeting, taughtRemark(lesson), lessonTime(lesson), lesson.minutesIncomplete && lesson.minutes > 0 ? words.someUntimed : '']
        .filter(Boolean).join(', ');
}

/** "48 min"; the sum 0 only says that no part has minutes. */
export function lessonTime(lesson: LessonFigures): string {
    return lesson.minutes === 0 ? words.noTime : `${lesson.minutes} min`;
}

/** A part without a name goes by its kind. */
export function partTitle(part: PartFigures): string {
    return part.title.trim() === '' ? partLabels[part.kind] : part.title;
}

/** "Warm-up, 5 min"; the kind is left out where it is the title. */
export function partKindAndTime(part: PartFigures): string {
    const label = partLabels[part.kind];
    return [partTitle(part) === label ? '' : label, part.minutes === undefined ? words.noTime : `${part.minutes} min`].filter(Boolean).join(', ');
}

/** "Warm-up, 5 min, from minute 0" */
export function partFacts(part: PartFigures): string {
    return [partKindAndTime(part), part.startsAt === undefined ? '' : `from minute ${part.startsAt}`].filter(Boolean).join(', ');
}

/** "8 items: name numbers 11 to 99; return to 67." As many as there are, where fewer can be made than are asked for. */
export function practiceWords(part: PartFigures): string | undefined {
    const items = part.practiceItems?.length ? part.practiceItems.length : part.items;
    const count = items === undefined ? '' : plural(items, 'item');
    const how = part.practice?.join('; ') ?? '';
    const text = [count, how].filter(Boolean).join(': ');
    return text ? sentence(text) : undefined;
}

/** Begins with a capital and ends with a full stop, unless it ends a sentence already. */
export function sentence(text: string): string {
    return ended(text.replace(/^[a-z]/, first => first.toUpperCase()));
}

/** Ends with a full stop, unless it ends a sentence already. */
export function ended(text: string): string {
    return text === '' || /[.!?…]["”’]?$/.test(text) ? text : `${text}.`;
}

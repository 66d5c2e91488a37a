import type { Change, ChangeMark } from '../sheets/adaptation-sheet.js';
import type { Caution, GameSheet, LessonSheet, Mention, Need, PartSheet, Prose, Step } from '../sheets/sheet.js';
import { inStead, isOneForOne, isRatio, isUnlike, isUsedUp, measureInWords, type Ratio } from './exact-amounts.js';
import { namesIn, needsAny, thingsOf } from './moved-parts.js';
import { markOf, marked, originsOf, without, type Idle, type Line, type Outcome, type Taught, type WorkingCourse } from './working-course.js';
import { capital, quoted } from '../facts/wording.js';
import { thingInWords } from './words.js';

type SwapThing = Extract<Change, { does: 'swap thing' }>;

/**
 * One thing for another: in needs, with the amount that the ratio gives, in all prose, and in what is not needed. It reaches the games that are
 * played: everywhere the game itself, in one lesson the game as it is played there. Everywhere it also reaches what later changes bring into the
 * course as it is written.
 */
export function swapThing(course: WorkingCourse, change: SwapThing, line: Line): Outcome {
    const { thing, forThing, within, ratio } = change;
    const unknown = [thing, forThing].find(({ name }) => !course.thingNamed(name));
    if (unknown) return { idle: `no inventory has “${unknown.name}”`, unknown: true };
    if (thing.name === forThing.name) return { idle: 'it is the same thing' };
    if (ratio && !isRatio(ratio)) return { idle: `${ratio.give} for ${ratio.replaces} is no ratio: both are more than nothing` };
    const meant = within ? course.meant(within.lesson.name) : course.all();
    if (within && meant.length === 0) return course.missing(within.lesson);
    const unlike = unlikeNeed(course, change, whereUsed(course, change, meant));
    if (unlike) return { at: forThing.at, idle: notComparable(course, change, unlike) };
    if (within?.part) return swapInPart(course, { lesson: within.lesson, part: within.part }, line);
    const games = within ? new Set<string>() : swapInGames(course, line);
    if (!within) course.swaps.push({ line, games });
    const swapping = new Swapping(course, line);
    const touched = [...new Set(meant.map(({ name }) => name))].filter(name => {
        const sheet = course.sheet(name);
        const own = sheet && swappedIn(course, sheet, swapping);
        const swapped = own && within ? withOwnGames(course, own, swapping) : own;
        if (!swapped) return false;
        if (swapped !== sheet) course.sheets.set(name, swapped);
        return swapped !== sheet || playsAny(sheet, games);
    });
    if (touched.length > 0) return { touched, says: sentence(course, change) };
    return notUsed(course, change);
}

/** A lesson of the programme as it is written, but for what is swapped everywhere. */
export function asWritten(course: WorkingCourse, name: string, into = name): LessonSheet | undefined {
    const sheet = course.programme.lessons.get(name);
    return sheet && course.swaps.reduce((before, { line, games }) => {
        if (unlikeNeed(course, line.change as SwapThing, [before, ...before.parts])) return before;
        const swapped = swappedIn(course, before, new Swapping(course, line));
        if (swapped !== before || playsAny(sheet, games)) course.reaches(line.change, into, sentence(course, line.change as SwapThing));
        return swapped;
    }, sheet);
}

function playsAny({ parts }: LessonSheet, games: ReadonlySet<string>): boolean {
    return parts.some(({ kind, name }) => kind === 'game' && games.has(name));
}

function sentence(course: WorkingCourse, change: SwapThing): string {
    const ratio = ratioOf(course, change);
    const { within } = change;
    const where = !within ? '' : ` in ${within.part ? `${quoted(course.part({ lesson: within.lesson, part: within.part }))} of ` : ''}${quoted(course.lesson(within.lesson.name))}`;
    return capital(`${insteadOf(course, change)}${where}${isOneForOne(ratio) ? '' : `, ${ratio.give} for ${ratio.replaces}`}`);
}

function notUsed(course: WorkingCourse, { thing, within }: SwapThing): Idle {
    const what = thingInWords(course, thing.name);
    return { idle: within ? `${quoted(course.lesson(within.lesson.name))} does not use ${what}` : `no lesson of the course uses ${what}` };
}

type Needing = Pick<LessonSheet, 'needs'>;

/** Everything whose needs the swap is to change, games included. */
function whereUsed(course: WorkingCourse, { thing, within }: SwapThing, meant: readonly Taught[]): Needing[] {
    const sheets = [...new Set(meant.map(({ name }) => name))].flatMap(name => course.sheet(name) ?? []);
    const parts = within?.part ? course.parts({ lesson: within.lesson, part: within.part }).map(({ part }) => part) : sheets.flatMap(sheet => sheet.parts);
    const games = [...new Set(parts.flatMap(({ kind, name }) => (kind === 'game' ? [name] : [])))].flatMap(name => course.gameNamed(name) ?? []);
    const spoken = !within?.part || parts.some(({ steps }) => namesIn(steps).has(thing.name));
    return [...spoken ? sheets : [], ...parts, ...games];
}

/** A need whose amount nobody has said how to tell in the other thing. */
function unlikeNeed(course: WorkingCourse, change: SwapThing, where: readonly Needing[]): Need | undefined {
    if (givenRatio(course, change)) return undefined;
    const [thing, other] = [course.thingNamed(change.thing.name), course.thingNamed(change.forThing.name)];
    const names = new Set([change.thing.name]);
    for (const { needs } of where) {
        const unlike = needs.find(need => need.amount && needsAny(need, names) && isUnlike(need.amount, thing, other));
        if (unlike) return unlike;
    }
    return undefined;
}

function notComparable(course: WorkingCourse, { thing, forThing }: SwapThing, { amount }: Need): string {
    const [from, to] = [course.thingNamed(thing.name), course.thingNamed(forThing.name)];
    const [here, there] = [measureInWords(from, amount), measureInWords(to)];
    const example = there === 'counted' ? '1 for 200' : here === 'counted' ? '200 for 1' : '1 for 2';
    return `${quoted(course.thing(thing.name))} is ${here} and ${quoted(course.thing(forThing.name))} is ${there}, and the line does not say how much does for how much (as in “swap ${thing.name} for ${forThing.name} ${example}”)`;
}

/** As the line says, else as the thing's own stand-in says, else one for one. */
function ratioOf(course: WorkingCourse, change: SwapThing): Ratio {
    return givenRatio(course, change) ?? { give: '1', replaces: '1' };
}

function givenRatio(course: WorkingCourse, { thing, forThing, ratio }: SwapThing): Ratio | undefined {
    const sheet = course.thingNamed(thing.name);
    const standIn = sheet?.kind === 'material' ? sheet.standIns.find(({ thing: other }) => other.name === forThing.name) : undefined;
    return ratio ?? (standIn && isRatio(standIn) ? { give: standIn.give, replaces: standIn.replaces } : undefined);
}

function insteadOf(course: WorkingCourse, { thing, forThing }: SwapThing): string {
    const [here, there] = [thing, forThing].map(({ name }) => isUsedUp(course.thingNamed(name)));
    const other = here === there ? '' : there ? ' (used up, not handed back)' : ' (handed back, not used up)';
    return `${thingInWords(course, forThing.name)} instead of ${thingInWords(course, thing.name)}${other}`;
}

/** What the swap of one line does to needs and prose. */
class Swapping {
    readonly mark: ChangeMark;
    /** What a result hangs on beside the sheet that is changed. */
    readonly inputs: readonly unknown[];
    readonly thing: string;
    readonly names: ReadonlySet<string>;
    private readonly change: SwapThing;
    private readonly ratio: Ratio;

    constructor(private readonly course: WorkingCourse, line: Line) {
        this.change = line.change as SwapThing;
        this.ratio = ratioOf(course, this.change);
        this.mark = markOf(line, insteadOf(course, this.change));
        const { thing, forThing } = this.change;
        this.inputs = [this.change, this.mark.says, course.thingNamed(thing.name), course.thingNamed(forThing.name)];
        this.thing = thing.name;
        this.names = new Set([thing.name]);
    }

    need(need: Need): Need {
        if (!needsAny(need, this.names)) return need;
        const { thing, forThing } = this.change;
        const others = need.options.filter(option => option.thing.name !== thing.name && option.thing.name !== forThing.name);
        const here = need.options.find(option => option.thing.name === thing.name)!;
        const swapped = { ...here, thing: { ...here.thing, name: forThing.name }, parts: this.partsOf(here.parts) };
        const alike = isOneForOne(this.ratio);
        const options = alike && others.length > 0 ? need.options.flatMap(option => (option === here ? [swapped] : others.includes(option) ? [option] : [])) : [swapped];
        const amount = need.amount && inStead(need.amount, this.course.thingNamed(thing.name), this.course.thingNamed(forThing.name), this.ratio);
        return marked({ ...without(need, 'inKit', 'flagAt'), options, ...(amount && { amount: others.length > 0 && alike ? need.amount : amount }) }, this.mark);
    }

    /** Only parts that the other thing has too. */
    private partsOf(parts: readonly Mention[]): Mention[] {
        const other = this.course.thingNamed(this.change.forThing.name);
        const known = new Set(other?.kind === 'material' ? other.parts.map(({ name }) => name) : []);
        return parts.filter(({ name }) => known.has(name));
    }

    step(step: Step): Step {
        const prose = this.prose(step.prose);
        const under = changed(step.under, own => this.step(own));
        if (prose === step.prose && under === step.under) return step;
        return prose === step.prose ? { ...step, under } : marked({ ...step, prose, under }, this.mark);
    }

    caution(caution: Caution): Caution {
        const prose = caution.prose && this.prose(caution.prose);
        return prose === caution.prose ? caution : marked({ ...caution, prose }, this.mark);
    }

    /** Parts and games; the very same where nothing in it changes. */
    block<T extends PartSheet | GameSheet>(block: T): T {
        const steps = changed(block.steps, step => this.step(step));
        const needs = changed(block.needs, need => this.need(need));
        const cautions = changed(block.cautions, caution => this.caution(caution));
        return steps === block.steps && needs === block.needs && cautions === block.cautions ? block : { ...block, steps, needs, cautions };
    }

    lesson(sheet: LessonSheet): LessonSheet {
        const steps = changed(sheet.steps, step => this.step(step));
        const needs = changed(sheet.needs, need => this.need(need));
        const parts = changed(sheet.parts, part => this.block(part));
        const cautions = changed(sheet.cautions, caution => this.caution(caution));
        const needed = new Set([...thingsOf(needs), ...thingsOf(parts.flatMap(part => part.needs))]);
        const notNeeded = changed(sheet.notNeeded, mention => this.mention(mention));
        if (steps === sheet.steps && needs === sheet.needs && parts === sheet.parts && cautions === sheet.cautions && notNeeded === sheet.notNeeded) return sheet;
        return { ...sheet, steps, needs, parts, cautions, notNeeded: notNeeded === sheet.notNeeded ? notNeeded : notNeeded.filter(({ name }) => !needed.has(name)) };
    }

    mention(mention: Mention): Mention {
        return mention.name === this.change.thing.name ? { ...mention, name: this.change.forThing.name } : mention;
    }

    private prose(prose: Prose): Prose {
        const parts = changed(prose.parts, part => ('name' in part && part.name === this.change.thing.name ? { ...part, name: this.change.forThing.name } : part));
        return parts === prose.parts ? prose : { ...prose, parts };
    }
}

/** The very same list where nothing in it changes. */
function changed<T>(list: T[], change: (one: T) => T): T[] {
    let isSame = true;
    const made = list.map(one => {
        const now = change(one);
        isSame &&= now === one;
        return now;
    });
    return isSame ? list : made;
}

function swappedIn(course: WorkingCourse, sheet: LessonSheet, swapping: Swapping): LessonSheet {
    return course.memo.namedIn(sheet).has(swapping.thing) ? course.memo.of(sheet, swapping.inputs, () => swapping.lesson(sheet)) : sheet;
}

/** The names of games that are others now. */
function swapInGames(course: WorkingCourse, line: Line): Set<string> {
    const names = new Set<string>();
    const swapping = new Swapping(course, line);
    for (const name of new Set([...course.programme.games.keys(), ...course.games.keys()])) {
        const game = course.gameNamed(name)!;
        const swapped = course.memo.of(game, swapping.inputs, () => swapping.block(game));
        if (swapped === game) continue;
        course.games.set(name, swapped);
        names.add(name);
    }
    return names;
}

/**
 * The games of a lesson, or that of one part, with the other thing. Elsewhere they are played as they were: so what is played here gets a name of its own,
 * and the part remembers which game it was.
 */
function withOwnGames(course: WorkingCourse, sheet: LessonSheet, swapping: Swapping, only?: number): LessonSheet {
    const names = new Map<string, string>();
    for (const [index, { kind, name }] of sheet.parts.entries()) {
        const game = kind === 'game' && (only === undefined || only === index) && !names.has(name) ? course.gameNamed(name) : undefined;
        const swapped = game && swapping.block(game);
        if (!swapped || swapped === game) continue;
        const own = freeGameName(course, `${sheet.parts[index]!.from?.[0]?.part ?? name}-in-${sheet.name}`);
        course.games.set(own, course.memo.of(game, [...swapping.inputs, own], () => ({ ...swapped, name: own })));
        names.set(name, own);
    }
    if (names.size === 0) return sheet;
    const staysToo = (name: string): boolean => only !== undefined && sheet.parts.some((part, i) => i !== only && part.name === name);
    return course.memo.of(sheet, [...swapping.inputs, 'games', only, ...[...names].flat()], () => ({
        ...sheet,
        parts: sheet.parts.map((part, index): PartSheet => {
            const { unsure } = part;
            const played = part.kind === 'game' && (only === undefined || only === index) ? names.get(part.name) : undefined;
            if (played !== undefined) return { ...part, name: played, from: originsOf(part, sheet.name) };
            const again = unsure?.then === 'repeat' && unsure.of === undefined && !staysToo(unsure.activity.name) ? names.get(unsure.activity.name) : undefined;
            return unsure?.then === 'repeat' && again !== undefined ? { ...part, unsure: { ...unsure, activity: { ...unsure.activity, name: again } } } : part;
        })
    }));
}

function freeGameName(course: WorkingCourse, wanted: string): string {
    let name = wanted;
    for (let n = 2; course.gameNamed(name); n++) name = `${wanted}-${n}`;
    return name;
}

/** In one part: its own needs and prose, and of its lesson's what it speaks of. */
function swapInPart(course: WorkingCourse, mention: { lesson: Mention; part: Mention }, line: Line): Outcome {
    const found = course.parts(mention);
    if (found.length === 0) return course.missingPart(mention);
    const swapping = new Swapping(course, line);
    const touched = found.filter(({ lesson, index }) => {
        const sheet = course.sheet(lesson)!;
        const own = course.memo.of(sheet, [...swapping.inputs, 'part', index], () => inPart(sheet, index, swapping));
        const swapped = withOwnGames(course, own, swapping, index);
        if (swapped !== sheet) course.sheets.set(lesson, swapped);
        return swapped !== sheet;
    });
    if (touched.length > 0) return { touched: [...new Set(touched.map(({ lesson }) => lesson))], says: sentence(course, line.change as SwapThing) };
    return { idle: `${quoted(course.part(mention))} does not use ${thingInWords(course, (line.change as SwapThing).thing.name)}` };
}

function inPart(sheet: LessonSheet, index: number, swapping: Swapping): LessonSheet {
    const part = sheet.parts[index]!;
    const swapped = swapping.block(part);
    const replaced = (own: PartSheet, needs = sheet.needs): LessonSheet => ({ ...sheet, needs, parts: sheet.parts.map((other, i) => (i === index ? own : other)) });
    const spokenOf = [...swapping.names].some(name => namesIn(part.steps).has(name));
    const ofLesson = sheet.needs.filter(need => needsAny(need, swapping.names));
    if (!spokenOf || ofLesson.length === 0 || part.needs.some(need => needsAny(need, swapping.names))) return swapped === part ? sheet : replaced(swapped);
    const elsewhere = namesIn([...sheet.steps, ...sheet.parts.flatMap((other, i) => (i === index ? [] : other.steps))]);
    if (![...swapping.names].some(name => elsewhere.has(name))) return replaced(swapped, changed(sheet.needs, need => swapping.need(need)));
    const { uri } = part;
    const brought = ofLesson.map(need => ({ ...swapping.need(need), ...(uri !== undefined && need.uri === undefined && { uri: sheet.uri }) }));
    return replaced({ ...swapped, needs: [...swapped.needs, ...brought] });
}

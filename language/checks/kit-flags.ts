import type { FileSheet, LessonSheet, Need } from '../sheets/sheet.js';
import type { Check, Fix } from './check.js';
import { replace } from './fixes.js';
import type { ProgrammeView } from './programme-view.js';

const inventory = 'material pan-balance\n  reusable\n\nmaterial scarf\n  reusable\n\nkit field-kit\n  holds\n    pan-balance 1\n\ncourse measuring\n  uses field-kit 1 per family\n  unit weighing\n    weigh-1\n\n';

export const kitFlagWrong: Check = {
    code: 'kit-flag-wrong', severity: 'warning', title: 'An in-kit flag that the kits contradict',
    explains: 'The line says `in kit` or `not in kit`, and the kits that the course uses say otherwise. Families pack by these words. Correct the flag, or put the thing into the kit.',
    wrong: `${inventory}lesson weigh-1\n  materials\n    pan-balance 1 per pair in kit\n    scarf 1 per pair in kit`,
    right: `${inventory}lesson weigh-1\n  materials\n    pan-balance 1 per pair in kit\n    scarf 1 per pair not in kit`,
    *find(file, view) {
        for (const { need, kits: known } of flaggableNeeds(file, view)) {
            if (need.inKit === undefined || !need.flagAt) continue;
            const claims = kitsSay(need, known, view);
            if (claims.length === 0 || claims.some(({ held }) => held === 'perhaps' || held === need.inKit)) continue;
            const { course, kits } = claims[0]!;
            const name = need.options[0]!.thing.name;
            const flag = need.inKit ? 'not in kit' : 'in kit';
            yield {
                message: need.inKit ? `'${name}' is not in ${kits}, which the course '${course}' uses: write 'not in kit'.` : `'${name}' is in ${kits}, which the course '${course}' uses: write 'in kit'.`,
                at: need.flagAt, fixes: [{ title: `Change to '${flag}'`, edits: [replace(file.uri, need.flagAt, flag)], preferred: true }]
            };
        }
    }
};

export const kitFlagMissing: Check = {
    code: 'kit-flag-missing', severity: 'information', missing: true, title: 'A need that does not say whether it is in the kit',
    explains: 'The kits of the course decide whether this material is in them, but the line does not say so. With `in kit` or `not in kit` at the end of the line an adult sees at a glance what still has to be found. Prints and books need no such word.',
    wrong: `${inventory}lesson weigh-1\n  materials\n    pan-balance 1 per pair\n    scarf 1 per pair not in kit`,
    right: `${inventory}lesson weigh-1\n  materials\n    pan-balance 1 per pair in kit\n    scarf 1 per pair not in kit`,
    *find(file, view) {
        for (const { need, kits: known } of flaggableNeeds(file, view)) {
            const name = need.options[0]!.thing.name;
            if (need.inKit !== undefined || !view.programme.materials.has(name)) continue;
            const claims = kitsSay(need, known, view);
            const held = claims[0]?.held;
            if (held === undefined || held === 'perhaps' || claims.some(claim => claim.held !== held)) continue;
            const flag = flagWords(held);
            yield {
                message: `'${name}' is ${held ? '' : 'not '}in ${claims[0]!.kits}: say so with '${flag}'.`, at: need.options[0]!.thing.at,
                fixes: [addFlag(need, flag, file.uri)]
            };
        }
    }
};

interface Claim {
    course: string;
    kits: string;
    /** 'perhaps' where one choice of `a or b` is in the kits and another is not, or where lines could not be read. */
    held: boolean | 'perhaps';
}

/** What one course's kits hold. */
interface Kits {
    course: string;
    kits: string;
    holds: ReadonlySet<string>;
}

/** What a need of a thing in a lesson has to say of the kit; undefined where no kit decides, or kits differ. */
export function kitFlagFor(thing: string, lesson: LessonSheet, view: ProgrammeView): string | undefined {
    const held = new Set(kitsFor([lesson], view).map(({ holds }) => holds.has(thing)));
    return held.size === 1 ? flagWords(held.has(true)) : undefined;
}

const flagWords = (held: boolean): string => (held ? 'in kit' : 'not in kit');

/** Needs with the kits of the courses that they are for: a game's are for every lesson that plays it. */
function* flaggableNeeds(file: FileSheet, view: ProgrammeView): Iterable<{ need: Need; kits: readonly Kits[] }> {
    for (const lesson of file.lessons) yield* needsWithKits(view.factsOf(lesson).needs, [lesson], view);
    for (const game of file.games) yield* needsWithKits(game.needs, view.playedIn.get(game.name) ?? [], view);
}

function* needsWithKits(needs: readonly Need[], lessons: readonly LessonSheet[], view: ProgrammeView): Iterable<{ need: Need; kits: readonly Kits[] }> {
    const kits = kitsFor(lessons, view);
    if (kits.length === 0) return;
    for (const need of needs) if (need.options.length > 0) yield { need, kits };
}

/** The kits of the courses that teach some lessons. */
function kitsFor(lessons: readonly LessonSheet[], view: ProgrammeView): Kits[] {
    const courses = new Set(lessons.flatMap(lesson => view.placesOf(lesson).map(({ course }) => course)));
    const kits: Kits[] = [];
    for (const course of courses) {
        const holds = view.factsOfCourse(course).kitHolds;
        if (holds) kits.push({ course: course.name, kits: [...new Set(course.uses.map(({ kit }) => `'${kit.name}'`))].join(' or '), holds });
    }
    return kits;
}

/** What the kits of each course say about a need. */
function kitsSay(need: Need, kits: readonly Kits[], view: ProgrammeView): Claim[] {
    const names = need.options.map(({ thing }) => thing.name);
    return kits.map(({ course, kits: titles, holds }) => {
        const held = names.filter(name => holds.has(name)).length;
        const unsure = held < names.length && names.some(name => !holds.has(name) && view.isDoubtful('thing', name));
        return { course, kits: titles, held: unsure || (held > 0 && held < names.length) ? 'perhaps' : held > 0 };
    });
}

/** The flag stands at the end of the line, before `optional`. */
function addFlag(need: Need, flag: string, uri: string): Fix {
    const { end } = need.at;
    const at = need.optional ? { line: end.line, character: end.character - 'optional'.length } : end;
    return { title: `Add '${flag}'`, edits: [replace(uri, { start: at, end: at }, need.optional ? `${flag} ` : ` ${flag}`)], preferred: true };
}

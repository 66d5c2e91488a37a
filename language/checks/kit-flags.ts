import type { FileSheet, LessonSheet, Need } from '../sheets/sheet.js';
import type { Check, Fix } from './check.js';
import { replace } from './fixes.js';
import type { ProgrammeView } from './programme-view.js';

const inventory = 'material pan-balance\n  reusable\n\nmaterial scarf\n  reusable\n\nkit field-kit\n  holds\n    pan-balance 1\n\ncourse measuring\n  uses field-kit 1 per family\n  unit weighing\n    weigh-1\n\n';

export const kitFlagWrong: Check = {
    code: 'kit-flag-wrong', severity: 'warning', reach: 'programme', title: 'An in-kit flag that the kits contradict',
    explains: 'The line says `in kit` or `not in kit`, and the kits that the course uses say otherwise. Families pack by these words. Correct the flag, or put the thing into the kit.',
    wrong: `${inventory}lesson weigh-1\n  materials\n    pan-balance 1 per pair in kit\n    scarf 1 per pair in kit`,
    right: `${inventory}lesson weigh-1\n  materials\n    pan-balance 1 per pair in kit\n    scarf 1 per pair not in kit`,
    *find(file, view) {
        for (const { need, lessons } of flaggableNeeds(file, view)) {
            if (need.inKit === undefined || !need.flagAt) continue;
            const claims = kitsSay(need, lessons, view);
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
    code: 'kit-flag-missing', severity: 'information', reach: 'programme', missing: true, title: 'A need that does not say whether it is in the kit',
    explains: 'The kits of the course decide whether this material is in them, but the line does not say so. With `in kit` or `not in kit` at the end of the line an adult sees at a glance what still has to be found. Prints and books need no such word.',
    wrong: `${inventory}lesson weigh-1\n  materials\n    pan-balance 1 per pair\n    scarf 1 per pair not in kit`,
    right: `${inventory}lesson weigh-1\n  materials\n    pan-balance 1 per pair in kit\n    scarf 1 per pair not in kit`,
    *find(file, view) {
        for (const { need, lessons } of flaggableNeeds(file, view)) {
            const name = need.options[0]!.thing.name;
            if (need.inKit !== undefined || !view.programme.materials.has(name)) continue;
            const claims = kitsSay(need, lessons, view);
            const held = claims[0]?.held;
            if (held === undefined || held === 'perhaps' || claims.some(claim => claim.held !== held)) continue;
            const flag = held ? 'in kit' : 'not in kit';
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

/** Needs whose first thing is known, with the lessons they are for: a game's are for every lesson that plays it. */
function* flaggableNeeds(file: FileSheet, view: ProgrammeView): Iterable<{ need: Need; lessons: readonly LessonSheet[] }> {
    for (const lesson of file.lessons) {
        for (const need of view.factsOf(lesson).needs) if (need.options.length > 0) yield { need, lessons: [lesson] };
    }
    for (const game of file.games) {
        for (const need of game.needs) if (need.options.length > 0) yield { need, lessons: view.playedIn.get(game.name) ?? [] };
    }
}

/** What the kits of each course that teaches one of the lessons say about a need. */
function kitsSay(need: Need, lessons: readonly LessonSheet[], view: ProgrammeView): Claim[] {
    const courses = new Set(lessons.flatMap(lesson => view.placesOf(lesson).map(({ course }) => course)));
    const claims: Claim[] = [];
    for (const course of courses) {
        const { kitHolds } = view.factsOfCourse(course);
        if (!kitHolds) continue;
        const names = need.options.map(({ thing }) => thing.name);
        const held = names.filter(name => kitHolds.has(name)).length;
        const unsure = names.some(name => !kitHolds.has(name) && view.isDoubtful('thing', name));
        const kits = course.uses.map(({ kit }) => `'${kit.name}'`).join(' or ');
        claims.push({ course: course.name, kits, held: unsure || (held > 0 && held < names.length) ? 'perhaps' : held > 0 });
    }
    return claims;
}

/** The flag stands at the end of the line, before `optional`. */
function addFlag(need: Need, flag: string, uri: string): Fix {
    const { end } = need.at;
    const at = need.optional ? { line: end.line, character: end.character - 'optional'.length } : end;
    return { title: `Add '${flag}'`, edits: [replace(uri, { start: at, end: at }, need.optional ? `${flag} ` : ` ${flag}`)], preferred: true };
}

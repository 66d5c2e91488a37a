import type { Fix } from '@haversack/language/checks/check';
import { removeLinesOf } from '@haversack/language/checks/fixes';
import type { Programme } from '@haversack/language/sheets/programme';
import type { WrittenChange } from '@haversack/language/sheets/adaptation-sheet';
import type { AdaptationSheet } from '@haversack/language/sheets/sheet';
import { brokenBy, keysOfBroken, type ChangeMade } from '../planning/ledger/consequences.js';
import type { ReadLesson } from '../planning/ledger/course-reading.js';
import { allLeftOut } from '../planning/nothing-taught.js';
import { listing } from '@haversack/language/facts/wording';
import type { AdaptedCourse, AdaptedCourses, Loss } from './adapted-courses.js';
import { addObjective, addWord, moveLesson, skipLesson, writeAfter, type ChangeToWrite } from './change-lines.js';

/** A loss that one change brings about. */
type Mendable = Loss & { readonly made: ChangeMade };

interface Candidate {
    title: string;
    changes: ChangeToWrite[];
}

/** More lessons than these are not moved or left out by one mend. */
const mostLessons = 3;

/** A mend that could stand in several lessons is tried in so many. */
const mostTried = 6;

/** Mends of a loss, each tried before it is offered: the loss is gone with it, nothing else is lost, and each line does something. */
export function fixesFor(loss: Mendable, programme: Programme, adapted: AdaptedCourses): Fix[] {
    const trial = new Trial(loss, programme, adapted);
    const { made: { adaptation, applied: { change } } } = loss;
    const mends = ({ changes }: Candidate): boolean => trial.mends(changes);
    const mendsAll = ({ changes }: Candidate): boolean => trial.mends(changes, true);
    const chosen = candidatesFor(loss).flatMap(places => (places.length > 1 ? places.find(mendsAll) : undefined) ?? places.find(mends) ?? []);
    const fixes = chosen.map((candidate): Fix => ({ title: candidate.title, edits: [writeAfter({ change, adaptation }, candidate.changes.flatMap(({ lines }) => lines))] }));
    if (trial.mendsWithout()) fixes.push({ title: 'Remove this change', edits: [removeLinesOf(adaptation.uri, change.at)] });
    const [first, ...others] = fixes;
    return first ? [{ ...first, preferred: true }, ...others] : [];
}

/** Each with those that may stand in its place: the first that mends is offered. */
function candidatesFor({ made, broken, of }: Mendable): Candidate[][] {
    const { about, lessons, later, users = [] } = broken;
    const { change } = made.applied;
    const forWhom = made.adaptation.forClass ? 'for this class' : 'in this adaptation';
    const name = (title: string, ...does: ('introduces' | 'checks')[]) => (lesson: ReadLesson): Candidate =>
        ({ title: `${title} '${about}' in '${lesson.name}' ${forWhom}`, changes: [addObjective(lesson.origins[0] ?? lesson.name, does, about)] });
    const introduce = name('Introduce', 'introduces');
    const introduceAndCheck = name('Introduce and check', 'introduces', 'checks');
    const check = name('Check', 'checks');
    const teach = (lesson: ReadLesson): Candidate =>
        ({ title: `Teach '${about}' in '${lesson.name}' ${forWhom}`, changes: [addWord(lesson.origins[0] ?? lesson.name, about)] });
    switch (broken.kind) {
        case 'no-longer-introduced': return [whereToIntroduce(about, users, of).map(introduce), ...each(leaveOut(users, of))];
        case 'no-longer-checked': return each(whereToCheck(about, of).map(check));
        case 'practised-too-early': return each([...movesTogether(lessons, later, change), ...lessons.slice(0, 1).map(introduce)]);
        case 'prerequisite-left-out': return each(leaveOut(lessons, of));
        case 'prerequisite-later': return each(movesTogether(lessons, later, change));
        case 'word-not-taught': return each([...lessons.slice(0, 1).map(teach), ...(later ? movesTogether(lessons, later, change) : []), ...leaveOut(lessons, of)]);
        case 'builds-on-later': return later ? each([...movesTogether(lessons, later, change), ...lessons.slice(0, 1).map(introduce)])
            : [whereToIntroduce(about, lessons, of).map(of.changes.adapted.checked.has(about) ? introduce : introduceAndCheck)];
    }
}

function each(candidates: readonly Candidate[]): Candidate[][] {
    return candidates.map(candidate => [candidate]);
}

/** The lessons that ask for it, and those that introduce what builds on it, the first of them first. */
function whereToIntroduce(objective: string, asking: readonly ReadLesson[], { changes: { adapted } }: AdaptedCourse): ReadLesson[] {
    const building = [...adapted.introduced].flatMap(([other, lesson]) => (adapted.programme.objectives.get(other)?.buildsOn.some(({ name }) => name === objective) ? [lesson] : []));
    const uses = [...adapted.practised.get(objective) ?? [], ...adapted.checked.get(objective) ?? []];
    return [...new Set([...asking, ...building, ...uses])].sort((a, b) => a.index - b.index).slice(0, mostTried);
}

/** The last lesson that practises it, and the one that introduces it. */
function whereToCheck(objective: string, { changes: { adapted } }: AdaptedCourse): ReadLesson[] {
    const practised = adapted.practised.get(objective)?.at(-1);
    const introduced = adapted.introduced.get(objective);
    return [...new Set([practised, introduced])].filter(lesson => lesson !== undefined);
}

/** Lessons that ask for what comes later now go behind it, or it goes before them; what the change itself has moved stays there. */
function movesTogether(lessons: readonly ReadLesson[], later: ReadLesson | undefined, change: WrittenChange): Candidate[] {
    if (!later || lessons.length === 0 || lessons.length > mostLessons) return [];
    const moved = change.does === 'move lesson' ? change.lesson.name : undefined;
    const too = moved === undefined ? '' : ' too';
    const own = (lesson: ReadLesson): string => lesson.origins[0] ?? lesson.name;
    const behind: Candidate = {
        title: `Move ${listed(lessons.map(own))}${moved === undefined ? ` after '${own(later)}'` : too}`,
        changes: lessons.map((lesson, i) => moveLesson(own(lesson), 'after', own(lessons[i - 1] ?? later)))
    };
    const before: Candidate = {
        title: `Move '${own(later)}'${moved === undefined ? ` before '${own(lessons[0]!)}'` : too}`, changes: [moveLesson(own(later), 'before', own(lessons[0]!))]
    };
    return [...(lessons.some(lesson => own(lesson) === moved) ? [] : [behind]), ...(own(later) === moved ? [] : [before])];
}

/** Lessons of the course alone: what an adaptation has brought in goes with its own line. */
function leaveOut(lessons: readonly ReadLesson[], { changes: { base } }: AdaptedCourse): Candidate[] {
    const names = [...new Set(lessons.flatMap(({ origins }) => origins))];
    if (names.length === 0 || names.length > mostLessons || !names.every(name => base.lastOf.has(name))) return [];
    return [{ title: `Leave out ${listed(names)} too`, changes: names.map(skipLesson) }];
}

function listed(names: readonly string[]): string {
    return listing(names.map(name => `'${name}'`));
}

/** Makes the changes of a course once more with a mend, to see what comes of it. */
class Trial {
    private readonly keys: readonly string[];
    private readonly known: ReadonlySet<string>;

    constructor(private readonly loss: Mendable, private readonly programme: Programme, private readonly adapted: AdaptedCourses) {
        this.keys = keysOfBroken(loss.broken);
        this.known = new Set(loss.of.changes.made.flatMap(({ broken }) => broken).flatMap(keysOfBroken));
    }

    /** `wholly` where nothing else that is lost has to do with the same. */
    mends(fresh: readonly ChangeToWrite[], wholly = false): boolean {
        const { applied: { change } } = this.loss.made;
        return this.holds(fresh.map(one => one.change), changes => changes.flatMap(one => (one === change ? [one, ...fresh.map(({ change: added }) => added)] : [one])), wholly);
    }

    /** Whether the loss goes with the change. */
    mendsWithout(): boolean {
        return this.holds([], changes => changes.filter(one => one !== this.loss.made.applied.change));
    }

    private holds(fresh: readonly unknown[], rewrite: (changes: AdaptationSheet['changes']) => AdaptationSheet['changes'], wholly = false): boolean {
        const { of: { course, adaptations, changes: { stages: { last: now } } }, made } = this.loss;
        if (!this.adapted.mayTry(this.loss.of)) return false;
        const tried = adaptations.map(adaptation => (adaptation === made.adaptation ? { ...adaptation, changes: rewrite(adaptation.changes) } : adaptation));
        const { after, broken } = brokenBy(this.programme, course, tried, this.adapted.memo);
        const keys = broken.filter(({ gone }) => !gone).flatMap(keysOfBroken);
        const wasIdle = new Set(now.changes.filter(({ idle }) => idle !== undefined).map(({ change }) => change));
        const isIdle = after.changes.some(({ change, idle }) => idle !== undefined && (fresh.includes(change) || !wasIdle.has(change)));
        return !isIdle && allLeftOut(after) === undefined && !this.keys.some(key => keys.includes(key)) && keys.every(key => this.known.has(key))
            && !(wholly && broken.some(({ gone, about }) => !gone && about === this.loss.broken.about));
    }
}

import type { Fix } from '@haversack/language/checks/check';
import { adaptationMisses } from '@haversack/language/checks/adaptations';
import { removeLinesOf, replace } from '@haversack/language/checks/fixes';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import { unknownName } from '@haversack/language/checks/unknown-name';
import type { AdaptationSheet, WrittenChange } from '@haversack/language/sheets/adaptation-sheet';
import type { CourseSheet } from '@haversack/language/sheets/sheet';
import type { ReappliedChange } from '../planning/edition-figures.js';
import { reapply } from '../planning/editions/reapply.js';
import { quoted } from '@haversack/language/facts/wording';
import type { PlanCheck, PlanFinding } from './plan-check.js';
import type { Term } from './term.js';

const programme = (edition: string, lesson: string, line: string): string => `objective compare-mass "Compare two masses"\n\nlesson ${lesson}\n  objectives\n    introduces compare-mass\n    checks compare-mass\n  activity two-bags ${edition === '1' ? 15 : 20} min\n    do: Lift one bag, then the other.\n\ncourse measuring edition ${edition}\n  unit weighing\n    ${lesson}\n\nadaptation shorter of measuring edition 1\n  ${line}\n`;
const retime = (after = ''): string => `retime activity weigh-1.two-bags to 10 min${after}`;
const lesson = (name: string, what: string): string => `lesson ${name}\n  activity ${name}-bags 15 min\n    do: Weigh ${what}.\n\n`;
const visit = (edition: string, order: readonly string[], against: string): string => `${lesson('weigh-1', 'bags of sand')}${lesson('weigh-2', 'shells and stones')}${lesson('weigh-3', 'two loaves')}${lesson('market', 'apples at the market')}course measuring edition ${edition}\n  unit weighing\n    ${order.join('\n    ')}\n\nadaptation market-day of measuring edition ${against}\n  insert market after weigh-1\n`;

export const courseEditionChanged: PlanCheck = {
    code: 'course-edition-changed', severity: 'information', title: 'An adaptation of an earlier edition', on: '2026-09-01',
    explains: 'The course has a new edition since this adaptation was written, so what it changes may have changed too. Where the history of the programme is at hand, each change that meets something new is told by itself; this is said when there is none of those, or no history to look in. `haversack compare` shows what changed for a teacher and what it means for each change. When you have looked, write the new edition here.',
    wrong: 'lesson weigh-1\n  activity two-bags 15 min\n    do: Lift one bag, then the other.\n\ncourse measuring edition 2\n  unit weighing\n    weigh-1\n\nadaptation shorter of measuring edition 1\n  retime activity weigh-1.two-bags to 10 min\n',
    right: 'lesson weigh-1\n  activity two-bags 15 min\n    do: Lift one bag, then the other.\n\ncourse measuring edition 2\n  unit weighing\n    weigh-1\n\nadaptation shorter of measuring edition 2\n  retime activity weigh-1.two-bags to 10 min\n',
    *find(view, term) {
        for (const { adaptation, course, changes } of behind(view, term)) {
            if (changes?.some(({ re }) => re.outcome !== 'clean')) continue;
            const says = changes === undefined
                ? `The course ${quoted(course.title)} is now edition ${course.edition}, and these changes were written against edition ${adaptation.edition}. Look at them again: \`haversack compare\` with a copy of edition ${adaptation.edition} tells what changed.`
                : `The course ${quoted(course.title)} is now edition ${course.edition}, and these changes were written against edition ${adaptation.edition}. All of them still apply, or somebody has looked at them again.`;
            yield {
                uri: adaptation.uri, at: adaptation.editionAt!, message: says,
                related: [{ message: `The course '${course.name}'`, place: { uri: course.uri, range: course.at } }],
                fixes: [{ title: `Written against edition ${course.edition} now`, edits: [replace(adaptation.uri, adaptation.editionAt!, course.edition!)], preferred: true }]
            };
        }
    }
};

export const changeInConflict: PlanCheck = {
    code: 'change-in-conflict', severity: 'warning', title: 'A change to what has itself changed', on: '2026-09-01',
    explains: 'An adaptation changes something that the new edition of its course has changed as well: the activity that it shortens has another length now, the lesson that it leaves out teaches something else, what it puts first is gone. Only you can say which of the two should hold. Keep the change, and the line notes the edition for which you have looked at it; or take the new edition’s way, and the line goes.',
    wrong: programme('2', 'weigh-1', retime()), right: programme('2', 'weigh-1', retime(' as of edition 2')).replace('edition 1\n', 'edition 2\n'), former: programme('1', 'weigh-1', retime()),
    *find(view, term) {
        for (const { adaptation, course, changes } of behind(view, term)) {
            for (const { change, re } of changes ?? []) if (re.outcome === 'conflict') yield conflict(adaptation, course, change, re);
        }
    }
};

export const changeMoved: PlanCheck = {
    code: 'change-moved', severity: 'information', title: 'A change to what has another name or place now', on: '2026-09-01',
    explains: 'The new edition of the course has given another name or another place to what this line of an adaptation is about, and left it as it is otherwise. The change still makes sense. Names that have changed can be written anew with one step; where only a place has changed, look whether the line still does what you want.',
    wrong: visit('2', ['weigh-2', 'weigh-3', 'weigh-1'], '1'), right: visit('2', ['weigh-2', 'weigh-3', 'weigh-1'], '2'), former: visit('1', ['weigh-1', 'weigh-2', 'weigh-3'], '1'),
    *find(view, term) {
        for (const { adaptation, course, changes } of behind(view, term)) {
            for (const { change, re } of changes ?? []) if (re.outcome === 'moved') yield moved(adaptation, course, change, re);
        }
    }
};

export const changeNotNeeded: PlanCheck = {
    code: 'change-not-needed', severity: 'information', title: 'A change that the new edition makes itself', on: '2026-09-01',
    explains: 'The new edition of the course does what this line of an adaptation asks for: it leaves out what the line leaves out, teaches in that order, takes that long. The line is no longer needed. Where children of the former edition are still taught by it, keep the line with that edition.',
    wrong: visit('2', ['weigh-1', 'market', 'weigh-2', 'weigh-3'], '1'), right: visit('2', ['weigh-1', 'market', 'weigh-2', 'weigh-3'], '2').replace('  insert market after weigh-1\n', ''), former: visit('1', ['weigh-1', 'weigh-2', 'weigh-3'], '1'),
    *find(view, term) {
        for (const { adaptation, course, changes } of behind(view, term)) {
            for (const { change, re } of changes ?? []) if (re.outcome === 'done') yield notNeeded(adaptation, course, change, re);
        }
    }
};

interface Behind {
    adaptation: AdaptationSheet;
    course: CourseSheet;
    /** Undefined where the former edition is not known. */
    changes?: readonly { change: WrittenChange; re: ReappliedChange }[];
}

/** Adaptations whose course has another edition now than they were written against. */
function behind(view: ProgrammeView, { former }: Term): Behind[] {
    const { programme: now } = view;
    return [...now.adaptations.values()].flatMap((adaptation): Behind[] => {
        const course = adaptation.of && now.courses.get(adaptation.of.name);
        if (!course?.edition || view.isBroken(course) || view.isBroken(adaptation) || !adaptation.edition || !adaptation.editionAt || adaptation.edition === course.edition || adaptation.changes.length === 0) return [];
        const before = former?.of(course, adaptation.edition);
        const told = before && reapply(before.programme, now, { course: course.name, memo: before.memo }).find(({ name, side }) => name === adaptation.name && side === 'new');
        return [{ adaptation, course, changes: told && adaptation.changes.flatMap((change, index) => (told.changes[index] ? [{ change, re: told.changes[index] }] : [])) }];
    });
}

function conflict(adaptation: AdaptationSheet, course: CourseSheet, change: WrittenChange, re: ReappliedChange): PlanFinding {
    return {
        uri: adaptation.uri, at: change.head,
        message: `This was written against edition ${adaptation.edition}. The adaptation: ${re.wants}. Edition ${course.edition}: ${re.newEdition ?? ''}. Keep the change, or take the new edition’s way?`,
        related: related(course, re), instead: instead(change, re),
        fixes: [
            { ...keep(adaptation, course, change, re), title: 'Keep this change' },
            { title: 'Take the new edition’s', edits: [removeLinesOf(adaptation.uri, change.at)] }
        ]
    };
}

function notNeeded(adaptation: AdaptationSheet, course: CourseSheet, change: WrittenChange, re: ReappliedChange): PlanFinding {
    return {
        uri: adaptation.uri, at: change.head, message: `Edition ${course.edition} of the course does this itself: ${re.newEdition ?? ''}. This line is no longer needed.`,
        related: related(course, re), instead: instead(change, re),
        fixes: [{ title: 'Remove this change', edits: [removeLinesOf(adaptation.uri, change.at)], preferred: true }]
    };
}

/** A change whose names the new edition does not have is not made until they are written anew. */
function moved(adaptation: AdaptationSheet, course: CourseSheet, change: WrittenChange, re: ReappliedChange): PlanFinding {
    const write = re.rewritten === undefined ? 'Does the line still do what you want?' : `Write: ${re.rewritten}`;
    return {
        uri: adaptation.uri, at: change.head, severity: re.former.length > 0 ? 'warning' : undefined, instead: instead(change, re), message: `In edition ${course.edition} of the course, ${re.newEdition ?? 'something that is named here has another name'}. ${write}`,
        related: related(course, re),
        fixes: [{ ...keep(adaptation, course, change, re), title: re.renames.length > 0 ? 'Write the new names' : 'Keep this change', preferred: true }]
    };
}

/** The line with the names of the new edition, and with the edition for which somebody has looked at it. */
function keep({ uri }: AdaptationSheet, { edition = '' }: CourseSheet, { asOf, head, wordsEnd = head.end }: WrittenChange, { renames }: ReappliedChange): Omit<Fix, 'title'> {
    const seen = asOf ? replace(uri, asOf.at, edition) : replace(uri, { start: wordsEnd, end: wordsEnd }, ` as of edition ${edition}`);
    return { edits: [...renames.map(({ at, text }) => replace(uri, at, text)), seen] };
}

/** What else would be said of the line for the same cause: names that are gone, and that it changes nothing. */
function instead({ head }: WrittenChange, { former }: ReappliedChange): PlanFinding['instead'] {
    return [...former.map(at => ({ code: unknownName.code, at })), { code: adaptationMisses.code, at: head }];
}

function related({ edition }: CourseSheet, { new: place }: ReappliedChange): PlanFinding['related'] {
    return place && [{ message: `In edition ${edition}`, place }];
}

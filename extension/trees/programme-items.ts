import * as vscode from 'vscode';
import type { AdaptationNode, ClassNode, CourseNode, LessonNode, ProblemCounts } from '@haversack/server/protocol/programme';
import { placeOf, type ProgrammeRow } from './programme-nodes.js';
import { openCommand } from './source-place.js';

/** In a longer course the units stand closed at first. */
const mostLessonsOpen = 15;

interface Face {
    label: string;
    /** What stands beside the label, and what a screen reader says after it. */
    facts: string[];
    icon?: vscode.ThemeIcon;
    /** What kind of thing it is, for a screen reader. */
    called: string;
    more?: string[];
    open?: boolean;
    context?: string;
}

/** A row as the editor shows it: words beside every icon, and all of it for a screen reader. */
export function itemOf(row: ProgrammeRow): vscode.TreeItem {
    const { label, facts, icon, called, more = [], open = false, context } = faceOf(row);
    const { None, Expanded, Collapsed } = vscode.TreeItemCollapsibleState;
    const item = new vscode.TreeItem(label, row.children.length === 0 ? None : open ? Expanded : Collapsed);
    item.id = row.id;
    item.description = facts.join(' · ');
    item.iconPath = icon;
    item.tooltip = [label, facts.join(' · '), ...more].filter(line => line !== '').join('\n');
    item.accessibilityInformation = { label: [called, label, ...facts].filter(word => word !== '').join(', ') };
    item.contextValue = context;
    const place = placeOf(row);
    if (place) item.command = openCommand(place);
    return item;
}

function faceOf(row: ProgrammeRow): Face {
    const { is } = row;
    switch (is.kind) {
        case 'programme': return { label: is.programme.title || vscode.l10n.t('Files outside the folders'), facts: [], called: vscode.l10n.t('Programme'), icon: new vscode.ThemeIcon('root-folder'), open: true };
        case 'course': return courseFace(is.course);
        case 'unit': return {
            label: is.unit.title, facts: [...problemFacts(is.unit.problems), counted(is.unit.lessons.length)], called: vscode.l10n.t('Unit'), icon: problemIcon(is.unit.problems) ?? new vscode.ThemeIcon('layers'),
            open: isShort(row.parent), context: 'unit'
        };
        case 'lesson': return lessonFace(is.lesson);
        case 'other lessons': return { label: vscode.l10n.t('Lessons in no course'), facts: [String(is.count)], called: '', icon: new vscode.ThemeIcon('inbox'), open: is.count <= mostLessonsOpen };
        case 'classes': return { label: vscode.l10n.t('Classes'), facts: [String(is.count)], called: '', icon: new vscode.ThemeIcon('organization'), open: is.count <= mostLessonsOpen };
        case 'adaptations': return { label: vscode.l10n.t('Adaptations'), facts: [String(is.count)], called: '', icon: new vscode.ThemeIcon('settings') };
        case 'class': return classFace(is.group);
        case 'adaptation': return adaptationFace(is.adaptation);
        case 'change': return {
            label: is.says, facts: is.idle === undefined ? [] : [vscode.l10n.t('changes nothing')], called: vscode.l10n.t('Change'), more: is.idle === undefined ? [] : [is.idle],
            icon: new vscode.ThemeIcon(is.idle === undefined ? 'edit' : 'circle-slash')
        };
    }
}

function courseFace({ title, edition, class: group, problems, units }: CourseNode): Face {
    const lessons = units.reduce((sum, unit) => sum + unit.lessons.length, 0);
    return {
        label: title, called: vscode.l10n.t('Course'), icon: problemIcon(problems) ?? new vscode.ThemeIcon('mortar-board'), open: true, context: 'course',
        facts: [...problemFacts(problems), group ? group.title : vscode.l10n.t('no class'), counted(lessons)],
        more: [edition === undefined ? '' : vscode.l10n.t('Edition {0}', edition), group ? vscode.l10n.t('The days are those of “{0}”.', group.title) : vscode.l10n.t('No class is taught this course, so its lessons have no days.')]
    };
}

function lessonFace(lesson: LessonNode): Face {
    const { title, name, problems, draft, minutes, meetings, why, changes } = lesson;
    const marks = [...(draft ? [vscode.l10n.t('draft')] : []), ...(changes.length > 0 && lesson.standing !== 'left-out' ? [vscode.l10n.t('changed')] : [])];
    const days = meetings.map(({ week, label }) => vscode.l10n.t('week {0}, {1}', week, label));
    return {
        label: title, called: vscode.l10n.t('Lesson'), facts: [...problemFacts(problems), ...standingFacts(lesson), ...marks], icon: problemIcon(problems) ?? lessonIcon(lesson),
        more: [name, minutes > 0 ? vscode.l10n.t('{0} min', minutes) : '', days.length > 1 ? vscode.l10n.t('Taught in {0}', days.join('; ')) : '', why ?? '', ...changes],
        context: ['lesson', ...(lesson.at ? ['written'] : []), ...(lesson.line ? ['listed'] : [])].join(' ')
    };
}

function standingFacts({ standing, meetings: [first], line, at }: LessonNode): string[] {
    switch (standing) {
        case 'taught': return first ? [vscode.l10n.t('week {0}', first.week), first.label] : [];
        case 'no-day': return [vscode.l10n.t('no day left')];
        case 'left-out': return [vscode.l10n.t('left out')];
        case 'unknown': return [vscode.l10n.t('not written yet')];
        case 'not-planned': return line && at ? [vscode.l10n.t('not planned')] : [];
    }
}

function lessonIcon({ standing, draft, changes }: LessonNode): vscode.ThemeIcon {
    if (standing === 'left-out') return new vscode.ThemeIcon('circle-slash');
    if (standing === 'no-day') return new vscode.ThemeIcon('watch');
    if (standing === 'unknown') return new vscode.ThemeIcon('question');
    return new vscode.ThemeIcon(draft ? 'edit' : changes.length > 0 ? 'diff-modified' : 'book');
}

function classFace({ title, learners, course, problems }: ClassNode): Face {
    return {
        label: title, called: vscode.l10n.t('Class'), icon: problemIcon(problems) ?? new vscode.ThemeIcon('organization'), context: 'class',
        facts: [...problemFacts(problems), ...(learners === undefined ? [] : [learners === 1 ? vscode.l10n.t('1 learner') : vscode.l10n.t('{0} learners', learners)]), ...(course === undefined ? [] : [course])]
    };
}

function adaptationFace({ title, course, forClass, changes, problems }: AdaptationNode): Face {
    const many = changes.length === 1 ? vscode.l10n.t('1 change') : vscode.l10n.t('{0} changes', changes.length);
    return {
        label: title, called: vscode.l10n.t('Adaptation'), icon: problemIcon(problems) ?? new vscode.ThemeIcon('settings'), context: 'adaptation',
        facts: [...problemFacts(problems), forClass ?? vscode.l10n.t('all classes'), many], more: [course ?? '']
    };
}

function isShort(course: ProgrammeRow | undefined): boolean {
    return course?.is.kind === 'course' && course.is.course.units.reduce((sum, { lessons }) => sum + lessons.length, 0) <= mostLessonsOpen;
}

function counted(lessons: number): string {
    return lessons === 1 ? vscode.l10n.t('1 lesson') : vscode.l10n.t('{0} lessons', lessons);
}

function problemFacts({ errors, warnings }: ProblemCounts): string[] {
    return [
        ...(errors > 0 ? [errors === 1 ? vscode.l10n.t('1 error') : vscode.l10n.t('{0} errors', errors)] : []),
        ...(warnings > 0 ? [warnings === 1 ? vscode.l10n.t('1 warning') : vscode.l10n.t('{0} warnings', warnings)] : [])
    ];
}

function problemIcon({ errors, warnings }: ProblemCounts): vscode.ThemeIcon | undefined {
    if (errors > 0) return new vscode.ThemeIcon('error', new vscode.ThemeColor('list.errorForeground'));
    return warnings > 0 ? new vscode.ThemeIcon('warning', new vscode.ThemeColor('list.warningForeground')) : undefined;
}

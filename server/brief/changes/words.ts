import type { ConsequenceKind, LessonChange } from '../../planning/ledger-figures.js';

/** Every fixed phrase of the page of changes, so that wording is changed (or translated) in one place. */
export const changesWords = {
    changes: 'What is changed',
    nothing: 'Nothing is changed',
    howTo: 'To change something and leave the course’s own files as they are, write in a file that ends in .course:',
    otherWays: 'Or open a lesson and choose from its quick fixes what this class skips.',
    made: 'Change by change',
    because: 'Because',
    idle: 'No effect',
    lost: 'Lost',
    outOfOrder: 'Out of order',
    waits: 'Order',
    others: 'From several changes together',
    lessons: 'Lessons in order',
    lessonsCaption: 'Every lesson, with what happens to it; what is left out stands where it stood.',
    supplies: 'Things over the whole term',
    suppliesCaption: 'What is needed in other amounts; everything else stays as it is.',
    sameSupplies: 'The same things are needed in the same amounts.',
    money: 'Cost of what is bought',
    moneyCaption: 'Each currency by itself.',
    asInCourse: 'as the course has it',
    none: 'none'
};

export const heads = { lesson: 'Lesson', happened: 'What happens', minutes: 'Minutes', thing: 'Thing', before: 'In the course', after: 'With the changes', difference: 'Difference', currency: 'Currency' } as const;

export const happenedWords: Record<LessonChange['happened'], string> = { same: changesWords.asInCourse, 'left out': 'left out', changed: 'changed', moved: 'moved', new: 'new' };

/** Of an objective of which nothing is left. */
export const noLongerTaught = ['objective is no longer taught', 'objectives are no longer taught'] as const;

/** What is gone, or only comes at the wrong time. */
export const consequenceLabels: Record<ConsequenceKind, string> = {
    'no-longer-introduced': changesWords.lost,
    'no-longer-checked': changesWords.lost,
    'word-not-taught': changesWords.lost,
    'prerequisite-left-out': changesWords.lost,
    'practised-too-early': changesWords.outOfOrder,
    'prerequisite-later': changesWords.waits,
    'builds-on-later': changesWords.outOfOrder
};

/** What one and what several of a kind are called in the summary. */
export const consequenceCounts: Record<ConsequenceKind, readonly [one: string, several: string]> = {
    'no-longer-introduced': ['objective is no longer introduced', 'objectives are no longer introduced'],
    'no-longer-checked': ['objective is no longer checked', 'objectives are no longer checked'],
    'word-not-taught': ['word is no longer taught', 'words are no longer taught'],
    'prerequisite-left-out': ['lesson that others follow is left out', 'lessons that others follow are left out'],
    'practised-too-early': ['objective is practised too early', 'objectives are practised too early'],
    'prerequisite-later': ['lesson is put behind one that follows it', 'lessons are put behind ones that follow them'],
    'builds-on-later': ['objective comes before one that it builds on', 'objectives come before ones that they build on']
};

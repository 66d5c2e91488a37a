import type { Does } from '../../planning/coverage-figures.js';

/** Every fixed phrase of the term view, so that wording is changed (or translated) in one place. */
export const termWords = {
    term: 'The term',
    calendar: 'Calendar',
    noLessons: 'No lesson of this programme stands in a course yet',
    noMeetings: 'so there is nothing to put on days.',
    otherwise: 'Otherwise than the course has it',
    leftOut: 'What does not fit',
    leftOutWhy: 'The term has no day left for these lessons:',
    waysOut: 'Ways to make room, and what each gives up',
    givesUp: 'Gives up',
    toWrite: 'To write in the class',
    look: 'Worth a look',
    short: 'Short at a meeting',
    clashes: 'Two classes on one day',
    standIns: 'Would do instead',
    notEnough: 'not enough of it',
    orderHelps: 'An order can bring it in time',
    stock: 'What is left, week by week',
    stockReading: 'Each line shows what is in the cupboard: it falls as lessons use things up and rises when something comes.',
    runsOut: 'Runs out',
    asNeeded: 'Not in the cupboard: bought as it is needed',
    neededFrom: 'Needed from',
    uncounted: 'Neither counted nor bought',
    needed: 'needed',
    forLessons: 'For',
    notMet: 'Not met',
    lasts: 'Lasts the whole term',
    buy: 'What to buy or order this term',
    nothingToBuy: 'Nothing has to be bought or ordered this term.',
    late: 'Late',
    beforeTerm: 'Before the first week',
    costs: 'What it costs',
    wholeTerm: 'Whole term',
    perLearner: 'For each learner',
    unpriced: 'Without a price, so not in these sums',
    coverage: 'Objectives and lessons',
    noObjectives: 'No lesson of this term names an objective.',
    inNoLesson: 'In no lesson of this term.',
    gaps: 'Gaps',
    noGaps: 'No gaps: every objective is introduced, practised after that, and checked.',
    objectives: 'Objectives',
    otherObjectives: 'Other objectives',
    frameworks: 'Frameworks',
    unknownCodes: 'Codes that the framework does not have',
    branch: 'Items of this branch',
    noLessonMeets: 'no lesson meets it',
    thisWeek: 'this week',
    today: 'today',
    free: 'Free',
    catchUp: 'Catch-up',
    noMeeting: 'no meeting',
    safety: 'safety stock'
};

/** In the order in which an objective meets them. */
export const allDoes: readonly Does[] = ['introduces', 'practises', 'checks'];

export const doesWords = { introduces: 'introduced', practises: 'practised', checks: 'checked' } as const;

export const doesHeads = { introduces: 'Introduced', practises: 'Practised', checks: 'Checked' } as const;

/** Key of the calendar. */
export const dayWords = {
    off: 'no meeting',
    catchUp: 'kept free to catch up',
    waiting: 'free: nothing can be taught yet',
    today: 'today'
} as const;

/** In a cell of the calendar, beside the sign. */
export const shortWhy = { fixed: 'fixed', repeat: 'again', revisit: 'questions again' } as const;

/** Key of the stock lines. */
export const stockWords = { arrives: 'arrives: ordered already', bought: 'to be bought', runsOut: 'runs out', safety: 'safety stock, kept back', line: 'what is left' } as const;

export const heads = {
    calendar: ['Day', 'Week', 'What is taught'],
    week: 'Week'
} as const;

export const stockHeads = { gross: 'Needed', scheduled: 'Arrives', receipts: 'To buy', onHand: 'Left' } as const;

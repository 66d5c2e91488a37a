/** Every fixed phrase of the brief, so that wording is changed (or translated) in one place. */
import { deferral } from '@haversack/language/facts/cautions';
import type { PartFigures, StepWord } from '../planning/figures.js';

export const stepLabels: Record<StepWord, string> = {
    about: 'About',
    why: 'Why',
    do: 'Do',
    say: 'Say',
    ask: 'Ask',
    expect: 'Answer',
    watch: 'Watch for',
    help: 'What helps',
    instead: 'Gentler choice',
    more: 'For more',
    note: 'Note',
    'ready when': 'Ready when',
    show: 'Show'
};

export const partLabels: Record<PartFigures['kind'], string> = {
    'warm-up': 'Warm-up',
    activity: 'Activity',
    game: 'Game',
    practice: 'Practice',
    checkpoint: 'Closing questions'
};

export const objectiveLabels = { introduces: 'New', practises: 'Practised', checks: 'Checked' } as const;

/** What brought a lesson to a day, other than its turn. */
export const whyWords = { fixed: 'on a fixed day', repeat: 'again', revisit: 'closing questions again' } as const;

export const words = {
    fetch: 'What to fetch',
    nothingToFetch: 'Nothing to fetch this week.',
    shelf: 'What can wait',
    stayOnShelf: 'Can stay on the shelf this week',
    backNextWeek: 'Back next week',
    backLater: 'Back later',
    neverUsed: 'In no lesson of this plan',
    putAway: 'Can be put away for good',
    buy: 'What to buy or order',
    beforeTheWeek: 'The last day to order is before this week begins.',
    nothingToBuy: 'Nothing to buy or order for this week.',
    toBuy: 'To buy',
    cost: 'costs',
    covers: 'covers',
    leftOver: 'left over in the end',
    cautions: 'Cautions this week',
    deferral: `These are usual cautions. ${deferral}`,
    ahead: 'Next week',
    lastWeek: 'This is the last week of the plan.',
    aheadNew: 'New things to look out for',
    aheadOrder: 'Order now',
    meetings: 'Meetings',
    part: 'part',
    leftOut: 'The term has no day left for',
    withChanges: 'With the changes of',
    leavesOut: 'left out here:',
    assumed: 'Assumed',
    isNew: 'new this week',
    optional: 'optional',
    or: 'Or instead',
    needed: 'Needed',
    kept: 'Kept in',
    parts: 'Only these parts',
    howCounted: 'how it is counted',
    inWords: 'In words',
    aim: 'Aim',
    words: 'Words',
    follows: 'Follows',
    notNeeded: 'Not needed, though families may ask',
    uses: 'What the lesson uses',
    run: 'Run of the session',
    noTime: 'no time given',
    someUntimed: 'some parts without a time',
    draft: 'Draft: this lesson is not finished.',
    caution: 'Caution',
    seriousCaution: 'Serious caution',
    workedOut: 'Worked out, not declared',
    asAbove: 'as above',
    rules: 'Rules',
    players: 'Players',
    tables: 'Tables',
    practise: 'Practise',
    ifUnsure: 'If unsure',
    answers: 'Answer key',
    savePractice: 'Save sheet and key'
};

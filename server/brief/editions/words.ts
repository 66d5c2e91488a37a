/** Fixed phrases of the page that compares editions. */
export const editionWords = {
    heading: 'What changed for a teacher',
    old: 'Old edition',
    new: 'New edition',
    there: { old: 'Old', new: 'New' },
    term: 'Term of',
    contents: 'On this page',
    before: 'Before',
    after: 'Now',
    adaptations: 'Adaptations with the new edition',
    writtenAgainst: 'Written against edition',
    onlyOld: 'Only the old edition has it.',
    wants: 'The adaptation',
    newEdition: 'The new edition',
    rewrite: 'Write now',
    settled: 'Seen for this edition',
    assumed: 'Taken for granted'
} as const;

export const outcomeWords = { clean: 'As before', moved: 'Moved', done: 'No longer needed', conflict: 'Conflict' } as const;

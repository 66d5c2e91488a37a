import { lossCheck } from './losses.js';

const course = (changes: string): string =>
    `course measuring\n  unit weighing\n    weigh-1\n    weigh-2\n    weigh-3\n\nadaptation shorter of measuring\n${changes}\n\nlesson weigh-1\n  words heavier\n\nlesson weigh-2\n  activity lift 10 min\n    do: Which bag is {heavier}?\n\nlesson weigh-3`;

export const adaptedWordNotTaught = lossCheck('word-not-taught', {
    code: 'adapted-word-untaught', title: 'A change after which a word is used before it is taught',
    explains: 'The text of a lesson uses a word in braces, and with this change no lesson before it teaches the word. Move the lesson that teaches it too, leave out what uses it, or take the change back.',
    wrong: course('  move weigh-1 after weigh-3'),
    right: course('  move weigh-1 after weigh-3\n  move weigh-2 after weigh-1')
});

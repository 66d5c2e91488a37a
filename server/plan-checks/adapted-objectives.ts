import { lossCheck, usesOf } from './losses.js';

const course = (changes: string): string => `objective compare-mass\n\ncourse measuring\n  unit weighing\n    weigh-1\n    weigh-2\n    weigh-3\n\nadaptation shorter of measuring\n${changes}`;

const inThree = '\n\nlesson weigh-1\n  objectives\n    introduces compare-mass\n\nlesson weigh-2\n  objectives\n    practices compare-mass\n\nlesson weigh-3\n  objectives\n    checks compare-mass';
const inTwo = '\n\nlesson weigh-1\n  objectives\n    introduces compare-mass\n\nlesson weigh-2\n  objectives\n    checks compare-mass\n\nlesson weigh-3';

export const adaptedNotIntroduced = lossCheck('no-longer-introduced', {
    code: 'adapted-not-introduced', title: 'A change after which nobody introduces an objective',
    explains: 'The change takes away the lesson that introduces an objective, and lessons that stay practise or check it: children would be asked for what nobody has shown them. Introduce it for this class in another lesson with `add to`, leave out what asks for it too, or take the change back.',
    wrong: course('  skip lesson weigh-1') + inThree,
    right: course('  skip lesson weigh-1\n  add to weigh-2\n    objectives\n      introduces compare-mass') + inThree
}, usesOf);

export const adaptedNotChecked = lossCheck('no-longer-checked', {
    code: 'adapted-not-checked', title: 'A change after which nobody checks an objective',
    explains: 'The change takes away the last lesson that checks an objective which the class is still taught, so nobody finds out whether the children have got it. Let another lesson check it with `add to`, or take the change back.',
    wrong: course('  skip lesson weigh-3') + inThree,
    right: course('  skip lesson weigh-3\n  add to weigh-2\n    objectives\n      checks compare-mass') + inThree
});

export const adaptedTooEarly = lossCheck('practised-too-early', {
    code: 'adapted-too-early', title: 'A change after which an objective is asked for too early',
    explains: 'With this change a lesson practises or checks an objective before another lesson introduces it. Move the other lesson too, or introduce the objective in the lesson that asks for it with `add to`.',
    wrong: course('  move weigh-1 after weigh-3') + inTwo,
    right: course('  move weigh-1 after weigh-3\n  move weigh-2 after weigh-1') + inTwo
}, usesOf);

const buildsOn = (changes: string): string =>
    `objective compare-length\n\nobjective measure-length\n  builds on compare-length\n\ncourse measuring\n  unit lengths\n    long-1\n    long-2\n    long-3\n\nadaptation other-way of measuring\n${changes}\n\nlesson long-1\n  objectives\n    introduces compare-length\n    checks compare-length\n\nlesson long-2\n  objectives\n    introduces measure-length\n    checks measure-length\n\nlesson long-3`;

export const adaptedBuildsOnLater = lossCheck('builds-on-later', {
    code: 'adapted-builds-on-later', title: 'A change after which an objective builds on a later one',
    explains: 'With this change an objective is introduced before the one that it builds on, or that one is no longer taught at all. Move the other lesson too, or introduce what is built on in an earlier lesson with `add to`.',
    wrong: buildsOn('  move long-1 after long-3'),
    right: buildsOn('  move long-1 after long-3\n  move long-2 after long-1')
});

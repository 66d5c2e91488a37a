import { followsIn, lossCheck } from './losses.js';

const course = (changes: string): string =>
    `course measuring\n  unit weighing\n    weigh-1\n    weigh-2\n    weigh-3\n\nadaptation shorter of measuring\n${changes}\n\nlesson weigh-1\n\nlesson weigh-2\n  follows weigh-1\n\nlesson weigh-3`;

export const adaptedPrerequisiteLeftOut = lossCheck('prerequisite-left-out', {
    code: 'adapted-follows-left-out', title: 'A change that leaves out what another lesson follows',
    explains: 'A lesson that stays says that it follows the one that this change leaves out: it counts on what the children have done there. Leave it out too, teach something else in the place of the other with `swap lesson`, or take the change back.',
    wrong: course('  skip lesson weigh-1'),
    right: course('  skip lesson weigh-1\n  skip lesson weigh-2')
}, followsIn);

export const adaptedPrerequisiteLater = lossCheck('prerequisite-later', {
    code: 'adapted-follows-later', title: 'A change that puts a lesson before what it follows',
    explains: 'With this change a lesson stands before one that it follows. No lesson is taught before what it follows, so it waits for its turn and the change does not have the order that it says. Move the other lesson too, or take the change back.',
    wrong: course('  move weigh-1 after weigh-3'),
    right: course('  move weigh-1 after weigh-3\n  move weigh-2 after weigh-1')
}, followsIn);

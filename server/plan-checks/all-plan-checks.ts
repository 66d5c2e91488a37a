import { adaptedPrerequisiteLater, adaptedPrerequisiteLeftOut } from './adapted-lessons.js';
import { adaptedNothingLeft } from './adapted-nothing-left.js';
import { adaptedBuildsOnLater, adaptedNotChecked, adaptedNotIntroduced, adaptedTooEarly } from './adapted-objectives.js';
import { adaptedWordNotTaught } from './adapted-words.js';
import { cupboardClash } from './cupboard-clash.js';
import { fixedDate } from './fixed-date.js';
import { lessonWaits } from './lesson-waits.js';
import { logNotTaught } from './log-not-taught.js';
import { changeInConflict, changeMoved, changeNotNeeded, courseEditionChanged } from './editions.js';
import { neverMeets } from './never-meets.js';
import { notRevisited } from './not-revisited.js';
import { orderTooLate } from './order-too-late.js';
import type { PlanCheck } from './plan-check.js';
import { sessionOverrun } from './session-overrun.js';
import { shortAtMeeting } from './short-at-meeting.js';
import { termOverrun } from './term-overrun.js';

/** Every check that needs the plan, in the order of the reference. */
export const allPlanChecks: readonly PlanCheck[] = [
    neverMeets, termOverrun, sessionOverrun, fixedDate, lessonWaits, logNotTaught, orderTooLate, shortAtMeeting, cupboardClash, notRevisited,
    adaptedNotIntroduced, adaptedNotChecked, adaptedTooEarly, adaptedBuildsOnLater, adaptedPrerequisiteLeftOut, adaptedPrerequisiteLater, adaptedWordNotTaught, adaptedNothingLeft,
    courseEditionChanged, changeInConflict, changeMoved, changeNotNeeded
];

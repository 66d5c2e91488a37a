import { adaptationEmpties, adaptationMisses } from './adaptations.js';
import type { Check, Explained } from './check.js';
import { noSuchDate } from './dates.js';
import { declaredTwice } from './declared-twice.js';
import { wrongEdition } from './editions.js';
import { unknownFrameworkCode } from './framework-codes.js';
import { impossibleNumber } from './impossible-numbers.js';
import { kitFlagMissing, kitFlagWrong } from './kit-flags.js';
import { unknownCaution, unknownPresent } from './known-words.js';
import { notInMaterials, unusedNeed } from './lesson-materials.js';
import { missingAmount } from './missing-amount.js';
import { classNotReady, emptyText, missingUse } from './missing-facts.js';
import { fileNotUsable, filePartlyRead } from './named-files.js';
import { circle, followsLater } from './order-of-lessons.js';
import { buildsOnLater, neverChecked, practisedTooEarly } from './order-of-objectives.js';
import { impossiblePicture } from './pictures.js';
import { impossiblePractice, practiceWithoutItems } from './practice.js';
import { tooFewPlayers } from './players.js';
import { priceNotInCoins } from './prices.js';
import { parserCode, readingCodes } from './reading.js';
import { seriousCaution, tooYoung, undeclaredSmallPart } from './serious-cautions.js';
import { activityWithoutTime, lessonTooLong } from './session-time.js';
import { ownCupboard } from './shared-cupboards.js';
import { lessonNotTaught, taughtTwice } from './taught-lessons.js';
import { turnedRound } from './turned-round.js';
import { missingUnit, unknownUnit, wrongUnit } from './units.js';
import { unknownName } from './unknown-name.js';
import { unusedObjective, unusedThing } from './unused.js';
import { plainWordBeforeTaught, wordBeforeTaught } from './words.js';

/** Every check beyond reading and names, in the order of the reference. */
export const allChecks: readonly Check[] = [
    declaredTwice,
    missingUse, missingAmount, unknownUnit, wrongUnit, missingUnit, impossibleNumber, priceNotInCoins, turnedRound, noSuchDate,
    notInMaterials, unusedNeed, kitFlagWrong, kitFlagMissing, unusedThing, wrongEdition,
    lessonNotTaught, taughtTwice, followsLater, circle,
    practisedTooEarly, neverChecked, buildsOnLater, unusedObjective, wordBeforeTaught, plainWordBeforeTaught,
    activityWithoutTime, lessonTooLong, tooFewPlayers, emptyText, impossiblePractice, practiceWithoutItems, impossiblePicture, classNotReady, ownCupboard, adaptationMisses, adaptationEmpties,
    fileNotUsable, filePartlyRead, unknownFrameworkCode,
    seriousCaution, undeclaredSmallPart, tooYoung, unknownCaution, unknownPresent
];

/** Every code that a problem can have, as the reference lists them. */
export const allCodes: readonly Explained[] = [...readingCodes, parserCode, unknownName, ...allChecks];

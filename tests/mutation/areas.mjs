/** Parts of the engine and the checks, each with the tests that are to notice when it is changed: those close to it that are quick.
 * `without`: tests of those files that take seconds for every change. */
export const areas = {
    amounts: {
        changed: /^server\/planning\/(amounts|rounding|exact|people|audience|needs|sources|holdings|stock|shelf|names)\.ts$/,
        tests: /^tests\/(planning\/(amounts|rounding|people|audience|stock|facts|demand|week|cautions|lessons|names)|outside\/units)\.test\.ts$/
    },
    week: {
        changed: /^server\/planning\/(demand|gross|parts|lessons|week|week-on|plan|shared-week|things|cautions|practice|speaking|speaking\/.*)\.ts$/,
        tests: /^tests\/(planning\/(demand|week[a-z-]*|lessons|cautions|audience|people|facts|stock|names|schedule-lessons|adapting-plan|cache|shared-cupboards)|outside\/(speaking-time|cautions-ages)|brief\/(sections|speaking[a-z-]*))\.test\.tsx?$/,
        without: /the same number of words|a week out of 1,000 lessons/
    },
    schedule: {
        changed: /^server\/planning\/(schedule\/.*|schedule|calendar)\.ts$/,
        tests: /^tests\/(planning\/(schedule[a-z-]*|adapting-plan)|outside\/week-dates)\.test\.ts$/,
        without: /every day from 2020|a long chain/
    },
    buying: {
        changed: /^server\/planning\/buying(\/.*)?\.ts$/,
        tests: /^tests\/planning\/buying-[a-z-]*\.test\.ts$/
    },
    supplies: {
        changed: /^server\/planning\/(supplies\/.*|sharing)\.ts$/,
        tests: /^tests\/(planning\/(supplies(|-cupboard|-figures|-kept|-numbers|-properties|-rough)|shared-cupboards|adapting-plan)|outside\/material-requirements)\.test\.ts$/
    },
    coverage: {
        changed: /^server\/planning\/coverage(\/.*)?\.ts$/,
        tests: /^tests\/(planning\/coverage[a-z-]*|outside\/(spacing|case-frameworks))\.test\.ts$/
    },
    ledger: {
        changed: /^server\/planning\/(ledger\/.*|ledger|changes|adapted-term|adapted-week|taught-as)\.ts$/,
        tests: /^tests\/planning\/(ledger[a-z-]*|adapting-plan)\.test\.ts$/
    },
    editions: {
        changed: /^server\/planning\/editions\/.*\.ts$/,
        tests: /^tests\/planning\/editions[a-z-]*\.test\.ts$/,
        without: /the example|what is added one way/
    },
    checks: {
        changed: /^language\/checks\/.*\.ts$/,
        tests: /^tests\/(language\/(checks|told-[a-z-]*|examples-of-codes|severity|apply-edits|adaptation-fixes|practice|pictures|attachments|small-parts|mends)|outside\/cautions-ages)\.test\.ts$/
    },
    'plan-checks': {
        changed: /^server\/plan-checks\/.*\.ts$/,
        tests: /^tests\/plan-checks\/(adapted|change-lines|plan-checks|mends|told-[a-z]*|words)\.test\.ts$/,
        without: /any line may be missing/
    }
};

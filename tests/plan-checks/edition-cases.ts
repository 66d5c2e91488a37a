import type { PlanCase } from './cases.js';

/** Two lessons; what differs between editions is given. */
const programme = (edition: string, changes: string, { first = 'weigh-1', minutes = 15, against = '1', more = '' } = {}): string => `
lesson ${first} "Two bags"
  activity two-bags "Two bags" ${minutes} min
    do: Lift one bag, then the other, and say which is heavier.
lesson weigh-2 "Loaves"
  activity loaves "Loaves" 10 min
    do: Weigh two loaves.
  activity crumbs "Crumbs" 5 min
    do: Sweep the crumbs together.
${more}course measuring "Measuring" edition ${edition}
  unit weighing
    ${first}
    weigh-2
adaptation shorter of measuring edition ${against}
${changes}
`;
const former = programme('1', '  retime activity weigh-1.two-bags to 10 min');
const retime = (mark: string): string => `  retime activity weigh-1.two-bags to 10 min because: The room is small.\n${mark}`;

export const editionCases: PlanCase[] = [
    {
        code: 'course-edition-changed',
        fires: [
            { on: '2026-09-01', text: programme('2', '#                                       ^ course-edition-changed: Look at them again\n  retime activity weigh-1.two-bags to 10 min') },
            { on: '2026-09-01', former, text: programme('2', '#                                       ^ course-edition-changed: All of them still apply\n  retime activity weigh-1.two-bags to 10 min') },
            { on: '2026-09-01', former, text: programme('2', '#                                       ^ course-edition-changed: All of them still apply\n  retime activity weigh-1.two-bags to 10 min as of edition 2', { minutes: 20 }) }
        ],
        silent: [
            { on: '2026-09-01', text: programme('2', '  retime activity weigh-1.two-bags to 10 min', { against: '2' }) },
            { on: '2026-09-01', text: programme('1', '  retime activity weigh-1.two-bags to 10 min') }
        ]
    },
    {
        code: 'change-in-conflict',
        fires: [
            { on: '2026-09-01', former, text: programme('2', retime('# ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ change-in-conflict: “Two bags”: 20 min instead of 15 min'), { minutes: 20 }) },
            { on: '2026-09-01', former: programme('1', '  skip activity weigh-2.crumbs'), text: programme('2', '  skip activity weigh-2.crumbs\n# ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ change-in-conflict: “Crumbs”: 8 min instead of 5 min').replace('"Crumbs" 5', '"Crumbs" 8') }
        ],
        silent: [
            { on: '2026-09-01', former, text: programme('2', retime(''), { minutes: 20, against: '2' }) },
            // An edition later somebody has looked at the line.
            { on: '2026-09-01', former, text: programme('2', '#                                       ^ course-edition-changed: All of them\n  retime activity weigh-1.two-bags to 10 min as of edition 2 because: The room is small.', { minutes: 20 }) }
        ]
    },
    {
        code: 'change-moved',
        fires: [
            { on: '2026-09-01', former: programme('1', '  skip activity weigh-2.crumbs'), text: programme('2', '  skip activity weigh-2.crumbs\n# ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ change-moved: “Crumbs” now stands in “Two bags”. Write: skip activity weigh-1.crumbs')
                .replace('  activity crumbs "Crumbs" 5 min\n    do: Sweep the crumbs together.\n', '').replace('lesson weigh-2', '  activity crumbs "Crumbs" 5 min\n    do: Sweep the crumbs together.\nlesson weigh-2') }
        ],
        silent: [
            { on: '2026-09-01', former, text: programme('2', '#                                       ^ course-edition-changed: All of them\n  retime activity weigh-1.two-bags to 10 min') },
            // A name that no edition has is a slip, and stays one.
            { on: '2026-09-01', former: programme('1', '  skip activity weigh-2.crumsb'), text: programme('2', '  skip activity weigh-2.crumsb\n# ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ change-in-conflict: the new edition has no\n#                       ^^^^^^ unknown-name: did you mean') }
        ]
    },
    {
        code: 'change-not-needed',
        fires: [
            // Neither that the name is unknown nor that the line changes nothing is told as well.
            { on: '2026-09-01', former: programme('1', '  skip activity weigh-2.crumbs'), text: programme('2', '  skip activity weigh-2.crumbs\n# ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ change-not-needed: does this itself: it has no “Crumbs” in “Loaves”').replace('  activity crumbs "Crumbs" 5 min\n    do: Sweep the crumbs together.\n', '') },
            { on: '2026-09-01', former, text: programme('2', retime('# ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ change-not-needed: “Two bags” takes 10 min in it'), { minutes: 10 }) }
        ],
        silent: [
            { on: '2026-09-01', former, text: programme('2', '#                                       ^ course-edition-changed: All of them\n  retime activity weigh-1.two-bags to 10 min') }
        ]
    }
];

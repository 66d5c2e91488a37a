/** Texts for one code of the plan, as tests/language/fixture.ts reads them: every problem in them is marked. Each is read on a day. */
export interface PlanCase {
    code: string;
    fires: { on: string; text: string; former?: string }[];
    silent: { on: string; text: string; former?: string }[];
}

const sand = (more: string, materials = '      sand 20 g per pair'): string => `
material sand "Fine sand"
  consumable
  measured in g
  pack of 500 g costs 2 EUR
  arrives in 10 days
lesson weigh-1
  activity pour 15 min
    materials
${materials}
    do: Pour the {sand}.
course measuring
  unit weighing
    weigh-1
class harbour "Harbour co-op"
  teaches measuring
  learners 7
${more}`;

const cubes = (more: string, mark = '', line = '      gram-cube 20 per pair'): string => `
material gram-cube "Gram cubes"
  reusable
material bean "Beans"
  reusable
kit weighing-box
  holds
    gram-cube 20
    bean 10
lesson weigh-1
  activity two-bags 15 min
    materials
${line}
${mark}    do: Fill a bag with {gram-cube}s. No {bean}s today.
  not needed bean
lesson weigh-2
  activity three-bags 15 min
    materials
      gram-cube 4 per pair
    do: Fill a bag with {gram-cube}s.
course measuring
  unit weighing
    weigh-1
    weigh-2
class harbour "Harbour co-op"
  teaches measuring
  learners 7
${more}`;

const two = (more: string, second = ''): string => `
lesson weigh-1
  activity two-bags 15 min
    do: Lift one bag, then the other.
lesson weigh-2
${second}  activity three-bags 15 min
    do: Put three bags in order.
course measuring
  unit weighing
    weigh-1
    weigh-2
class harbour "Harbour co-op"
  teaches measuring
  learners 7
${more}`;

const shared = (other: string, mark: string): string => `
material gram-cube "Gram cubes"
  reusable
lesson weigh-1
  activity two-bags 15 min
    materials
      gram-cube 20 per pair
    do: Fill a bag with {gram-cube}s.
course measuring
  unit weighing
    weigh-1
class harbour "Harbour co-op"
  teaches measuring
  learners 2
  on hand
    gram-cube 30
  starts 2026-09-14
  meets mon
  shares cupboard with millpond
${mark}class millpond "Millpond co-op"
  teaches measuring
  learners 2
${other}`;

const long = (minutes: number, mark: string, more = ''): string => `
lesson weigh-1
  activity lift ${minutes} min
${mark}    do: Lift.
  checkpoint end 5 min
    ask: Which?
course measuring
  unit weighing
    weigh-1
class harbour "Harbour co-op"
  teaches measuring
  learners 6
  starts 2026-09-07
  meets mon
  session 30 min
${more}`;

const days = (practised: number, mark: string): string => {
    const names = Array.from({ length: 18 }, (_, index) => `day-${index + 1}`);
    const line = (index: number): string => (index === 0 ? '  objectives\n    introduces compare-mass\n' + mark : index === practised ? '  objectives\n    practises compare-mass\n' : index === 17 ? '  objectives\n    checks compare-mass\n' : '');
    return `
objective compare-mass
course measuring
  unit weighing
${names.map(name => `    ${name}`).join('\n')}
class harbour
  teaches measuring
  learners 7
  starts 2026-09-07
  meets mon, tue
${names.map((name, index) => `lesson ${name}\n${line(index)}  activity talk 10 min\n    do: Talk.`).join('\n')}
`;
};

const late = (says: string): string => `      sand 20 g per pair
#     ^^^^^^^^^^^^^^^^^^ order-too-late: ${says}`;

export const planCases: PlanCase[] = [
    {
        code: 'order-too-late',
        fires: [
            { on: '2026-09-03', text: sand('  starts 2026-09-07\n  meets mon', late('80 g of fine sand for Harbour co-op can no longer be ordered in time')) },
            // One cupboard, one message: for the class that needs it first.
            {
                on: '2026-09-03',
                text: `${sand('  starts 2026-09-08\n  meets tue\n  shares cupboard with millpond', late('120 g of fine sand for Millpond co-op can no longer'))}
class millpond "Millpond co-op"
  teaches measuring
  learners 4
  starts 2026-09-07
  meets mon
`
            },
            // The order that is noted comes too late itself.
            { on: '2026-09-03', text: sand('  on order\n    sand 500 g arriving 2026-09-14\n  starts 2026-09-07\n  meets mon', late('80 g of fine sand')) }
        ],
        silent: [
            { on: '2026-08-20', text: sand('  starts 2026-09-07\n  meets mon') },
            { on: '2026-09-03', text: sand('  on order\n    sand 500 g arriving 2026-09-04\n  starts 2026-09-07\n  meets mon') },
            { on: '2026-09-03', text: sand('  on hand\n    sand 80 g\n  starts 2026-09-07\n  meets mon') },
            { on: '2026-09-08', text: sand('  starts 2026-09-07\n  meets mon') },
            // What the class has is not certain: the line about it cannot be read.
            { on: '2026-09-03', text: sand('  on hand\n    sand 80 gramms of it\n#                  ^^^^^ unfinished-line\n  starts 2026-09-07\n  meets mon') },
            // Nobody knows how many they are: that is said, and nothing else.
            { on: '2026-09-03', text: sand('  starts 2026-09-07\n  meets mon').replace('class harbour "Harbour co-op"\n  teaches measuring\n  learners 7', 'class harbour "Harbour co-op"\n#     ^^^^^^^ class-not-ready\n  teaches measuring') }
        ]
    },
    {
        code: 'short-at-meeting',
        fires: [
            { on: '2026-09-07', text: cubes('  kits weighing-box 3\n  starts 2026-09-14\n  meets mon', '', '      gram-cube 20 per pair\n#     ^^^^^^^^^^^^^^^^^^^^^ short-at-meeting: Harbour co-op is short of 20 gram cubes on Mon 14 Sep: 80 needed, 60 at hand.') },
            // With packs, but too late for them: one message, not a second about the order. Another lesson needs fewer.
            { on: '2026-09-12', text: cubes('  kits weighing-box 3\n  starts 2026-09-14\n  meets mon', '', '      gram-cube 20 per pair\n#     ^^^^^^^^^^^^^^^^^^^^^ short-at-meeting: short of 20 gram cubes').replace('"Gram cubes"\n  reusable', '"Gram cubes"\n  reusable\n  pack of 10 costs 2 EUR\n  arrives in 3 days') },
            { on: '2026-09-07', text: cubes('  kits weighing-box 1\n  starts 2026-09-14\n  meets mon', '', '      gram-cube 8 per pair\n#     ^^^^^^^^^^^^^^^^^^^^ short-at-meeting: 32 needed, 20 at hand. The same at 1 more meeting.').replace('gram-cube 4 per pair', 'gram-cube 6 per pair') }
        ],
        silent: [
            { on: '2026-09-07', text: cubes('  kits weighing-box 4\n  starts 2026-09-14\n  meets mon') },
            { on: '2026-09-07', text: cubes('  kits weighing-box 3\n  on hand\n    gram-cube 20\n  starts 2026-09-14\n  meets mon') },
            { on: '2026-09-15', text: cubes('  kits weighing-box 3\n  starts 2026-09-14\n  meets mon') },
            // What the class has is not certain while a name in it is misspelt.
            { on: '2026-09-07', text: cubes('  kits weighing-box 1, weighing-bx 3\n#                      ^^^^^^^^^^^ unknown-name\n  starts 2026-09-14\n  meets mon') },
            { on: '2026-09-07', text: cubes('  kits weighing-box 3\n  on hand\n    gram-cub 20\n#   ^^^^^^^^ unknown-name\n  starts 2026-09-14\n  meets mon') },
            // Some can still be bought in time: the brief says so.
            { on: '2026-09-07', text: cubes('  kits weighing-box 3\n  starts 2026-09-14\n  meets mon').replace('"Gram cubes"\n  reusable', '"Gram cubes"\n  reusable\n  pack of 10 costs 2 EUR\n  arrives in 3 days') }
        ]
    },
    {
        code: 'cupboard-clash',
        fires: [{ on: '2026-09-07', text: shared('  starts 2026-09-14\n  meets mon\n', '#                      ^^^^^^^^ cupboard-clash: Harbour co-op and Millpond co-op share a cupboard and both meet on Mon 14 Sep: together they need 40 gram cubes, and it holds 30.\n') }],
        silent: [
            { on: '2026-09-07', text: shared('  starts 2026-09-14\n  meets tue\n', '') },
            { on: '2026-09-15', text: shared('  starts 2026-09-14\n  meets mon\n', '') }
        ]
    },
    {
        code: 'term-overrun',
        fires: [{ on: '2026-09-07', text: two('  starts 2026-09-14\n  meets mon\n  ends 2026-09-18\n#      ^^^^^^^^^^ term-overrun: 1 lesson no longer fits\n') }],
        silent: [
            { on: '2026-09-07', text: two('  starts 2026-09-14\n  meets mon\n  ends 2026-09-21\n') },
            { on: '2026-09-19', text: two('  starts 2026-09-14\n  meets mon\n  ends 2026-09-18\n') }
        ]
    },
    {
        code: 'session-overrun',
        fires: [{ on: '2026-09-01', text: long(45, '# ^^^^^^^^^^^^^^^^^^^^ session-overrun: takes 45 min\n') }],
        silent: [
            { on: '2026-09-01', text: long(25, '') },
            { on: '2026-10-01', text: long(45, '') }
        ]
    },
    {
        code: 'fixed-date',
        fires: [
            { on: '2026-09-07', text: two('  starts 2026-09-14\n  meets mon\n  fixed weigh-2 on 2026-09-22\n#                  ^^^^^^^^^^ fixed-date: the class does not meet then\n') },
            { on: '2026-09-07', text: two('  starts 2026-09-14\n  meets mon\n  fixed weigh-2 on 2026-09-14\n#                  ^^^^^^^^^^ fixed-date: which it follows\n', '  follows weigh-1\n') },
            { on: '2026-09-07', text: `${two('  starts 2026-09-14\n  meets mon\n  fixed pour-1 on 2026-09-14\n#       ^^^^^^ fixed-date: the class is not taught this lesson\n')}lesson pour-1\n#      ^^^^^^ lesson-not-taught\n  activity pour 10 min\n    do: Pour.` }
        ],
        silent: [
            { on: '2026-09-07', text: two('  starts 2026-09-14\n  meets mon\n  fixed weigh-2 on 2026-09-21\n') },
            { on: '2026-09-23', text: two('  starts 2026-09-14\n  meets mon\n  fixed weigh-2 on 2026-09-22\n') },
            { on: '2026-09-07', text: two('  starts 2026-09-14\n  meets mon\n  fixed weigh-2 on 2026-09-31\n#                  ^^^^^^^^^^ no-such-date\n') },
            { on: '2026-09-07', text: two('  starts 2026-09-14\n  meets mon\n  fixed weigh-3 on 2026-09-21\n#       ^^^^^^^ unknown-name\n') }
        ]
    },
    {
        code: 'lesson-waits',
        fires: [{
            on: '2026-09-07',
            text: `${two('  starts 2026-09-14\n  meets mon\n  fixed weigh-1 on 2026-09-28\n', '  follows weigh-1\n#         ^^^^^^^ lesson-waits: waits for\n').replace('    weigh-2\n', '    weigh-2\n    weigh-3\n')}lesson weigh-3\n  activity four-bags 15 min\n    do: Lift.\n`
        }],
        silent: [
            { on: '2026-09-07', text: `${two('  starts 2026-09-14\n  meets mon\n  fixed weigh-1 on 2026-09-14\n', '  follows weigh-1\n').replace('    weigh-2\n', '    weigh-2\n    weigh-3\n')}lesson weigh-3\n  activity four-bags 15 min\n    do: Lift.\n` },
            // The course has them the wrong way round: said without a plan.
            { on: '2026-09-07', text: two('  starts 2026-09-14\n  meets mon\n', '  follows weigh-1\n#         ^^^^^^^ follows-later\n').replace('    weigh-1\n    weigh-2\n', '    weigh-2\n    weigh-1\n') }
        ]
    },
    {
        code: 'log-not-taught',
        fires: [{ on: '2026-09-22', text: two('  starts 2026-09-14\n  meets mon\n  log\n    unsure weigh-1 on 2026-09-15\n#                     ^^^^^^^^^^ log-not-taught: in this plan it comes on\n') }],
        silent: [
            { on: '2026-09-22', text: two('  starts 2026-09-14\n  meets mon\n  log\n    unsure weigh-1 on 2026-09-14\n') },
            { on: '2026-09-22', text: two('  starts 2026-09-14\n  meets mon\n  log\n    unsure weigh-3 on 2026-09-14\n#          ^^^^^^^ unknown-name\n') }
        ]
    },
    {
        code: 'never-meets',
        fires: [{ on: '2026-09-07', text: two('  starts 2026-09-14\n  meets wed\n  ends 2026-09-15\n#      ^^^^^^^^^^ never-meets: too few days to meet\n') }],
        silent: [
            { on: '2026-09-07', text: two('  starts 2026-09-14\n  meets wed\n  ends 2026-09-23\n') },
            { on: '2026-09-07', text: two('  starts 2026-09-14\n').replace('class harbour "Harbour co-op"\n', 'class harbour "Harbour co-op"\n#     ^^^^^^^ class-not-ready\n') }
        ]
    },
    {
        code: 'not-revisited',
        fires: [{ on: '2026-09-01', text: days(-1, '#              ^^^^^^^^^^^^ not-revisited: is not met again for 17 meetings\n') }],
        silent: [
            { on: '2026-09-01', text: days(8, '') },
            // It is too late to come back to it in time.
            { on: '2026-11-01', text: days(-1, '') },
            // A line of a lesson that cannot be read may come back to it.
            { on: '2026-09-01', text: days(-1, '').replace('lesson day-5\n', 'lesson day-5\n  practise compare-mass\n# ^^^^^^^^ unknown-statement\n') }
        ]
    }
];

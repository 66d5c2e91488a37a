import type { PlanCase } from './cases.js';

/** Five lessons: 1 introduces, 2 follows it and practises, 3 checks and uses a word of 1; 4 and 5 build on what 1 introduces. */
const programme = (changes: string, { classes = '', first = '', fifth = '' } = {}): string => `
objective compare-mass "Compare two masses"
objective order-mass "Put masses in order"
  builds on compare-mass
course measuring "Measuring"
  unit weighing
    weigh-1
    weigh-2
    weigh-3
    weigh-4
    weigh-5
course outings "Outings"
  unit visits
    weigh-1
    weigh-3
    visit
${classes}adaptation shorter of measuring
${changes}
lesson weigh-1 "Which is heavier?"
  objectives
    introduces compare-mass
${first}  words heavier
  activity two-bags 10 min
    do: Lift two bags.
lesson weigh-2 "Three bags"
  follows weigh-1
  objectives
    practises compare-mass
  activity three-bags 20 min
    do: Lift three bags.
lesson weigh-3 "On the balance"
  objectives
    checks compare-mass
  activity weigh 15 min
    do: Which bag is {heavier}?
lesson weigh-4 "In order"
  objectives
    introduces order-mass
  activity order 15 min
    do: Put three bags in order.
lesson weigh-5 "Market"
  objectives
    checks order-mass
${fifth}  activity sell 15 min
    do: Sell three bags.
lesson visit "Market visit"
  draft
  activity walk 30 min
    do: Walk to the market.
`;
const on = '2026-09-07';
const caret = (code: string, length: number, says = ''): string => `# ${'^'.repeat(length)} ${code}${says && `: ${says}`}`;
const skip = (lesson: string, ...marks: string[]): string => [`  skip lesson ${lesson}`, ...marks].join('\n');
const two = (classes: string): string => `class harbour "Harbour co-op"
  teaches measuring
  learners 7
  starts 2026-09-14
  meets mon
${classes}`;

const twoLessons = (mark: string): string => `course measuring
  unit weighing
    weigh-1
    weigh-2
course outings
  unit visits
    visit
adaptation shorter of measuring
  skip lesson weigh-1
  skip lesson weigh-2
${mark}
lesson weigh-1
  activity lift 10 min
    do: Lift.
lesson weigh-2
  activity weigh 10 min
    do: Weigh.
lesson visit
  draft
  activity walk 10 min
    do: Walk.
`;
const skipAllButOne = '  skip lesson weigh-1\n  skip lesson weigh-2\n  skip lesson weigh-3\n  skip lesson weigh-4';

const skipFirst = skip('weigh-1',
    caret('adapted-not-introduced', 19, 'No lesson introduces “Compare two masses” any more, but “Three bags” and “On the balance” ask for it.'),
    caret('adapted-builds-on-later', 19, '“Put masses in order” builds on “Compare two masses”, which no lesson introduces any more.'),
    caret('adapted-follows-left-out', 19, '“Three bags” follows “Which is heavier?”, which is left out.'),
    caret('adapted-word-untaught', 19, '“On the balance” uses the word “heavier”, which no lesson teaches any more.'));

const moveFirst = ['  move weigh-1 after weigh-5',
    caret('adapted-too-early', 26, '“On the balance” checks “Compare two masses”, which “Which is heavier?” now introduces only later.'),
    caret('adapted-follows-later', 26, '“Three bags” follows “Which is heavier?”, which now comes later, so it is taught only after that.'),
    caret('adapted-word-untaught', 26, '“On the balance” uses the word “heavier”, which “Which is heavier?” now teaches only later.'),
    caret('adapted-builds-on-later', 26, '“Put masses in order” builds on “Compare two masses”, which “Which is heavier?” now introduces only later.')].join('\n');

/** Of one thing that is taken away several things are lost; each is told by itself. */
export const adaptedCases: PlanCase[] = [
    {
        code: 'adapted-not-introduced',
        fires: [{ on, text: programme(skipFirst) }, { on, text: programme(`  skip lesson weigh-4\n  skip lesson weigh-5\n  skip lesson weigh-1 because: They know it.\n${skipFirst.split('\n').slice(1).filter(line => !line.includes('builds-on')).join('\n')}`) }],
        silent: [
            // Somebody else introduces it for this class.
            { on, text: programme(`${skipFirst.split('\n')[0]}\n${skipFirst.split('\n').slice(3).join('\n')}\n  add to weigh-2\n    objectives\n      introduces compare-mass`) },
            // Nothing of it is left.
            { on, text: programme(`${skipAllButOne}\n${skip('weigh-5', caret('adapted-nothing-left', 19))}`) },
            // A line of a lesson cannot be read: it may introduce it.
            { on, text: programme(skipFirst.split('\n').filter(line => !/adapted-(?:not-introduced|builds-on)/.test(line)).join('\n'), { fifth: '  introdces compare-mass\n# ^^^^^^^^^ unknown-statement\n' }) },
            { on, text: programme(skip('visit', '#             ^^^^^ adaptation-misses')) },
            // The class has had its term.
            { on: '2026-12-01', text: programme(skip('weigh-1'), { classes: two('  ends 2026-11-01\n') }) }
        ]
    },
    {
        code: 'adapted-not-checked',
        fires: [
            { on, text: programme(skip('weigh-5', caret('adapted-not-checked', 19, 'No lesson checks “Put masses in order” any more'))) },
            // Two classes are taught the same: it is told once.
            { on, text: programme(skip('weigh-5', caret('adapted-not-checked', 19)), { classes: two(two('').replace('class harbour "Harbour co-op"', 'class millpond "Millpond co-op"')) }) },
            { on, text: programme('  split weigh-4 after order\n  swap lesson weigh-5 for visit\n# ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ adapted-not-checked', {}).replace('    do: Put three bags in order.', '    do: Put three bags in order.\n  activity again 5 min\n    do: And again.') }
        ],
        silent: [
            { on, text: programme('  skip lesson weigh-5\n  add to weigh-4\n    objectives\n      checks order-mass') },
            { on, text: programme('  skip lesson weigh-4\n  skip lesson weigh-5') },
            { on, text: programme('  join weigh-4 with weigh-5') }
        ]
    },
    {
        code: 'adapted-too-early',
        fires: [
            { on, text: programme(moveFirst) },
            // A lesson that the course does not have asks for what comes later.
            { on, text: `${programme('  insert visit before weigh-1\n# ^^^^^^^^^^^^^^^^^^^^^^^^^^^ adapted-too-early: “Market visit” practises “Compare two masses”')}  objectives\n    practises compare-mass\n` }
        ],
        silent: [
            { on, text: `${programme('  insert visit after weigh-1')}  objectives\n    practises compare-mass\n` },
            // The course itself has it the wrong way round.
            { on, text: programme('  move weigh-1 after weigh-5').replace('    weigh-1\n    weigh-2\n    weigh-3\n    weigh-4\n', '    weigh-2\n    weigh-3\n    weigh-4\n    weigh-1\n').replace('follows weigh-1', 'follows weigh-1\n#         ^^^^^^^ follows-later')
                .replace('    practises compare-mass', '    practises compare-mass\n#             ^^^^^^^^^^^^ practised-too-early').replace('    checks compare-mass', '    checks compare-mass\n#          ^^^^^^^^^^^^ practised-too-early')
                .replace('is {heavier}?', 'is {heavier}?\n#                     ^^^^^^^ word-before-taught').replace('introduces compare-mass', 'introduces compare-mass\n#              ^^^^^^^^^^^^ never-checked').replace('introduces order-mass', 'introduces order-mass\n#              ^^^^^^^^^^ builds-on-later') }
        ]
    },
    {
        code: 'adapted-builds-on-later',
        fires: [
            { on, text: programme(moveFirst) },
            {
                on, text: programme(`  skip lesson weigh-3\n  skip lesson weigh-2\n${skip('weigh-1', caret('adapted-builds-on-later', 19, '“Put masses in order” builds on “Compare two masses”, which is no longer taught.'))}`)
            }
        ],
        silent: [{ on, text: programme(`${skipAllButOne}\n${skip('weigh-5', caret('adapted-nothing-left', 19))}`) }]
    },
    {
        code: 'adapted-follows-left-out',
        fires: [
            { on, text: programme(skipFirst) },
            { on, text: `${programme('  insert visit after weigh-1\n# ^^^^^^^^^^^^^^^^^^^^^^^^^^ adapted-follows-left-out: “Market visit” follows “Prices”, which is not taught in this course.')}  follows prices\nlesson prices "Prices"\n  draft\n  activity count 5 min\n    do: Count.\n`.replace('    visit\n', '    prices\n    visit\n') }
        ],
        silent: [
            // Something else is taught in its place.
            { on, text: programme('  swap lesson weigh-1 for visit').replace('    do: Walk to the market.', '    do: Walk to the market.\n  objectives\n    introduces compare-mass\n  words heavier') },
            { on, text: programme('  join weigh-1 with weigh-2') }
        ]
    },
    {
        code: 'adapted-follows-later',
        fires: [
            { on, text: programme(moveFirst) },
            { on, text: programme('  move weigh-2 before weigh-1\n# ^^^^^^^^^^^^^^^^^^^^^^^^^^^ adapted-follows-later: “Three bags” follows “Which is heavier?”, which is therefore still taught where it was.') }
        ],
        silent: [{ on, text: programme('  move weigh-5 after weigh-1\n# ^^^^^^^^^^^^^^^^^^^^^^^^^^ adapted-too-early: “Market” checks “Put masses in order”') }]
    },
    {
        code: 'adapted-word-untaught',
        fires: [{ on, text: programme(skipFirst) }, { on, text: programme(moveFirst) }],
        silent: [{ on, text: programme('  move weigh-3 after weigh-5') }]
    },
    {
        code: 'adapted-nothing-left',
        fires: [{ on, text: twoLessons(caret('adapted-nothing-left', 19, 'The adaptation “Shorter” leaves out all 2 lessons, so nothing is taught.')) }],
        silent: [{ on, text: twoLessons('').replace('skip lesson weigh-2', 'swap lesson weigh-2 for visit') }]
    }
];

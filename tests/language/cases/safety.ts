import type { Case } from './case.js';

const room = (extra: string): string => `
course measuring
  unit weighing
    weigh-1
class harbour
  teaches measuring
  learners 7
  starts 2026-09-07
  meets mon
${extra}`;

const lesson = (caution = ''): string => `
lesson weigh-1
  materials
    gram-cube 20 per pair
${caution}  activity build 10 min
    do: Build with {gram-cube}.
`;

export const safetyCases: Case[] = [
    {
        code: 'serious-caution',
        fires: [`${room('  present under-threes\n#         ^^^^^^^^^^^^ serious-caution: \'gram-cube\' (small parts)')}
material gram-cube
  reusable
  caution small-parts${lesson('  caution small-parts\n')}`, `${room('  ages 2 to 4\n#      ^^^^^^ serious-caution: The youngest learners are 2')}
material gram-cube
  reusable
  caution magnet: Strong ones.${lesson()}`,
        // Children under eight can choke on balloons: 16 CFR 1500.19(b)(4).
        `${room('  ages 7 to 9\n#      ^^^^^^ serious-caution: (balloons)')}
material gram-cube
  consumable
  caution balloon${lesson()}`,
        // What stands in counts instead, with its own caution.
        `${room('  present under-threes\n#         ^^^^^^^^^^^^ serious-caution: \'brick\' (small parts)')}
material gram-cube
  reusable
material brick
  reusable
  caution small-parts
adaptation safe of measuring for harbour
  swap gram-cube for brick${lesson()}`],
        silent: [`${room('  ages 3 to 9')}
material gram-cube
  reusable
  caution small-parts
  caution glass${lesson()}`, `${room('  present under-threes')}
material gram-cube
  reusable
  caution small-parts${lesson('  caution small-parts: On the high table only.\n')}`, `${room('  present under-threes')}
material gram-cube
  reusable
  caution small-parts
material brick
  reusable
adaptation safe of measuring for harbour
  swap gram-cube for brick${lesson()}`]
    },
    {
        code: 'undeclared-small-part',
        fires: [`${room('  present under-threes')}
material gram-cube
  reusable
  size 10 x 10 x 10 mm
#      ^^^^^^^^^^^^^^^ undeclared-small-part: 'gram-cube' is small enough to choke on${lesson()}`, `${room('  ages 2 to 4')}
material gram-cube
  reusable
  size 3 x 30 x 49 mm
#      ^^^^^^^^^^^^^^ undeclared-small-part: 'gram-cube' may be small enough to choke on${lesson()}`,
        // A ball that passes a hole of 1.75 in, 44.4 mm: 16 CFR 1500.18(a)(17).
        `${room('  present under-threes')}
material gram-cube
  reusable
  size 1.75 in
#      ^^^^^^^ undeclared-small-part: Write 'caution small-ball' under it${lesson()}`],
        silent: [`${room('  ages 3 to 9')}
material gram-cube
  reusable
  size 10 x 10 x 10 mm${lesson()}`, `${room('  present under-threes')}
material gram-cube
  reusable
  size 40 x 40 x 40 mm${lesson()}`]
    },
    {
        code: 'too-young',
        fires: [`${room('  ages 6 to 9\n#      ^^^^^^ too-young: for ages from 8, and class \'harbour\' has learners of 6')}
material gram-cube
  reusable
  ages 8 and up${lesson()}`],
        silent: [`${room('  ages 8 to 9\n  present under-threes')}
material gram-cube
  reusable
  ages 8 and up
material glue
  consumable
  ages 12 and up
  note: For nobody here.${lesson()}`.replace('material glue', 'material glue\n#        ^^^^ unused-thing')]
    },
    {
        code: 'unknown-caution',
        fires: [`
material gram-cube
  reusable
  caution  small-bits: Mind them.
#          ^^^^^^^^^^ unknown-caution: 'small-bits' is no kind of caution
lesson weigh-1
  not needed gram-cube
  caution glas
#         ^^^^ unknown-caution: did you mean 'glass'
`],
        silent: [`
material gram-cube
  reusable
  caution allergen: Nuts.
game grocer
  caution hot
`]
    },
    {
        code: 'unknown-present',
        fires: [`${room('  present under-threes, grandparents\n#                       ^^^^^^^^^^^^ unknown-present: only \'under-threes\' is known here')}
lesson weigh-1
  about: One.
`],
        silent: [`${room('  present under-threes')}
lesson weigh-1
  about: One.
`]
    }
];

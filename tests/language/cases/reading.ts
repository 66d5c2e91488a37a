import type { Case } from './case.js';

export const readingCases: Case[] = [
    {
        code: 'unknown-statement',
        fires: [`
lesson weigh-1
  acitvity two-bags 15 min
# ^^^^^^^^ unknown-statement: did you mean 'activity'
    do: Lift one bag.
`, `
lesson weigh-1
  activity two-bags 15 min
  blackboard wiped
# ^^^^^^^^^^ unknown-statement: 'blackboard' begins no line
`, `
lesson weigh-1
  wrods heavier, lighter
# ^^^^^ unknown-statement: did you mean 'words'
`, `
lesson weigh-1
  materials
    - pan-balance 1 per pair
#   ^ unknown-statement: A line here begins with a name. It reads like this: gram-cube
`, `
class harbour
  catch up 1 day every 8 lessons
# ^^^^^^^^ unknown-statement: did you mean 'catch-up'
  on-hand
# ^^^^^^^ unknown-statement: did you mean 'on hand'
`],
        silent: [`
lesson weigh-1
  activity two-bags 15 min
    do: Lift one bag.
      activity is also a word that text may begin a line with.
`]
    },
    {
        code: 'unfinished-line',
        fires: [`
material gram-cube
  reusable
  pack of 100 costs 14.50 for all
#                             ^^^ unfinished-line: does not belong here
`, `
lesson weigh-1
  materials
    2 per pair
#   ^ unfinished-line: The name is missing at the start of this line.
`],
        silent: [`
material gram-cube
  reusable
  pack of 100
  pack of 200 costs 14.50 USD # for all
`]
    },
    {
        code: 'wrong-place',
        fires: [`
lesson weigh-1
  about: Feel and compare.
  pack of 100
# ^^^^ wrong-place: 'pack' does not belong in a lesson block
`],
        silent: [`
lesson weigh-1
  about: Feel and compare.
    A pack of 100 is enough.
`]
    },
    {
        code: 'indentation',
        fires: [`
lesson weigh-1
  activity two-bags 15 min
    do: Lift one bag.
 # a remark says nothing about depth
   ask: Which is heavier?
#  ^^^^^^^^^^^^^^^^^^^^^^ indentation: does not line up
`],
        silent: [`
lesson weigh-1
      about: Feel and compare.

 # a remark
      activity two-bags 15 min
       do: Lift one bag.
`]
    },
    {
        code: 'tabs-and-spaces',
        fires: [`
lesson weigh-1
  activity two-bags
 \tdo: Lift one bag.
^^ tabs-and-spaces: Tabs and spaces are mixed
`],
        silent: [`
lesson weigh-1
\tactivity two-bags
\t\tdo: Lift one bag.
`]
    },
    {
        code: 'said-twice',
        fires: [`
material gram-cube
  reusable
  size 10 x 10 x 10 mm
  size 20 x 20 x 20 mm
# ^^^^^^^^^^^^^^^^^^^^ said-twice: has said 'size' before
`],
        silent: [`
material gram-cube
  reusable
  pack of 10
  pack of 100
  note: In trays.
  note: Dry them.
`]
    },
    {
        code: 'name-spelling',
        fires: [`
material Pan-Balance
#        ^^^^^^^^^^^ name-spelling: write 'pan-balance'
  reusable
`],
        silent: [`
material größe-2 "Große Waage"
  reusable
`]
    },
    {
        code: 'open-brace',
        fires: [`
lesson weigh-1
  about: Look at the {pan-balance together.
#                    ^^^^^^^^^^^^^^^^^^^^^^ open-brace: is not closed
`],
        silent: [`
lesson weigh-1
  about: Look at the \\{ sign.
`]
    },
    {
        code: 'name-in-braces',
        fires: [`
lesson weigh-1
  about: Look at the {Pan Balance}.
#                    ^^^^^^^^^^^^^ name-in-braces: Did you mean {pan-balance}
`],
        silent: [`
material pan-balance
  reusable

lesson weigh-1
  materials
    pan-balance 1
  about: Look at the { pan-balance }.
`]
    },
    {
        code: 'missing-colon',
        fires: [`
lesson weigh-1
  about Children compare two masses.
# ^^^^^ missing-colon: after 'about'
`],
        silent: [`
lesson weigh-1
  about  : Children compare two masses.
`]
    },
    {
        code: 'unknown-name',
        fires: [`
course measuring
adaptation shorter of measuring
  skip activity weigh-2.long-walk
#               ^^^^^^^ unknown-name: There is no lesson 'weigh-2'
  split weigh-5 after two-bags
#       ^^^^^^^ unknown-name: There is no lesson 'weigh-5'
`, `
--- things.kit
material spring-scale
  reusable
--- weigh.lesson
lesson weigh-1
  materials
    spring-scle 1 per pair
#   ^^^^^^^^^^^ unknown-name: did you mean 'spring-scale'
  activity lift 10 min
    do: Hang the bag on the {spring-scale}.
`, `
lesson weigh-1
  follows weigh-0
#         ^^^^^^^ unknown-name: no lesson 'weigh-0'; did you mean 'weigh-1'
  objectives
    introduces mass
#              ^^^^ unknown-name: declared nowhere
  checkpoint end 5 min
    if unsure: repeat start
#                     ^^^^^ unknown-name: no part 'start'
`],
        silent: [`
--- things.kit
materials spring-scale
^^^^^^^^^ unknown-statement: did you mean 'material'
  reusable
--- weigh.lesson
lesson weigh-1
  materials
    spring-scale 1 per pair
  activity lift 10 min
    do: Hang the bag on the {spring-scale}.
`, `
--- things.kit
the material spring-scale
^^^ unknown-statement: begins no line
  reusable
--- weigh.lesson
lesson weigh-1
  materials
    spring-scale 1 per pair
`]
    }
];

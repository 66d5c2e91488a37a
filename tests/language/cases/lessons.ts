import type { Case } from './case.js';

const things = `
material pan-balance
  reusable
material scarf "Scarves"
  reusable
  stand-in towel 1 for 1
material towel
  reusable
  stand-in scarf 1 for 1
lesson all
  not needed pan-balance, scarf, towel`;

const measuring = `
objective compare-mass
objective estimate-mass
  builds on compare-mass
course measuring
  unit weighing
    weigh-1
    weigh-2`;

const harbour = `
course measuring
  unit weighing
    weigh-1
class harbour
  teaches measuring
  learners 6
  starts 2026-09-07
  meets mon
  session 30 min`;

const market = `
course measuring
  unit weighing
    weigh-1`;

export const lessonCases: Case[] = [
    {
        code: 'not-in-materials',
        fires: [`${things}
lesson weigh-1
  materials
    towel 1 per pair
  activity lift 10 min
    do: Put the {pan-balance} on the {towel}. Look at the {pan-balance}.
#                ^^^^^^^^^^^ not-in-materials: Lesson 'weigh-1' uses 'pan-balance' here
`, `${things}
game grocer
#    ^^^^^^ unused-thing
  materials
    scarf 1 per group
  do: Hide the {pan-balance}.
#               ^^^^^^^^^^^ not-in-materials: The game 'grocer' uses
`, `${things}
lesson weigh-1
  draft
  activity lift 10 min
    do: Take the {towel}.
#                 ^^^^^ not-in-materials
`],
        silent: [`${things}
book table-games
game grocer
  found in table-games, number 2
  materials
    scarf 1 per group
lesson weigh-1
  words towels
  not needed pan-balance
  activity lift 10 min
    do: No {pan-balance} today, but {towels}, {weigh-1} and the {towel}. The rules of {grocer} are in {table-games}.
  game grocer 10 min
`, `${things}
lesson weigh-1
  materials
    two pan-balance per pair
#       ^^^^^^^^^^^ unfinished-line
    towl 1 per pair
#   ^^^^ unknown-name: did you mean 'towel'
  activity lift 10 min
    do: Put the {pan-balance} on the {towel}.
`]
    },
    {
        code: 'unused-need',
        fires: [`${things}
lesson weigh-1
  materials
    pan-balance 1 per pair
#   ^^^^^^^^^^^^^^^^^^^^^^ unused-need: no step uses it
    towel 1 per pair
  activity lift 10 min
    materials
      scarf or towel 1 per pair
    do: Use the {towel}.
`],
        silent: [`${things}
game grocer
  materials
    scarf 1 per group
lesson weigh-1
  materials
    pan-balance 1 per pair
    scarf 3 per class
    towel 1 per pair
  activity lift 10 min
    do: Set up the pan balance.
    watch: The pan is wet.
      help: Dry it with the {towel}.
  game grocer 10 min
lesson weigh-2
  materials
    towel 1 per pair
`]
    },
    {
        code: 'lesson-not-taught',
        fires: [`
lesson weigh-1
  about: One.
lesson weigh-2
#      ^^^^^^^ lesson-not-taught: 'weigh-2' is in no course
  about: Two.
course measuring
  unit weighing
    weigh-1
`],
        silent: [`
lesson weigh-1
  about: One.
`, `
lesson weigh-1
  about: One.
course measuring
  a unit weighing
# ^ unknown-statement
    weigh-1
`, `
lesson weigh-1
  activity lift 5 min
    do: Lift.
lesson visit
  about: Brought in.
lesson walk
  activity stroll 5 min
    do: Walk.
lesson fair
  about: Instead.
lesson stalls
  activity sell 5 min
    do: Sell.
course measuring
  unit weighing
    weigh-1
adaptation more of measuring
  insert visit after weigh-1
  insert activity walk.stroll after weigh-1.lift
  swap activity weigh-1.lift for stalls.sell
  swap lesson weigh-1 for fair
`]
    },
    {
        code: 'taught-twice',
        fires: [`
lesson weigh-1
  about: One.
course measuring
  unit a
    weigh-1
  unit b
    weigh-1
#   ^^^^^^^ taught-twice: already taught in this course
`],
        silent: [`
lesson weigh-1
  about: One.
course measuring
  unit a
    weigh-1
course short
  unit a
    weigh-1
`]
    },
    {
        code: 'follows-later',
        fires: [`
lesson weigh-1
  follows weigh-2, weigh-3
#         ^^^^^^^ follows-later: teaches 'weigh-2' later
lesson weigh-2
  about: Two.
lesson weigh-3
  about: Three.
course measuring
  unit a
    weigh-3
  unit b
    weigh-1
    weigh-2
`],
        silent: [`
lesson weigh-1
  follows weigh-2
lesson weigh-2
  about: Two.
course first
  unit a
    weigh-2
course second
  unit a
    weigh-1
`]
    },
    {
        code: 'circle',
        fires: [`
lesson weigh-1
  follows weigh-3
#         ^^^^^^^ circle: 'weigh-1' follows 'weigh-3' follows 'weigh-2' follows 'weigh-1'
lesson weigh-2
  follows weigh-1
#         ^^^^^^^ circle
lesson weigh-3
  follows weigh-2
#         ^^^^^^^ circle
lesson weigh-4
  follows weigh-4
#         ^^^^^^^ circle: follows itself
objective a-one
  builds on b-two
#           ^^^^^ circle: builds on
objective b-two
  builds on a-one
#           ^^^^^ circle: builds on
lesson weigh-5
  objectives
    introduces a-one, b-two
`],
        silent: [`
lesson weigh-1
  about: One.
lesson weigh-2
  follows weigh-1
lesson weigh-3
  follows weigh-1, weigh-2
lesson weigh-4
  follows weigh-2, weigh-3
`]
    },
    {
        code: 'practised-too-early',
        fires: [`${measuring}
lesson weigh-1
  objectives
    practices compare-mass
#             ^^^^^^^^^^^^ practised-too-early: only later, in 'weigh-2'
lesson weigh-2
  objectives
    introduces compare-mass
    checks compare-mass, estimate-mass
#                        ^^^^^^^^^^^^^ practised-too-early: no lesson of the course
`],
        silent: [`${measuring}
lesson weigh-1
  objectives
    introduces compare-mass, estimate-mass
    practises compare-mass
lesson weigh-2
  objectives
    checks compare-mass, estimate-mass
`, `${measuring}
    weigh-3
#   ^^^^^^^ unknown-name: no lesson 'weigh-3'
lesson weigh-1
  objectives
    practises compare-mass
lesson weigh-2
  objectives
    checks estimate-mass
`, `${measuring}
lesson weigh-1
  objective
# ^^^^^^^^^ unknown-statement
    introduces compare-mass, estimate-mass
lesson weigh-2
  objectives
    checks compare-mass, estimate-mass
`]
    },
    {
        code: 'never-checked',
        fires: [`${measuring}
lesson weigh-1
  objectives
    introduces compare-mass, estimate-mass
#              ^^^^^^^^^^^^ never-checked: no lesson of the course 'measuring' checks it
lesson weigh-2
  objectives
    checks estimate-mass
`],
        silent: [`${measuring}
lesson weigh-1
  objectives
    introduces compare-mass, estimate-mass
    checks compare-mass
lesson weigh-2
  objectives
    introduces compare-mass
    checks estimate-mass
`]
    },
    {
        code: 'builds-on-later',
        fires: [`${measuring}
lesson weigh-1
  objectives
    introduces estimate-mass
#              ^^^^^^^^^^^^^ builds-on-later: builds on 'compare-mass'
lesson weigh-2
  objectives
    introduces compare-mass
    checks compare-mass, estimate-mass
`],
        silent: [`${measuring}
lesson weigh-1
  objectives
    introduces estimate-mass, compare-mass
lesson weigh-2
  objectives
    introduces compare-mass
    checks compare-mass, estimate-mass
`]
    },
    {
        code: 'unused-objective',
        fires: [`
objective compare-mass
#         ^^^^^^^^^^^^ unused-objective: the objective 'compare-mass'
lesson weigh-1
  about: One.
`],
        silent: [`
objective compare-mass
objective estimate-mass
objective order-mass
lesson weigh-1
  about: It prepares {estimate-mass}.
  objectives
    practises compare-mass
    practices compare-mass or order-mass
#                          ^^^^^^^^^^^^^ unfinished-line
`, 'objective compare-mass']
    },
    {
        code: 'word-before-taught',
        fires: [`
course measuring
  unit a
    weigh-1
    weigh-2
lesson weigh-1
  warm-up lift 5 min
    watch: A child says {heavier} or {lighter}.
#                        ^^^^^^^ word-before-taught: in lesson 'weigh-2'
  words lighter
lesson weigh-2
  words heavier, lighter
`],
        silent: [`
course measuring
  unit a
    weigh-1
    weigh-2
course other
  unit a
    weigh-2
    weigh-1
lesson weigh-1
  words heavier
  about: {heavier}
lesson weigh-2
  about: {heavier}
  words heavier
lesson weigh-3
#      ^^^^^^^ lesson-not-taught
  about: {heavier}
`]
    },
    {
        code: 'plain-word-before-taught',
        fires: [`
course measuring
  unit a
    weigh-1
    weigh-2
lesson weigh-1
  warm-up lift 5 min
    do: Say which is heavier.
    say: Now it is
      getting HEAVIER, see, much heavier.
#             ^^^^^^^ plain-word-before-taught: 'heavier' is taught only later
    ask: What is its place value?
#                    ^^^^^^^^^^^ plain-word-before-taught: 'place-value'
      expect: It is heavier.
lesson weigh-2
  words heavier, place-value, values
`],
        silent: [`
course measuring
  unit a
    weigh-1
    weigh-2
lesson weigh-1
  warm-up lift 5 min
    do: Heavier or lighter?
    ask: Is this placed well? Which is the heaviest?
lesson weigh-2
  words heavier, place-value
  activity lift 5 min
    ask: Which is heavier?
`]
    },
    {
        code: 'activity-without-time',
        fires: [`${harbour}
lesson weigh-1
  warm-up lift
#         ^^^^ activity-without-time: How long does 'lift' take
    do: Lift.
  activity two-bags "Two bags"
#          ^^^^^^^^ activity-without-time: meets for 30 min
    do: Lift.
  checkpoint end 5 min
    ask: Which?
`],
        silent: [`${harbour}
lesson weigh-1
  practice say-it 8 items
    name numbers 11 to 20
  activity lift 5 min
    do: Lift.
`, `
course measuring
  unit weighing
    weigh-1
lesson weigh-1
  activity lift
    do: Lift.
`]
    },
    {
        code: 'lesson-too-long',
        fires: [`${harbour}
lesson weigh-1
#      ^^^^^^^ lesson-too-long: takes 35 min and class 'harbour' meets for 30 min, so it goes on
  activity lift 20 min
    do: Lift.
  activity drop 10 min
    do: Drop.
  checkpoint end 5 min
    ask: Which?
`, `${harbour}
adaptation shorter of measuring
  add to weigh-1
# ^^^^^^^^^^^^^^ lesson-too-long: takes 35 min
    activity again 15 min
      do: Again.
lesson weigh-1
  activity lift 20 min
    do: Lift.
`, `${harbour}
adaptation shorter of measuring
  split weigh-1 after lift
  insert visit after weigh-1
  retime visit to 40 min
# ^^^^^^^^^^^^^^^^^^^^^^ lesson-too-long: With this change “Visit” takes 40 min
lesson weigh-1
  activity lift 5 min
    do: Lift.
  activity drop 5 min
    do: Drop.
lesson visit
  activity walk 15 min
    do: Walk.
  activity rest 15 min
    do: Rest.
`],
        silent: [`${harbour}
class attic
  teaches measuring
  learners 2
  starts 2026-09-07
  meets mon
  session 25 min
adaptation short of measuring for harbour
  skip activity weigh-1.drop
adaptation halves of measuring for attic
  split weigh-1 after lift
lesson weigh-1
  activity lift 20 min
    do: Lift.
  activity drop 10 min
    do: Drop.
  checkpoint end 5 min
    ask: Which?
`, `${harbour}
lesson weigh-1
  activity lift 35 min
    do: Lift.
  checkpoint end 5 min
    ask: Which?
`, `${harbour}
adaptation shorter of measuring
  retime weigh-1 to 30 min
lesson weigh-1
  activity lift 20 min
    do: Lift.
  checkpoint end 15 min
    ask: Which?
`]
    },
    {
        code: 'too-few-players',
        fires: [`${market}
class harbour
  teaches measuring
  learners 7
  adults 1
  starts 2026-09-07
  meets mon
game grocer
  players 5
lesson weigh-1
  game grocer 10 min
#      ^^^^^^ too-few-players: 'grocer' is for 5 players. Class 'harbour' has 7 learners, so 3 places at its 2 tables stay empty, and only 1 adult is there to play along.
`, `${market}
class harbour
  teaches measuring
  adults 0
  section early
    learners 4
  section late
    learners 5
  starts 2026-09-07
  meets mon
game grocer
  players 2
lesson weigh-1
  game grocer 10 min
#      ^^^^^^ too-few-players: Section 'late' of class 'harbour' has 5 learners, so 1 place at its 3 tables stays empty, and no adult is there
`],
        silent: [`${market}
# Seven at two tables: an adult takes the place that stays empty.
class harbour
  teaches measuring
  learners 7
  starts 2026-09-07
  meets mon
game grocer
  players 4
lesson weigh-1
  game grocer 10 min
`, `${market}
class harbour
  teaches measuring
  learners 7
  adults 0
  starts 2026-09-07
  meets mon
adaptation calm of measuring for harbour
  skip activity weigh-1.grocer
class hillside
  teaches measuring
  learners 7
  adults 0
  starts 2026-09-07
  meets mon
adaptation away of measuring for hillside
  skip lesson weigh-1
game grocer
  players 5
lesson weigh-1
  game grocer 10 min
  activity lift 5 min
    do: Lift.
`, `${market}
class harbour
  teaches measuring
  learners 7
  adults 0
  starts 2026-09-07
  meets mon
# Turned round, which is told by itself.
game grocer
  players 5 to 3
#         ^^^^^^ turned-round
lesson weigh-1
  game grocer 10 min
`]
    },
    {
        code: 'empty-text',
        fires: [`
lesson weigh-1
  activity lift 5 min
    do:
#   ^^ empty-text: Nothing stands after 'do:'
    ask: What now?
      expect:
#     ^^^^^^ empty-text: Nothing stands after 'expect:'
`, `
material bean
  reusable
  kept in:
# ^^^^^^^ empty-text: Nothing stands after 'kept in:'
lesson weigh-1
  materials
    bean 1
  activity lift 5 min
    do: Lift one {bean}.
`],
        silent: [`
material bean
  reusable
  kept in: hall cupboard, blue box
lesson weigh-1
  materials
    bean 1
  activity lift 5 min
    do:
      Lift one bag.
    say: {bean}
`]
    },
    {
        code: 'class-not-ready',
        fires: [`
course measuring
class harbour
#     ^^^^^^^ class-not-ready: which course it 'teaches', how many 'learners' it has and on which days it 'meets'
  starts 2026-09-07
`],
        silent: [`
course measuring
class harbour
  teaches measuring
  starts 2026-09-07
  meets mon
  section mornings
    learners 3
class attic
  teaches measuring
  starts 2026-09-07
  learner 7
# ^^^^^^^ unknown-statement
`]
    },
    {
        code: 'adaptation-misses',
        fires: [`
course measuring
  unit a
    weigh-1
course other
  unit b
    other-1
class harbour
  teaches other
  learners 2
  starts 2026-09-07
  meets mon
lesson weigh-1
  about: One.
lesson other-1
  about: Two.
adaptation shorter of measuring for harbour
#                     ^^^^^^^^^ adaptation-misses: is taught 'other'
  move weigh-1 after other-1
#                    ^^^^^^^ adaptation-misses: The course “Measuring” does not teach “Other 1”, so this changes nothing.
`, `
course measuring
  unit a
    weigh-1
    weigh-2
lesson weigh-1
  activity lift 5 min
    do: Lift.
  activity drop
    do: Drop.
lesson weigh-2
  about: Two.
lesson visit
#      ^^^^^ lesson-not-taught
  activity walk 5 min
    do: Walk.
material rice
#        ^^^^ unused-thing
  consumable
  stand-in bean 1 for 1
material bean
  consumable
adaptation shorter of measuring
  skip lesson weigh-2
  skip lesson weigh-2
#             ^^^^^^^ adaptation-misses: Another change already leaves out “Weigh 2”, so this changes nothing.
  move weigh-1 after weigh-2
#                    ^^^^^^^ adaptation-misses: Another change already leaves out “Weigh 2”
  move weigh-1 after weigh-1
# ^^^^^^^^^^^^^^^^^^^^^^^^^^ adaptation-misses: A lesson cannot stand beside itself
  split weigh-1 after drop
# ^^^^^^^^^^^^^^^^^^^^^^^^ adaptation-misses: “Drop” is the last part: nothing comes after it
  split activity weigh-1.lift after 5 min
# ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ adaptation-misses: “Lift” takes only 5 min
  split activity weigh-1.drop after 5 min
# ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ adaptation-misses: “Drop” says no minutes
  join weigh-1 with weigh-1
#                   ^^^^^^^ adaptation-misses: A lesson cannot be joined with itself
  insert weigh-1 after weigh-1
#        ^^^^^^^ adaptation-misses: The course teaches “Weigh 1” already
  retime weigh-1 to 5 min
# ^^^^^^^^^^^^^^^^^^^^^^^ adaptation-misses: “Weigh 1” takes 5 min already
  retime weigh-1 to 0 min
# ^^^^^^^^^^^^^^^^^^^^^^^ adaptation-misses: Time is given in whole minutes, at least one
  swap rice for bean
# ^^^^^^^^^^^^^^^^^^ adaptation-misses: No lesson of the course uses rice
  skip activity visit.walk
#               ^^^^^ adaptation-misses: The course “Measuring” does not teach “Visit”
  skip activity weigh-1.fly
#                       ^^^ unknown-name
  skip lesson weigh-9
#             ^^^^^^^ unknown-name
`],
        silent: [`
course measuring
  unit a
    weigh-1
lesson weigh-1
  about: One.
material rice
  consumable
material bean
  consumable
adaptation shorter of measuring
  swap rice for bean
  skip lesson weigh-1 because: {weigh-1} is known.
`.replace('lesson weigh-1\n  about: One.', 'lesson weigh-1\n  materials\n    rice 1 per pair')]
    },
    {
        code: 'adaptation-empties',
        fires: [`
course measuring
  unit a
    weigh-1
    weigh-2
lesson weigh-1
  activity lift 5 min
    do: Lift.
  activity drop 5 min
    do: Drop.
lesson weigh-2
  activity walk 5 min
    do: Walk.
adaptation shorter of measuring
  skip activity weigh-1.drop
  skip activity weigh-1.lift because: It is too heavy.
# ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ adaptation-empties: Nothing is left of “Weigh 1”: it still has its meeting, with nothing to do. Leave out the whole lesson, or keep one of its parts.
adaptation other of measuring
  move activity weigh-2.walk after weigh-2.walk
# ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ adaptation-misses
`],
        silent: [`
course measuring
  unit a
    weigh-1
    weigh-2
lesson weigh-1
  activity lift 5 min
    do: Lift.
  activity drop 5 min
    do: Drop.
lesson weigh-2
  about: Nothing is written yet.
adaptation shorter of measuring
  skip activity weigh-1.drop
  move weigh-2 before weigh-1
`]
    }
];

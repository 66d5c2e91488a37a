import type { Case } from './case.js';

/** A course with one kit, for the in-kit flags. */
const kit = `
material pan-balance
  reusable
material scarf
  reusable
kit field-kit
  holds
    pan-balance 1
course measuring
  uses field-kit 1 per family
  unit weighing
    weigh-1`;

export const thingCases: Case[] = [
    {
        code: 'declared-twice',
        fires: [`
--- a.kit
material gram-cube
  reusable
--- b.kit
material gram-cube
#        ^^^^^^^^^ declared-twice: another material 'gram-cube'
  reusable
`, `
material place-card
  reusable
  parts ones, tens, ones
#                   ^^^^ declared-twice: named the part 'ones' before

lesson weigh-1
  not needed place-card
  activity lift 5 min
    do: Lift.
  practice lift 5 min
#          ^^^^ declared-twice: another part 'lift'
    do: Lift again.

course measuring
  unit weighing
    weigh-1
  unit weighing
#      ^^^^^^^^ declared-twice: another unit 'weighing'

class harbour
  teaches measuring
  starts 2026-09-07
  meets mon
  section mornings
    learners 3
  section mornings
#         ^^^^^^^^ declared-twice: another section 'mornings'
    learners 4
`],
        silent: [`
material grocer
  reusable
game grocer
  materials
    grocer 1

lesson grocer
  activity grocer 5 min
    do: Sell.
  game grocer 5 min
  game grocer 5 min
`]
    },
    {
        code: 'missing-use',
        fires: [`
material gram-cube
#        ^^^^^^^^^ missing-use: handed back or used up
  measured in g
`],
        silent: [`
material gram-cube
  consumabel
# ^^^^^^^^^^ unknown-statement: did you mean 'consumable'

material pan-balance
  its word was forgotten
# ^^^ unknown-statement
`]
    },
    {
        code: 'missing-amount',
        fires: [`
material pan-balance
  reusable
material card
  reusable
  counted in set / sets
kit field-kit
  holds
    pan-balance
#   ^^^^^^^^^^^ missing-amount: How many 'pan-balance' does field-kit hold
lesson weigh-1
  materials
    card or pan-balance
#   ^^^^ missing-amount: Lesson weigh-1 needs 'card'
`],
        silent: [`
material pan-balance
  reusable
material dried-bean
  consumable
  measured in g
lesson weigh-1
  materials
    pan-balance 1
    dried-bean 1/2 kg per class
`]
    },
    {
        code: 'unknown-unit',
        fires: [`
material card
  reusable
  counted in set / sets
  size 10 x 10 mn
#              ^^ unknown-unit: did you mean 'mm'
lesson weigh-1
  materials
    card 2 setts per pair
#        ^^^^^^^ unknown-unit: did you mean 'sets'
`, `
material gram-cube
  reusable
lesson weigh-1
  materials
    gram-cube 20 pieces per pair
#             ^^^^^^^^^ unknown-unit: counted in pieces
`],
        silent: [`
material card
  reusable
  counted in set / sets
material dried-bean
  consumable
  measured in g
print sheet-1
  pages 2
lesson weigh-1
  materials
    card 2 Sets per pair
#          ^^^^ name-spelling: write 'sets'
    dried-bean 2 pounds
    sheet-1 2 copies per learner
`]
    },
    {
        code: 'wrong-unit',
        fires: [`
material dried-bean
  consumable
  measured in g
  pack of 2 cups
#         ^^^^^^ wrong-unit: measured in g, and 2 cups cannot be turned into that
material paper-cup
  consumable
  counted in tower / towers
class harbour
  on hand
    dried-bean 1 l
#              ^^^ wrong-unit: Give the amount in g
    paper-cup 2 kg
#             ^^^^ wrong-unit: counted in towers
course measuring
class other
  teaches measuring
  learners 2
  starts 2026-09-07
  meets mon
class harbour-2
  teaches measuring
  learners 2
  starts 2026-09-07
  meets mon
`.replace('class harbour\n', 'class harbour\n  teaches measuring\n  learners 2\n  starts 2026-09-07\n  meets mon\n'), `
material string
  consumable
  pack of 20 m
#         ^^^^ wrong-unit: say that it is measured in m
lesson tie
  materials
    string 50 cm per pair
`],
        silent: [`
material dried-bean
  consumable
  measured in g
  pack of 2 lb
material juice
  consumable
  measured in l
  pack of 10 fl oz
lesson weigh-1
  materials
    dried-bean 1/4 kg per pair
    juice 2 cups
`, `
material dried-bean
  consumable
  measured with g
# ^^^^^^^^^^^^^^^ unfinished-line
lesson weigh-1
  materials
    dried-bean 1/4 kg per pair
`.replace('# ^^^^^^^^^^^^^^^', '#          ^^^^^^')]
    },
    {
        code: 'missing-unit',
        fires: [`
material card-sheet
  consumable
  measured in sheet
lesson weigh-1
  materials
    card-sheet 2 per pair
#              ^ missing-unit: measured in sheet: 2 of what
`],
        silent: [`
material card-sheet
  consumable
  measured in sheet
material place-card
  reusable
  counted in set / sets
lesson weigh-1
  materials
    card-sheet 2 sheets per pair
    place-card 1 per pair
`]
    },
    {
        code: 'price-not-in-coins',
        fires: [`
material rice
  consumable
  pack of 500 costs 14.505 USD
#                   ^^^^^^^^^^ price-not-in-coins: USD has 2 decimals
  delivery costs 450.5 JPY
#                ^^^^^^^^^ price-not-in-coins: JPY has no decimals
book atlas
  costs 0.9996 KWD
#       ^^^^^^^^^^ price-not-in-coins: KWD has 3 decimals
`],
        silent: [`
material rice
  consumable
  pack of 500 costs 14.5 USD
  pack of 1000 costs 20.000 USD
  delivery costs 450.0 JPY
book atlas
  costs 0.999 KWD
`]
    },
    {
        code: 'impossible-number',
        fires: [`
material rice
  consumable
  pack of 0
#         ^ impossible-number: 0 of 'rice' is nothing
  loss 100%
#      ^^^^ impossible-number: leaves nothing
  stand-in lentil 0 for 1
# ^^^^^^^^^^^^^^^^^^^^^^^ impossible-number: Neither number can be 0
material lentil
  consumable
print record-sheet
#     ^^^^^^^^^^^^ unused-thing
#     ^^^^^^^^^^^^ impossible-number: at least one page
  pages 0
game grocer
  players 0 to 4
#         ^^^^^^ impossible-number: at least one player
course measuring
  uses box 1 per 0 learners
# ^^^^^^^^^^^^^^^^^^^^^^^^^ impossible-number: How many of 'box'
  unit weighing
    weigh-1
kit box
  holds
    rice 1/0
#        ^^^ impossible-number: nothing can be divided by 0
    lentil 1
class harbour
#     ^^^^^^^ impossible-number: children in a group
  teaches measuring
  learners 7.5
#          ^^^ impossible-number: no part of one
  groups of 0
  starts 2026-09-07
  meets mon
  session 0 min
#         ^ impossible-number: at least a minute
  catch-up 1 day every 0 lessons
#          ^^^^^^^^^^^^^^^^^^^^^ impossible-number: from 1 up
lesson weigh-1
  materials
    rice 0 per group of 0 in kit
#        ^ impossible-number: or remove the line
#   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ impossible-number: at least one child
  game grocer 0 min
#      ^^^^^^ impossible-number: no time at all
  practice say-it 0 items
#          ^^^^^^ impossible-number: no items
    do: Say {rice}.
`, `
course measuring
class harbour
#     ^^^^^^^ impossible-number: no section of 'harbour' has any
  teaches measuring
  section early
#         ^^^^^ impossible-number: 'early' meets at 25:10
    learners 0
    at 25:10
  starts 2026-09-07
  meets mon
`],
        silent: [`
material rice
  consumable
  loss 99.9%
  spare 150%
course measuring
class harbour
  teaches measuring
  learners 1
  adults 0
  starts 2026-09-07
  meets mon
  on hand
    rice 0
lesson weigh-1
  materials
    rice 0.01
`.replace('lesson weigh-1', '# one\nlesson weigh-1').replace('course measuring\n', 'course measuring\n  unit u\n    weigh-1\n')]
    },
    {
        code: 'turned-round',
        fires: [`
material hot-glue
  reusable
  ages 9 to 6
#      ^^^^^^ turned-round: write '6 to 9'
game grocer
  players 4 to 2
#         ^^^^^^ turned-round: write '2 to 4'
course measuring
class harbour
  teaches measuring
  learners 2
  starts 2026-09-07
  meets mon
  off 2026-11-27 to 2026-11-23 "Rest"
#     ^^^^^^^^^^^^^^^^^^^^^^^^ turned-round: write '2026-11-23 to 2026-11-27'
`, `
course measuring
class harbour
  teaches measuring
  learners 2
  starts 2026-12-18
  meets mon
  ends 2026-09-07
#      ^^^^^^^^^^ turned-round: The class ends on 2026-09-07, before it starts on 2026-12-18
`, `
lesson say
  practice say-it 8 items
    name numbers 99 to 11
#   ^^^^^^^^^^^^^^^^^^^^^ turned-round: write 'name numbers 11 to 99'
`],
        silent: [`
material hot-glue
  reusable
  ages 6 and up
game grocer
  players 4
course measuring
class harbour
  teaches measuring
  learners 2
  ages 6 to 6
  starts 2026-09-07
  meets mon
  ends 2026-09-07
  off 2026-11-27 to 2026-11-27
`]
    },
    {
        code: 'no-such-date',
        fires: [`
material rice
  consumable
course measuring
class harbour
  teaches measuring
  learners 2
  starts 2027-02-29
#        ^^^^^^^^^^ no-such-date: was 2027-02-28 meant
  meets mon
  off 2026-13-05
#     ^^^^^^^^^^ no-such-date: was 2026-05-13 meant
  off 2026-11-23 to 2026-00-27
#                   ^^^^^^^^^^ no-such-date: There is no 2026-00-27
  on order
    rice 2 arriving 2026-04-31
#                   ^^^^^^^^^^ no-such-date: was 2026-04-30 meant
`],
        // ISO 8601 dates follow the Gregorian calendar: 2000 and 2028 are leap years, 1900 was none.
        silent: [`
course measuring
class harbour
  teaches measuring
  learners 2
  starts 2028-02-29
  meets mon
  off 2000-02-29 to 2026-12-31
`]
    },
    {
        code: 'unused-thing',
        fires: [`
--- a.kit
material funnel
#        ^^^^^^ unused-thing: the material 'funnel'
  reusable
print form
#     ^^^^ unused-thing: the print 'form'
book table-games
#    ^^^^^^^^^^^ unused-thing: the book 'table-games'
game grocer
#    ^^^^^^ unused-thing: No lesson plays
kit chest
#   ^^^^^ unused-thing: the kit 'chest'
  holds
    funnel 1
--- b.course
course measuring
  unit weighing
    weigh-1
lesson weigh-1
  about: Nothing is needed.
`],
        silent: [`
material funnel
  reusable
`, `
material funnel
  reusable
material tray
  reusable
material cloth
  reusable
game grocer
lesson weigh-1
  activity lift 5 min
    do: Lift.
course measuring
  unit weighing
    weigh-1
adaptation more of measuring
  add to weigh-1
    materials
      tray 1
    note: Have the {tray} ready.
    activity pour 5 min
      do: Pour on a {cloth}.
      materials
        cloth 1
    game grocer 5 min
  add to activity weigh-1.lift
    materials
      funnel 1
    do: Use the {funnel}.
`, `
--- a.kit
material rice
  consumable
  stand-in lentil 1 for 1
material lentil
  consumable
material funnel
  reusable
material doll
  reusable
book table-games
game grocer
  found in table-games
kit chest
  holds
    doll 1
--- b.course
lesson weigh-1
  materials
    rice 1 per pair
  not needed funnel
  game grocer 5 min
    do: Sell {rice} with the doll
lesson weigh-2
  activity play 5 min
    play with the doll
#   ^^^^ unknown-statement
`]
    },
    {
        code: 'kit-flag-wrong',
        fires: [`${kit}
lesson weigh-1
  materials
    pan-balance 1 per pair not in kit optional
#                          ^^^^^^^^^^ kit-flag-wrong: write 'in kit'
    scarf 1 per pair in kit
#                    ^^^^^^ kit-flag-wrong: write 'not in kit'
`, `${kit}
game weigh-game
  materials
    scarf 1 per group in kit
#                     ^^^^^^ kit-flag-wrong: 'scarf' is not in 'field-kit'
lesson weigh-1
  materials
    pan-balance 1 per pair in kit
  game weigh-game 10 min
    do: Use the {pan-balance}.
`],
        silent: [`${kit}
lesson weigh-1
  materials
    pan-balance or scarf 1 per pair in kit
    scarf or pan-balance 1 per pair not in kit
lesson weigh-2
  draft
  materials
    scarf 1 per pair in kit
`.replace('    weigh-1\nlesson', '    weigh-1\n    weigh-0\nlesson').replace('lesson weigh-2', 'lesson weigh-0\n  about: Ready.\nlesson weigh-2').replace('lesson weigh-2\n', 'lesson weigh-2\n#      ^^^^^^^ lesson-not-taught: in no course\n'), `${kit}
lesson weigh-1
  materials
    pan-balance 1 per pair in kit
    scarf 1 per pair in kit
kit other
  that holds the scarf
# ^^^^ unknown-statement
`.replace('kit other', 'kit other\n#   ^^^^^ unused-thing: uses the kit')]
    },
    {
        code: 'kit-flag-missing',
        fires: [`${kit}
lesson weigh-1
  materials
    pan-balance 1 per pair optional
#   ^^^^^^^^^^^ kit-flag-missing: say so with 'in kit'
    scarf 1 per pair
#   ^^^^^ kit-flag-missing: say so with 'not in kit'
`, `${kit.replace('1 per family', '1 per family\n  uses field-kit 1 in all')}
lesson weigh-1
  materials
    pan-balance 1 per pair in kit
    scarf 1 per pair
#   ^^^^^ kit-flag-missing: 'scarf' is not in 'field-kit': say so
`],
        silent: [`${kit}
print form
book tales
lesson weigh-1
  materials
    form 1 per learner
    tales 1 per class
    pan-balance or scarf 1 per pair
`]
    },
    {
        code: 'wrong-edition',
        fires: [`
book table-games edition 3
game grocer
  found in table-games edition 2, number 12
#                              ^ wrong-edition: edition 3 is on the shelf
`],
        silent: [`
book table-games edition 3
book more-games
game grocer
  found in table-games edition 3
game baker
  found in table-games, number 2
game miller
  found in more-games edition 1
`]
    }
];

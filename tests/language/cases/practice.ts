import type { Case } from './case.js';

/** What a practice cannot ask for, and what it does not say. */
export const practiceCases: Case[] = [
    {
        code: 'impossible-practice',
        fires: [`
lesson cards
  practice lay 12 items
#              ^^ impossible-practice: 12 items of 'arrange digits of 481': there are only 5 besides 481 itself.
    arrange digits of 481
`, `
lesson cards
  practice lay 30 items 5 min
#              ^^ impossible-practice: 30 items of these lines: there are only 21.
    name numbers 11 to 20
    bonds of 10
  practice one 2 items
#              ^ impossible-practice: 2 items of 'name numbers 7 to 7': there is only 1.
    name numbers 7 to 7
`, `
lesson cards
  practice lay 10000 items
#              ^^^^^ impossible-practice: at most 200 items, and 10000 are asked for
    sums 0 to 100000
`, `
lesson cards
  practice lay 12 items
#              ^^ impossible-practice: there are only 4, enough for 5 with what returns.
    bonds of 3
    return to 1 and 2
`, `
lesson odd
  practice lay 4 items
    sums 1.5 to 20
#   ^^^^^^^^^^^^^^ impossible-practice: 1.5 is none
    sums 2 to 1000000
#   ^^^^^^^^^^^^^^^^^ impossible-practice: 'sums' goes from 0 to 999999, and 1000000 lies outside.
    fives and tens 0 to 8
#   ^^^^^^^^^^^^^^^^^^^^^ impossible-practice: goes from 1 to 100, and 0 lies outside
    arrange digits of 7
#   ^^^^^^^^^^^^^^^^^^^ impossible-practice: 7 has only one digit
    arrange digits of 100
#   ^^^^^^^^^^^^^^^^^^^^^ impossible-practice: its digits make no other number
    sums 0 to 1
#   ^^^^^^^^^^^ impossible-practice: a sum is made of two numbers from 1 up
    differences 5 to 5
#   ^^^^^^^^^^^^^^^^^^ impossible-practice: something has to be taken away
    doubles 1 to 500000
#   ^^^^^^^^^^^^^^^^^^^ impossible-practice: 'doubles' goes from 1 to 499999, and 500000 lies outside.
    halves 0 to 20
#   ^^^^^^^^^^^^^^ impossible-practice: 'halves' goes from 2 to 999999, and 0 lies outside.
    halves 7 to 7
#   ^^^^^^^^^^^^^ impossible-practice: only an even number has a half that is whole
    compare numbers 5 to 5
#   ^^^^^^^^^^^^^^^^^^^^^^ impossible-practice: two different numbers are compared
    return to 6.5
#   ^^^^^^^^^^^^^ impossible-practice: 6.5 is none
`, `
lesson alone
  practice lay 4 items
    return to 67
#   ^^^^^^^^^^^^ impossible-practice: needs something to come back between
  practice lie 4 items
    name numbers 11 to 20
    return to 67
#   ^^^^^^^^^^^^ impossible-practice: 67 is not asked for in 'name numbers 11 to 20', so it cannot come back
    return to 7 and 8
#   ^^^^^^^^^^^^^^^^^ impossible-practice: no line of this practice asks for two. Add a line such as 'sums 2 to 20'
  practice sit 4 items
    sums 2 to 20
    return to 17 and 8
#   ^^^^^^^^^^^^^^^^^^ impossible-practice: 17 and 8 are not asked for in 'sums 2 to 20', so they cannot come back
    return to 7
#   ^^^^^^^^^^^ impossible-practice: Write both, as in 'return to 7 and 8'
  practice run 1 items
    fives and tens 8 to 8
    return to 8
#   ^^^^^^^^^^^ impossible-practice: Nothing is left to come between: 'fives and tens 8 to 8' has only one item
`, `
course measuring
  unit weighing
    cards
lesson cards
  activity lay 5 min
    do: Lay the cards.
adaptation more of measuring
  add to cards
    practice lay 12 items
#                ^^ impossible-practice: there are only 5 besides 481 itself
      arrange digits of 481
`],
        silent: [`
lesson cards
  practice lay 5 items
    arrange digits of 481
  practice all 200 items 10 min
    sums 0 to 999999
    differences 0 to 999999
    return to 7 and 8
  practice usual
    name numbers 0 to 999999 in places
    write numbers 11 to 20 from words
    digits and words 20 to 999
    fives and tens 1 to 100
    missing parts 5 to 20
    compare numbers 0 to 1
    return to 12
`, `
lesson returning
  practice some 5 items
    bonds of 3
    return to 1 and 2
  practice taken 10 items
    differences 0 to 20
    return to 15 and 7
  practice twice 10 items
    doubles 1 to 10
    halves 2 to 21
    return to 7
`]
    },
    {
        code: 'practice-without-items',
        fires: [`
lesson cards
  practice lay 8 items
#          ^^^ practice-without-items: 'lay' asks for 8 items and does not say of what
    do: Lay the cards.
`],
        silent: [`
lesson cards
  practice lay 5 min
    do: Lay the cards again.
`, `
lesson cards
  practice lay 8 items
    nane nunbers 11 to 20
#   ^^^^ unknown-statement
`]
    }
];

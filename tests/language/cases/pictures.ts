import type { Case } from './case.js';

const inPart = (lines: string): string => `
lesson jumps
  activity jump 5 min
    do: How many are there?
${lines}`;

export const pictureCases: Case[] = [
    {
        code: 'impossible-picture',
        fires: [
            inPart(`    show ten-frame 23
#                  ^^ impossible-picture: A ten-frame holds 0 to 20; 23 does not fit. Write: show base-ten 23
    show ten-frames 8
#        ^^^^^^^^^^ impossible-picture: did you mean 'ten-frame'?
    show rainbow 8
#        ^^^^^^^ impossible-picture: Pictures are ten-frame, number-line
    show ten-frame
#        ^^^^^^^^^ impossible-picture: How many does the ten-frame show?
    show ten-frame 8 and 3
#                    ^^^^^ impossible-picture: 'and 3' is too much here
    show ten-frame 7.5 "Seven"
#                  ^^^ impossible-picture: no whole number
`), inPart(`    show number-line 20 to 0
#                          ^ impossible-picture: turned round
    show number-line 0 20
#                      ^^ impossible-picture: Where does the line begin and end?
    show number-line 0 to 20 by 3
#                               ^ impossible-picture: Steps of 3 from 0 do not end at 20
    show number-line 0 to 100 by 1
#                                ^ impossible-picture: are 100 steps, more than can be read
    show number-line 0 to 20 mark 7, 25
#                                    ^^ impossible-picture: does not lie on a line from 0 to 20
    show number-line 0 to 47
#                         ^^ impossible-picture: cannot be divided into equal steps
    show number-line 0 to 1 by 1/4
#                              ^^^ impossible-picture: write 0.25 for 1/4
`), inPart(`    show bead-string 13 of 15
#                          ^^ impossible-picture: 10, 20 or 100 beads, not 15
    show place-cards 0
#                    ^ impossible-picture: an empty place has no card
    show base-ten 2005
#                 ^^^^ impossible-picture: Write: show place-cards 2005
    show tally 51
#              ^^ impossible-picture: 0 to 50 strokes
    show balance 12 7
#                   ^ impossible-picture: What lies on the other side?
    show balance 60 plus 50 and 1
#                        ^^ impossible-picture: 60 plus 50 is 110
    show fraction-bar 5/4
#                     ^^^ impossible-picture: Show it as 4/4 and 1/4
    show fraction-bar 3/0
#                     ^^^ impossible-picture: no parts
    show clock 24:00
#              ^^^^^ impossible-picture: write it as 0:00
    show clock 9:75
#              ^^^^ impossible-picture: the minutes go from 00 to 59
    show array 15 by 8
#              ^^ impossible-picture: Turned round it fits: show array 8 by 15
`), `
game jump
  show clock 9
#            ^ impossible-picture: What time does the clock show?

lesson jumps
  game jump 5 min
`],
        silent: [inPart(`    show ten-frame 0
    show ten-frame 20 "Twenty"
    show number-line 0 to 20
    show number-line 0 to 1 by 0.1 mark 0.35
    show number-line 0 to 40 by 1 mark 7, 12 and 40
    show bead-string 13 of 20
    show bead-string 100
    show place-cards 9999
    show base-ten 1999
    show tally 0
    show balance 12 and 7 plus 5
    show fraction-bar 3/4
    show fraction-bar 1/2, 1/3 and 1/4
    show clock 0:00
    show clock 23:59
    show array 12 by 20
`)]
    }
];

/** What is said of pictures that cannot be drawn and of practice that cannot be made, each with its mends. */
import { expect, test } from 'vitest';
import { toldOf } from './telling.js';

const shows = (...lines: string[]): string => `lesson l-1\n  activity a 5 min\n    do: Look.\n${lines.map(line => `    show ${line}\n`).join('')}`;
test.each<[string, string, string]>([
    ['all of the line is written anew, its first word to its last number', shows('ten-frame 23', 'bead-string 13 of 15', 'array 15 by 8 "Rows"'), `'23' (4): A ten-frame holds 0 to 20; 23 does not fit. Write: show base-ten 23
  mend*: Change to 'base-ten 23'
    |     do: Look.
    -     show ten-frame 23
    +     show base-ten 23
'15' (5): A bead string has 10, 20 or 100 beads, not 15.
  mend*: Change to 'bead-string 13 of 20'
    |     show ten-frame 23
    -     show bead-string 13 of 15
    +     show bead-string 13 of 20
'15' (6): An array has up to 12 rows; 15 are too many. Turned round it fits: show array 8 by 15
  mend*: Change to 'array 8 by 15'
    |     show bead-string 13 of 15
    -     show array 15 by 8 "Rows"
    +     show array 8 by 15 "Rows"`],
    ['a kind that nearly has the name; no kind at all', shows('ten-frames 8', 'rainbow 8'), `'ten-frames' (4): There is no picture 'ten-frames'; did you mean 'ten-frame'?
  mend*: Change to 'ten-frame'
    |     do: Look.
    -     show ten-frames 8
    +     show ten-frame 8
'rainbow' (5): There is no picture 'rainbow'. Pictures are ten-frame, number-line, bead-string, place-cards, base-ten, tally, balance, fraction-bar, clock, array.`],
    ['nothing behind the kind', shows('ten-frame'), `'ten-frame' (4): How many does the ten-frame show? Write a whole number from 0 to 20, as in: show ten-frame 8`],
    ['in a game and in what is added', 'game grocer\n  do: Look.\n  show tally 51\ncourse c\n  unit u\n    l-1\nlesson l-1\n  activity a 5 min\n    do: A.\nadaptation b of c\n  add to activity l-1.a\n    show tally 52\n', `'52' (12): A tally has 0 to 50 strokes; 52 are more than can be read. Write: show base-ten 52
  mend*: Change to 'base-ten 52'
    |   add to activity l-1.a
    -     show tally 52
    +     show base-ten 52
'51' (3): A tally has 0 to 50 strokes; 51 are more than can be read. Write: show base-ten 51
  mend*: Change to 'base-ten 51'
    |   do: Look.
    -   show tally 51
    +   show base-ten 51`]
])('a picture: %s', async (_, text, told) => expect(await toldOf('impossible-picture', text)).toBe(told));

const asks = (items: string, ...lines: string[]): string => `lesson l-1\n  practice p ${items}\n${lines.map(line => `    ${line}\n`).join('')}`;
test.each<[string, string, string]>([
    // 3! - 1 other arrangements of 481; 11 to 20 are ten numbers, the bonds of 10 eleven pairs from 0 + 10 to 10 + 0.
    ['481 has 5 other arrangements', asks('12 items', 'arrange digits of 481'), `'12' (2): 12 items of 'arrange digits of 481': there are only 5 besides 481 itself.
  mend*: Ask for 5 items
    | lesson l-1
    -   practice p 12 items
    +   practice p 5 items`],
    ['ten and eleven', asks('30 items', 'name numbers 11 to 20', 'bonds of 10'), `'30' (2): 30 items of these lines: there are only 21.
  mend*: Ask for 21 items
    | lesson l-1
    -   practice p 30 items
    +   practice p 21 items`],
    ['just as many as there are', asks('5 items', 'arrange digits of 481'), ''],
    ['one', asks('2 items', 'name numbers 7 to 7'), `'2' (2): 2 items of 'name numbers 7 to 7': there is only 1.
  mend*: Ask for 1 item
    | lesson l-1
    -   practice p 2 items
    +   practice p 1 items`],
    ['200 at most', asks('201 items', 'sums 0 to 100000'), `'201' (2): A practice has at most 200 items, and 201 are asked for. Ask for fewer; 'haversack practice' writes more when they are wanted.
  mend*: Ask for 200 items
    | lesson l-1
    -   practice p 201 items
    +   practice p 200 items`],
    ['200', asks('200 items', 'sums 0 to 100000'), ''],
    ['a part of an item has its own message', asks('7.5 items', 'bonds of 3'), ''],
    ['a line that is wrong is mended first', asks('30 items', 'name numbers 11 to 20', 'sums 1.5 to 20'), `'sums 1.5 to 20' (4): Practice is with whole numbers, and 1.5 is none: write a whole number, as in 'sums 2 to 20'.
  mend*: Change to 'sums 2 to 20'
    |     name numbers 11 to 20
    -     sums 1.5 to 20
    +     sums 2 to 20`],
    ['what is brought back, alone, of two numbers, not asked for', asks('4 items', 'return to 67') + asks('4 items', 'name numbers 11 to 20', 'return to 7 and 8', 'return to 67').replace('practice p', 'practice q').replace('lesson l-1\n', ''), `'return to 67' (3): 'return to 67' needs something to come back between: write what else is practised, such as 'name numbers 11 to 99'.
  mend*: Add 'name numbers 11 to 99'
    |     return to 67
    +     name numbers 11 to 99
  mend: Remove 'return to 67'
    |   practice p 4 items
    -     return to 67
'return to 7 and 8' (6): 'return to 7 and 8' comes back to two numbers, as in a sum, but no line of this practice asks for two. Add a line such as 'sums 2 to 20'.
  mend*: Add 'sums 2 to 20'
    |     return to 7 and 8
    +     sums 2 to 20
  mend: Remove 'return to 7 and 8'
    |     name numbers 11 to 20
    -     return to 7 and 8
'return to 67' (7): 67 is not asked for in 'name numbers 11 to 20', so it cannot come back. Return to what is practised, or practise more.
  mend*: Change to 'name numbers 11 to 67'
    |   practice q 4 items
    -     name numbers 11 to 20
    +     name numbers 11 to 67
  mend: Remove 'return to 67'
    |     return to 7 and 8
    -     return to 67`],
    ['none is asked for without a number of items', asks('5 min', 'arrange digits of 481'), '']
])('items: %s', async (_, text, told) => expect(await toldOf('impossible-practice', text)).toBe(told));

test.each<[string, string, string]>([
    ['eight', asks('8 items', 'do: Say.'), `'p' (2): 'p' asks for 8 items and does not say of what. Write a line such as 'name numbers 11 to 99' under it.
  mend: Add 'name numbers 11 to 99'
    |   practice p 8 items
    +     name numbers 11 to 99
  mend: Add 'sums 2 to 20'
    |   practice p 8 items
    +     sums 2 to 20`],
    ['one', asks('1 items', 'do: Say.'), `'p' (2): 'p' asks for 1 item and does not say of what. Write a line such as 'name numbers 11 to 99' under it.
  mend: Add 'name numbers 11 to 99'
    |   practice p 1 items
    +     name numbers 11 to 99
  mend: Add 'sums 2 to 20'
    |   practice p 1 items
    +     sums 2 to 20`],
    ['none', asks('0 items', 'do: Say.'), ''],
    ['a line that cannot be read may say it, in it or right under it', asks('8 items', 'naem numbers 11 to 99'), ''],
    ['not a line of the next part but one', `${asks('8 items', 'do: Say.')}  activity b\n    do: Go.\n    dp: Go on.\n`, `'p' (2): 'p' asks for 8 items and does not say of what. Write a line such as 'name numbers 11 to 99' under it.
  mend: Add 'name numbers 11 to 99'
    |   practice p 8 items
    +     name numbers 11 to 99
  mend: Add 'sums 2 to 20'
    |   practice p 8 items
    +     sums 2 to 20`]
])('items of what: %s', async (_, text, told) => expect(await toldOf('practice-without-items', text)).toBe(told));

/** Lines to look at and to measure: each kind at its least, its greatest and where something changes. */
export const pictureSamples: Readonly<Record<string, readonly string[]>> = {
    'ten-frame': ['0', '1', '5', '6', '8', '10', '11', '16', '20'],
    'number-line': [
        '0 to 20', '0 to 20 by 5 mark 7, 12', '0 to 10 mark 3', '0 to 100', '0 to 100 by 10 mark 64', '0 to 1 by 0.1 mark 0.35', '0 to 40 by 1 mark 39, 40',
        '9990 to 10000', '0 to 10000 by 250', '7 to 37 by 1', '0 to 2 by 0.25 mark 0.5, 1.75', '0.05 to 0.45 by 0.05', '0 to 20 mark 5, 6, 7, 8, 9, 10, 11, 12',
        '0 to 10000 mark 0, 9998, 9999, 10000', '0 to 20 mark 0, 1, 2, 19, 20'
    ],
    'bead-string': ['0 of 10', '7', '10', '13 of 20', '20', '20 of 100', '64 of 100', '100'],
    'place-cards': ['7', '40', '143', '205', '1000', '2050', '4326', '9999'],
    'base-ten': ['1', '9', '10', '37', '42', '99', '100', '143', '507', '999', '1000', '1999'],
    tally: ['0', '1', '4', '5', '8', '10', '13', '27', '50'],
    balance: ['12 and 7 plus 5', '8 and 5 plus 2', '1 and 100', '99 and 100', '3 plus 4 plus 5 and 12', `${'5 plus '.repeat(19)}5 and 100`, '2 plus 3 plus 4 plus 5 plus 6 plus 7 and 1'],
    'fraction-bar': ['1/2', '3/4 and 6/8', '1/3, 2/6 and 4/12', '0/5', '1/1', '23/24', '24/24 and 5/7'],
    clock: ['9:30', '12:00', '3:00', '6:00', '14:45', '0:05', '11:59', '1:07', '10:10'],
    array: ['1 by 1', '3 by 4', '6 by 8', '5 by 5', '1 by 20', '12 by 20', '12 by 1']
};

import type { CautionFigures, LessonFigures, PartFigures } from '@haversack/server/planning/figures';
import { figure, place, prose, step } from './fixture-tools.js';

const file = 'weighing.lesson';

/** A part with nothing in it but what is given. */
function part(kind: PartFigures['kind'], name: string, title: string, line: number, more: Partial<PartFigures> = {}): PartFigures {
    return { kind, name, title, steps: [], cautions: [], needs: [], place: place(file, line), ...more };
}

export function firstLesson(beanCaution: CautionFigures): LessonFigures {
    return {
        name: 'weigh-1', title: 'Which is heavier?', place: place(file, 0), draft: false, meeting: 'Mon 21 Sep', date: '2026-09-21', piece: { number: 1, of: 2 }, minutes: 50, minutesIncomplete: false,
        aim: [prose('Children compare two masses by feel and then let the *{balance}* decide.')],
        steps: [
            step('about', 'Children compare two masses by feel and then let the *{balance}* decide.', 1),
            step('note', 'Before class:\n- level the tables\n- fill one bag with {dried-bean}s, one with {gram-cube}s', 3)
        ],
        objectives: [
            { does: 'introduces', name: 'compare-mass', title: 'Compare the masses of two objects', place: place('year.course', 1) },
            { does: 'practises', name: 'estimate-length', title: 'Estimate a length' },
            { does: 'checks', name: 'compare-length', title: 'Compare two lengths' }
        ],
        follows: [{ name: 'measure-2', title: 'How long is a stride?' }],
        words: ['heavier', 'lighter', 'balance'],
        needs: [
            { title: 'Pan balance', name: 'pan-balance', amount: figure('4', '1 for each of 4 pairs = 4'), each: '1 for each pair', place: place(file, 7), optional: false },
            { title: 'Gram cubes', name: 'gram-cube', amount: figure('80', '20 for each of 4 pairs = 80'), each: '20 for each pair', place: place(file, 8), optional: false },
            { title: 'Place-value cards (ones, tens)', name: 'place-card', amount: figure('4 sets', '1 set for each of 4 pairs'), each: '1 set for each pair', place: place(file, 9), optional: true }
        ],
        notNeeded: [{ name: 'table-workbook', title: 'Table workbook' }],
        cautions: [beanCaution],
        parts: [
            part('warm-up', 'hands-as-scales', 'Hands as scales', 16, {
                minutes: 5, startsAt: 0,
                steps: [step('do', 'Stand with arms out. Name two things; tip toward the heavier.', 17), step('instead', 'Short of room? Tip two pencils on the table.', 18)]
            }),
            part('activity', 'two-bags', 'Two mystery bags', 20, {
                minutes: 15, startsAt: 5,
                steps: [
                    step('why', 'Children who press on the pan are weighing their own hand.', 21),
                    step('do', 'Put one bag of **{dried-bean}s** in each pan of the {pan-balance}. Wait until it settles.', 22),
                    step('watch', 'A child presses the pan with a finger.', 23, [step('help', 'Hands on laps until the beam stops, then look again.', 24)]),
                    step('say', '“Let the balance speak first.”', 25),
                    step('ask', 'Which bag is heavier? How do you know?', 26, [step('expect', 'The one whose pan went down.', 27)]),
                    step('more', 'Let the pair make a third bag that lies between the two.', 28),
                    step('ready when', 'Four comparisons out of five are right without touching.', 29)
                ],
                needs: [{ title: 'Paper bags', name: 'paper-bag', amount: figure('8', '2 for each of 4 pairs = 8'), each: '2 for each pair', place: place(file, 19) }]
            }),
            part('game', 'grocer', 'The careful grocer', 31, {
                minutes: 15, startsAt: 20,
                game: {
                    rules: 'Table games for measuring, edition 3, chapter “Weighing”, number 12', players: '2 to 4 players', tables: '3 groups of 2 to 3 play at once', kept: prose('the blue box with the weights'),
                    place: place('inventory.kit', 46), steps: [step('do', 'One child is the grocer and weighs each order with {gram-cube}s.', 47, [], 'inventory.kit')]
                },
                cautions: [
                    { kind: 'pinch', text: 'Fingers can be pinched under the pan.', prose: prose('Lift the pan by its *rim*.'), place: place('inventory.kit', 48) },
                    { ...beanCaution, title: 'Small parts', thing: 'gram-cube', place: place('inventory.kit', 8), prose: prose('Keep {gram-cube}s in their tray.') }
                ]
            }),
            part('practice', 'say-it', 'Say the mass two ways', 33, {
                minutes: 10, startsAt: 35, items: 3, practice: ['name numbers 11 to 99', 'fives and tens 6 to 20'],
                practiceItems: [
                    { ask: 'Name 67 in words and in tens and ones', answer: 'sixty-seven; 6-ten 7', room: 'line' },
                    { ask: 'Show 8 as fives and tens', answer: '5 and 3', room: 'line', picture: { picture: { kind: 'ten-frame', count: 8 }, text: 'Ten-frame: 8', place: place(file, 35) } },
                    { ask: 'Name 14 in words and in tens and ones', answer: 'fourteen; 1-ten 4', room: 'line' }
                ]
            }),
            part('checkpoint', 'wrap-up', 'Before you put things away', 36, {
                minutes: 5, startsAt: 45,
                steps: [step('ask', 'What does the balance tell you that your hands cannot?', 37, [step('expect', 'A small difference.', 38)])],
                unsure: 'Repeat “Two mystery bags” tomorrow.',
                unsureAs: { then: 'repeat', activity: { name: 'two-bags', at: place(file, 39).range }, when: 'tomorrow', at: place(file, 39).range }
            })
        ]
    };
}

const shortParts = [2, 3, 1, 2, 4, 2, 3, 1, 5, 2, 3, 2, 1, 10].map((minutes, index, all): PartFigures => {
    const kind = (['warm-up', 'activity', 'game', 'practice', 'checkpoint'] as const)[index % 5] ?? 'activity';
    const startsAt = all.slice(0, index).reduce((sum, more) => sum + more, 0);
    return part(kind, `station-${index + 1}`, `Station ${index + 1}`, 60 + index * 3, {
        minutes, startsAt,
        ...(kind === 'practice' ? { items: 4, practice: ['compare numbers 1 to 20'] } : { steps: [step('do', 'Move on when the bell rings.', 61 + index * 3)] })
    });
});

/** Many short parts, as a round of stations has them. */
export const secondLesson: LessonFigures = {
    name: 'weigh-2', title: 'Heavier than ten cubes', place: place(file, 55), draft: false, meeting: 'Wed 23 Sep', date: '2026-09-23', minutes: 41, minutesIncomplete: false,
    aim: [], steps: [step('about', 'A round of stations. See [the harbour library](https://example.org/library?a=1&b=2) for a room plan.', 56)],
    objectives: [], follows: [{ name: 'weigh-1', title: 'Which is heavier?' }], words: [], needs: [], notNeeded: [], cautions: [], parts: shortParts
};

export function thirdLesson(glassCaution: CautionFigures): LessonFigures {
    return {
        name: 'weigh-3', title: 'Jars that look alike', place: place(file, 120), draft: true, meeting: 'Thu 24 Sep', date: '2026-09-24', minutes: 30, minutesIncomplete: true,
        aim: [prose('Things of one size can differ in mass.')], steps: [], objectives: [], follows: [], words: [], needs: [], notNeeded: [],
        cautions: [{ kind: 'allergen', text: 'Ask families about allergies before food is handled.', place: place(file, 121) }],
        parts: [
            part('activity', 'fill', 'Fill the jars', 124, {
                minutes: 30, startsAt: 0, cautions: [glassCaution],
                needs: [
                    { title: 'Water', name: 'water', amount: figure('2 1/2 fluid ounces', '1/2 fl oz for each of 5 jars'), each: '1/2 fl oz a jar', place: place(file, 122) },
                    { title: 'Jars with lids', name: 'glass-jar', amount: figure('12 jars, each with its own lid and a paper band', '1 for each of 7 learners, 5 spare'), each: '', place: place(file, 123) },
                    { title: 'Sand', name: 'sand', amount: figure('7 cups', '1 cup for each of 7 learners'), each: '1 cup for each learner', place: place(file, 123) }
                ],
                steps: [step('do', 'Each child fills a {glass-jar}:\n1. sand to the line\n2. lid on, `tap twice`\n\nThen all jars stand in a row. An {unknown-thing} stays plain.', 125)]
            }),
            part('activity', 'free', 'Free weighing', 130, { steps: [step('do', 'Weigh what you like.', 131)] })
        ]
    };
}

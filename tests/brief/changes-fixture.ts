/** An invented adaptation of an invented course; every figure is written by hand, and every field of a ledger is used. */
import type { ChangesFigures, LedgerFigures, LessonChange, MinutesChange } from '@haversack/server/planning/ledger-figures';
import type { MoneyFigure } from '@haversack/server/planning/supply-figures';
import { figure, place, prose } from './fixture-tools.js';

const shorter = { name: 'shorter-autumn', title: 'Shorter autumn' };
const market = { name: 'harbour-days', title: 'Harbour days' };
const course = { name: 'measure-and-make', title: 'Measure and Make', place: place('year.course', 10) };
const group = { name: 'harbour', title: 'Harbour co-op, autumn', place: place('year.course', 40) };

const lesson = (name: string, title: string, happened: LessonChange['happened'], ...says: string[]): LessonChange => ({ name, title, place: place(`${name}.lesson`, 0), happened, says });
const minutes = (name: string, title: string, before?: number, after?: number): MinutesChange => ({ name, title, place: place(`${name}.lesson`, 0), before, after });
const money = (minor: number, currency: string): MoneyFigure => ({ minor: String(minor), currency, text: `${(minor / 100).toFixed(2)} ${currency}` });

export const ledger: LedgerFigures = {
    course, class: group,
    adaptations: [{ ...shorter, place: place('harbour.course', 0), edition: '2' }, { ...market, place: place('harbour.course', 20) }],
    changes: [
        {
            adaptation: shorter, place: place('harbour.course', 1), says: '“Market sums” is left out', because: prose('Covered at the market visit; the {dried-bean}s are *weighed there* too.'),
            consequences: [
                {
                    kind: 'no-longer-introduced', says: '“Give change up to twenty” is no longer introduced; “Market day” practises it.',
                    about: { kind: 'objective', name: 'give-change', title: 'Give change up to twenty', place: place('year.course', 3) }, lessons: ['market-day']
                },
                {
                    kind: 'prerequisite-left-out', says: '“Market day” follows “Market sums”, which is not taught.',
                    about: { kind: 'lesson', name: 'market-sums', title: 'Market sums', place: place('market-sums.lesson', 0) }, lessons: ['market-day']
                },
                { kind: 'word-not-taught', says: 'The word “change” is no longer taught; “Market day” uses it.', about: { kind: 'word', name: 'change', title: 'change' }, lessons: ['market-day'] },
                { kind: 'no-longer-introduced', fact: true, says: '“Write a price” is no longer taught: no lesson that is left introduces, practises or checks it.', about: { kind: 'objective', name: 'write-price', title: 'Write a price', place: place('year.course', 8) }, lessons: [] }
            ]
        },
        { adaptation: shorter, place: place('harbour.course', 2), says: '“The long walk” of “Two bags” takes 10 min', because: prose('- it rains in autumn\n- the yard is small'), minutes: { before: 406, after: 401 }, consequences: [] },
        { adaptation: shorter, place: place('harbour.course', 4), says: 'Lentils instead of dried beans', consequences: [] },
        {
            adaptation: shorter, place: place('harbour.course', 5), says: '“Jars that look alike” now comes after “Which is heavier?”',
            consequences: [{
                kind: 'practised-too-early', says: '“Estimate a mass” is practised in “Jars that look alike” before “Heavier than ten cubes” introduces it',
                about: { kind: 'objective', name: 'estimate-mass', title: 'Estimate a mass', place: place('year.course', 6) }, lessons: ['jars']
            }]
        },
        { adaptation: market, place: place('harbour.course', 21), says: '“A walk round the harbour” is brought in after “Two bags”', consequences: [], minutes: { before: 401, after: 421 } },
        { adaptation: market, place: place('harbour.course', 22), says: 'Leave out “Snow scales”', idle: 'the course does not teach it', consequences: [] }
    ],
    otherConsequences: [{
        kind: 'no-longer-checked', says: '“Compare the masses of two objects” is practised but no longer checked.',
        about: { kind: 'objective', name: 'compare-mass', title: 'Compare the masses of two objects', place: place('year.course', 1) }, lessons: []
    }],
    minutes: {
        before: 446, after: 421,
        lessons: [
            minutes('weigh-1', 'Which is heavier?', 50, 50), minutes('jars', 'Jars that look alike', 45, 45), minutes('weigh-2', 'Two bags', 48, 43), minutes('harbour-walk', 'A walk round the harbour', undefined, 20),
            minutes('ten-cubes', 'Heavier than ten cubes', 40, 40), minutes('market-sums', 'Market sums', 40, undefined), minutes('market-day', 'Market day', 55, 55)
        ]
    },
    meetings: { before: 10, after: 10, lastBefore: '2026-11-12', lastAfter: '2026-11-10' },
    supplies: [
        { name: 'dried-bean', title: 'Dried beans', place: place('inventory.kit', 27), before: figure('1410 g', { words: 'Two bags: 150 g for each of 4 pairs = 600 g', place: place('weigh-2.lesson', 8) }, '10% to spare'), difference: 'no longer needed' },
        { name: 'lentil', title: 'Lentils', place: place('inventory.kit', 36), after: figure('1.2 kg', { words: 'Two bags: 150 g for each of 4 pairs = 600 g, in place of dried beans', place: place('harbour.course', 4) }), difference: 'new' },
        { name: 'price-tag', title: 'Price tags with strings, in four colours', place: place('inventory.kit', 90), before: figure('46', '2 for each of 7 learners'), after: figure('32', '2 for each of 7 learners, less often'), difference: '14 fewer' }
    ],
    money: [
        { currency: 'EUR', before: money(2620, 'EUR'), after: money(2410, 'EUR'), difference: '2.10 EUR less' },
        { currency: 'USD', before: money(400, 'USD'), after: money(400, 'USD'), difference: 'as before' },
        { currency: 'JPY', after: { minor: '300', currency: 'JPY', text: '300 JPY' }, difference: '300 JPY more' }
    ],
    lessons: [
        lesson('weigh-1', 'Which is heavier?', 'same'), lesson('jars', 'Jars that look alike', 'moved', '“Jars that look alike” now comes after “Which is heavier?”'), lesson('weigh-2', 'Two bags', 'changed', '“The long walk” of “Two bags” takes 10 min', 'Lentils instead of dried beans'),
        lesson('harbour-walk', 'A walk round the harbour', 'new', '“A walk round the harbour” is brought in after “Two bags”'), lesson('ten-cubes', 'Heavier than ten cubes', 'same'), lesson('market-sums', 'Market sums', 'left out', '“Market sums” is left out'), lesson('market-day', 'Market day', 'same'),
        lesson('stride', 'How long is a stride?', 'same'), lesson('shadows', 'Shadows at noon', 'same'), lesson('ruler', 'A ruler of our own', 'same')
    ],
    assumptions: ['No session length is declared: lessons are not split.']
};

export const changes: ChangesFigures = {
    course, class: group, ledger, example: { name: 'weigh-1', title: 'Which is heavier?' },
    names: { 'dried-bean': { title: 'Dried beans', kind: 'material', place: place('inventory.kit', 27), fact: 'this week 660 g' } }
};

export const unchangedClass: ChangesFigures = { course, class: { name: 'millpond', title: 'Millpond co-op', place: place('year.course', 60) }, example: changes.example, names: {} };

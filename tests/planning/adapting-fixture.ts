/** A small programme in the language, adapted, and told line by line. */
import { adaptedFor } from '@haversack/language/adapting/adapt-course';
import type { Adapted } from '@haversack/language/adapting/adapted';
import type { AdaptingMemo } from '@haversack/language/adapting/memo';
import type { Programme } from '@haversack/language/sheets/programme';
import type { LessonSheet, Need, Prose, Step } from '@haversack/language/sheets/sheet';
import { lastView, problemsIn, type Files } from '../language/fixture.js';

export const inventory = `
material pan-balance "Pan balance"
  reusable
material dried-bean "Dried beans"
  consumable
  measured in g
  stand-in lentil 3 for 2
material lentil "Lentils"
  consumable
  measured in kg
material gram-cube "Gram cubes"
  reusable
material rope "Rope"
  reusable
material chalk "Chalk"
  consumable
  counted in stick / sticks
game grocer "The careful grocer"
  players 2 to 4
  materials
    dried-bean 20 g per group
`;

export const lessons = `
lesson weigh-1 "Which is heavier?"
  objectives
    introduces compare-mass
  materials
    pan-balance 1 per pair
    dried-bean 150 g per pair
    rope 1
  words heavier
  activity two-bags 15 min
    do: Put the {dried-bean} on the {pan-balance}.
  activity long-walk 10 min
    do: Walk along the {rope}.
  game grocer 10 min
  checkpoint wrap-up 5 min
    ask: Which one?
    if unsure: repeat two-bags tomorrow
lesson weigh-2 "Two shelves"
  follows weigh-1
  objectives
    practises compare-mass
  materials
    pan-balance 1 per learner
    chalk 2 sticks per pair
  activity song 10 min
    do: Sing with the {chalk}.
  checkpoint wrap-up 5 min
    if unsure: repeat song today
lesson weigh-3 "Market sums"
  follows weigh-2
  objectives
    checks compare-mass
  activity sums 20 min
    do: Add.
`;

export const elsewhere = `
lesson market-visit "Market visit"
  materials
    dried-bean 40 g per group of 3
    rope 2
  activity stalls 25 min
    do: Buy {dried-bean} along the {rope}.
  activity short-walk 5 min
    do: Walk.
`;

export const course = `
objective compare-mass
course measuring "Measuring" edition 3
  unit weighing
    weigh-1
    weigh-2
  unit market
    weigh-3
class harbour
  teaches measuring
  learners 7
`;

/** The programme, with an adaptation of these lines for the class. */
export async function programmeWith(changes: string, more = ''): Promise<Programme> {
    return programmeOf({
        'things.kit': inventory, 'weighing.lesson': lessons, 'elsewhere.lesson': elsewhere, 'year.course': course,
        'z.course': `adaptation harbours of measuring for harbour\n${changes.replace(/^\n/, '')}${more}`
    });
}

export async function programmeOf(files: Files): Promise<Programme> {
    await problemsIn(files);
    return lastView().programme;
}

export async function adapted(changes: string, memo?: AdaptingMemo): Promise<Adapted> {
    return adaptedFor(await programmeWith(changes), { class: 'harbour' }, memo)!;
}

/** Lessons in their order with what they were made of and their parts. */
export function told({ course: { units }, programme, madeOf }: Adapted): string[] {
    return units.flatMap(unit => unit.lessons.map(({ name }) => {
        const of = madeOf.get(name) ?? [];
        const parts = programme.lessons.get(name)?.parts.map(part => `${part.name} ${part.minutes ?? '?'}`).join(', ');
        return `${unit.name}/${name}${of.join() === name ? '' : ` (${of.join(' + ')})`}: ${parts}`;
    }));
}

export const saysOf = ({ changes }: Adapted): string[] => changes.map(({ says, idle }) => (idle === undefined ? says : `${says}: ${idle}`));
export const lessonOf = ({ programme }: Adapted, name: string): LessonSheet => programme.lessons.get(name)!;
export const partOf = (adaptation: Adapted, lesson: string, name: string): LessonSheet['parts'][number] => lessonOf(adaptation, lesson).parts.find(part => part.name === name)!;
export const needInWords = ({ options, amount, per }: Need): string =>
    [options.map(({ thing }) => thing.name).join(' or '), amount?.value, amount?.unit, per && `per ${per.who}`].filter(word => word !== undefined).join(' ');
const proseInWords = ({ parts }: Prose): string => parts.map(part => ('name' in part ? `{${part.name}}` : part.text)).join('');
export const stepInWords = ({ word, prose }: Step): string => `${word}: ${proseInWords(prose)}`;
export const marksOf = (sheet: { adapted?: { says: string }[] }): string[] => (sheet.adapted ?? []).map(({ says }) => says);

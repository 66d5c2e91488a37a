/** A small programme as text, and programmes read from texts. */
import { EmptyFileSystem, URI } from 'langium';
import { createHaversackServices } from '@haversack/language/module';
import { gatherProgramme, type Programme } from '@haversack/language/sheets/programme';
import type { EditionFigures } from '@haversack/server/planning/edition-figures';

const { shared, haversack } = createHaversackServices(EmptyFileSystem);

/** Reads one text, or several by file name. */
export function read(texts: string | Record<string, string>): Programme {
    const files = typeof texts === 'string' ? { 'programme.course': texts } : texts;
    return gatherProgramme(Object.entries(files).map(([name, text]) => haversack.sheets.sheetOf(shared.workspace.LangiumDocumentFactory.fromString(text, URI.parse(`file:///programme/${name}`)))));
}

/** Lines as "section / group: what is said". */
export function told({ sections }: EditionFigures): string[] {
    return sections.flatMap(({ id, groups }) => groups.flatMap(({ title, differences }) => differences.map(({ says }) => `${id} / ${title ?? ''}: ${says}`)));
}

export const base = `
material gram-cube "Gram cubes"
  reusable
  from kit
  pack of 100 costs 14.50 USD
material dried-bean "Dried beans"
  consumable
  measured in g
  from shop
  pack of 500 g costs 2.10 USD
  stand-in lentil 1 for 1
  caution allergen: Ask families first.
material lentil "Lentils"
  consumable
  measured in g
  from shop
print record-sheet "Record sheet"
  pages 2
book table-games "Table games" edition 3
game grocer "The careful grocer"
  found in table-games edition 3, chapter "Weighing", number 12
  players 2 to 4
  materials
    gram-cube 20 per group
kit field-kit "Field kit"
  holds
    gram-cube 60
objective compare-mass "Compare two masses"
  in measuring
objective order-mass "Put masses in order"
  in measuring
  builds on compare-mass
lesson weigh-1 "Which is heavier?"
  about: Children compare two masses by feel.
  objectives
    introduces compare-mass
  materials
    dried-bean 150 g per pair not in kit
    gram-cube 10 per pair in kit
  words heavier
  warm-up scales "Hands as scales" 5 min
    do: Stand with arms out.
  activity two-bags "Two mystery bags" 15 min
    do: Put one bag in each pan and wait until it settles.
    ask: Which bag is heavier?
      expect: The one whose pan went down.
    watch: A child presses the pan with a finger.
      help: Hands on laps until the beam stops.
  checkpoint wrap-up "Before you go" 5 min
    ask: What does the balance tell you?
    if unsure: repeat two-bags tomorrow
lesson weigh-2 "Three bags in a row"
  follows weigh-1
  objectives
    introduces order-mass
    practices compare-mass
  materials
    dried-bean 100 g per pair not in kit
    record-sheet 1 per learner
  activity three-bags "Three bags" 20 min
    do: Put three bags in order, lightest first.
  game grocer 10 min
  practice say-it "Say the mass" 8 items
    name numbers 11 to 99
lesson weigh-3 "Market sums"
  objectives
    checks compare-mass, order-mass
  materials
    gram-cube 30 per group of 3 in kit
  activity stall "A stall of our own" 25 min
    do: Weigh out what the customers ask for.
lesson weigh-4 "A letter to weigh"
  objectives
    practices order-mass
  activity letters "Letters and parcels" 10 min
    do: Guess first, then weigh each letter.
course measure "Measure and Make" edition 1
  ages 6 to 8
  uses field-kit 1 per family
  unit weighing "Weighing"
    weigh-1
    weigh-2
  unit trading "Trading"
    weigh-3
    weigh-4
class harbour "Harbour co-op"
  teaches measure
  learners 6
  adults 1
  groups of 3
  starts 2026-09-07
  meets mon
  kits field-kit 1
`;

/** The text with pieces replaced; a piece that does not stand in it is a mistake of the test. */
export function edited(text: string, ...changes: readonly (readonly [from: string, to: string])[]): string {
    return changes.reduce((now, [from, to]) => {
        if (!now.includes(from)) throw new Error(`'${from}' does not stand in the text.`);
        return now.replace(from, () => to);
    }, text);
}

/** The same with every place of a name or word replaced. */
export function renamed(text: string, from: string, to: string): string {
    return text.replaceAll(new RegExp(`(?<![\\w-])${from}(?![\\w-])`, 'g'), to);
}

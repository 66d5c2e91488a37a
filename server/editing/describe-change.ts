import type { WrittenChange } from '@haversack/language/sheets/adaptation-sheet';
import type { AdaptationSheet } from '@haversack/language/sheets/sheet';
import { asCommonNoun } from '@haversack/language/sheets/titles';
import { plainText } from '../markdown/plain-text.js';
import type { ClassTerm } from '../plan-checks/term.js';
import { changeAlone } from '../planning/ledger/one-change.js';
import type { LedgerFigures, SupplyChange } from '../planning/ledger-figures.js';
import { counted, listing, quoted } from '@haversack/language/facts/wording';
import type { HaversackServerServices } from '../workspace/services.js';

const mostNamed = 4;

/** The first class that an adaptation reaches. */
export function termOf({ forClass, of }: AdaptationSheet, terms: readonly ClassTerm[]): ClassTerm | undefined {
    return terms.find(({ group }) => of !== undefined && group.teaches?.name === of.name && (!forClass || group.name === forClass.name));
}

/** What the change at a line says, breaks and makes of the term, as Markdown; undefined where none begins there. */
export function describeChange(uri: string, line: number, services: HaversackServerServices): string | undefined {
    const adaptation = services.sheets.viewOf(uri).programme.files.get(uri)?.adaptations.find(({ whole }) => whole.start.line <= line && line <= whole.end.line);
    const change = adaptation?.changes.find(({ head }) => head.start.line === line);
    const term = adaptation && termOf(adaptation, services.terms.of(uri).all().classes);
    const told = term?.ledger?.changes.find(({ place }) => place.uri === uri && place.range.start.line === line);
    if (!change || !term || !told) return undefined;
    const alone = told.idle === undefined ? figuresInWords(term, change, services) : [];
    const minutes = told.minutes ? differenceInWords(told.minutes.after - told.minutes.before) : undefined;
    const facts = [
        ...(told.idle === undefined ? [] : [`It changes nothing: ${told.idle}.`]),
        ...told.consequences.map(({ says }) => says), ...(minutes === undefined ? [] : [`${minutes} of lessons`]), ...alone
    ];
    return [`**${plainText(told.says)}** (for ${plainText(term.group.title)})`, ...facts.map(fact => `- ${plainText(fact)}`)].join('\n');
}

function figuresInWords({ group }: ClassTerm, change: WrittenChange, { plans, sheets }: HaversackServerServices): string[] {
    const { meetings, supplies, money } = changeAlone(sheets.viewOf(group.uri).programme, { class: group.name }, change, plans.of(group.uri).cache);
    const fewer = meetings.after - meetings.before;
    return [
        ...(fewer === 0 ? [] : [`${counted(Math.abs(fewer), 'meeting')} ${fewer < 0 ? 'fewer' : 'more'}`]),
        ...suppliesInWords(supplies), ...money.filter(({ before, after }) => before?.minor !== after?.minor).map(({ difference }) => `to buy: ${difference}`)
    ];
}

/** "no longer needed: dried beans", "needed as well: lentils", "gram cubes: 40 fewer". */
function suppliesInWords(supplies: readonly SupplyChange[]): string[] {
    const gone = supplies.filter(({ after }) => !after);
    const fresh = supplies.filter(({ before }) => !before);
    const other = supplies.filter(({ before, after }) => before && after);
    return [
        ...(gone.length > 0 ? [`no longer needed: ${named(gone.map(({ title }) => asCommonNoun(title)))}`] : []),
        ...(fresh.length > 0 ? [`needed as well: ${named(fresh.map(({ title, after }) => `${asCommonNoun(title)} (${after!.text})`))}`] : []),
        ...(other.length > 0 ? [named(other.map(({ title, difference }) => `${asCommonNoun(title)}: ${difference}`), '; ')] : [])
    ];
}

/** What the adaptations of a class make of its term, in a few words: "3 changes · 25 min less · 2 things no longer needed". */
export function adaptationInWords({ name, changes }: AdaptationSheet, ledger: LedgerFigures): string {
    const others = ledger.adaptations.filter(one => one.name !== name);
    const gone = ledger.supplies.filter(({ after }) => !after).length;
    const fresh = ledger.supplies.filter(({ before }) => !before).length;
    return [
        counted(changes.length, 'change'), others.length > 0 && `with ${listing(others.map(({ title }) => quoted(title)))}`,
        differenceInWords(ledger.minutes.after - ledger.minutes.before),
        gone > 0 && `${counted(gone, 'thing')} no longer needed`, fresh > 0 && `${counted(fresh, 'thing')} needed as well`
    ].filter(Boolean).join(' · ');
}

function differenceInWords(minutes: number): string | undefined {
    return minutes === 0 ? undefined : `${Math.abs(minutes)} min ${minutes < 0 ? 'less' : 'more'}`;
}

function named(words: readonly string[], between = ', '): string {
    const more = words.length - mostNamed;
    const shown = words.slice(0, mostNamed);
    return more > 0 ? `${shown.join(between)} and ${more} more` : between === ', ' ? listing(shown) : shown.join(between);
}

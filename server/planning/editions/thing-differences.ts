import type { BookSheet, Declared, GameSheet, Held, KitSheet, MaterialSheet, PrintSheet, Prose } from '@haversack/language/sheets/sheet';
import type { Difference, DifferenceKind, EditionGroup } from '../edition-figures.js';
import { counted, listing, quoted } from '@haversack/language/facts/wording';
import type { Pair, Pairing } from './alike.js';
import { cautionDifferences } from './caution-differences.js';
import type { Matched } from './matched.js';
import { gameNeedDifferences } from './need-differences.js';
import { placeIn, proseForPeople } from './plain.js';
import { stepDifferences } from './step-differences.js';
import { amountKey, amountWritten, comings, difference, group, instead, sureness, type Sides } from './words.js';

/** What is known of materials, prints, books, games and kits: what they are, cost and warn of. */
export function thingDifferences(matched: Matched): EditionGroup[] {
    return [
        ...ofKind(matched.materials, 'material', pair => materialFacts(matched, pair)),
        ...ofKind(matched.prints, 'print', pair => printFacts(matched, pair)),
        ...ofKind(matched.books, 'book', pair => bookFacts(matched, pair)),
        ...ofKind(matched.games, 'game', pair => gameFacts(matched, pair)),
        ...ofKind(matched.kits, 'kit', pair => kitFacts(matched, pair))
    ];
}

function ofKind<T extends Declared>({ pairs, gone, added }: Pairing<T>, kind: string, facts: (pair: Pair<T>) => Difference[]): EditionGroup[] {
    const at = (sheet: Declared): Sides['old'] => placeIn(sheet.uri, sheet.at);
    return [
        ...pairs.flatMap(pair => group({ title: pair.new.title, old: at(pair.old), new: at(pair.new), differences: [...named(pair), ...facts(pair)] })),
        ...gone.map(one => ({ title: one.title, old: at(one), differences: [difference('thing-removed', `The ${kind} is no longer in the inventory`, { old: at(one) })] })),
        ...added.map(one => ({ title: one.title, new: at(one), differences: [difference('thing-added', `A new ${kind}`, { new: at(one) })] }))
    ];
}

function sidesOf({ old, new: now }: Pair<Declared>): Sides {
    return { old: placeIn(old.uri, old.at), new: placeIn(now.uri, now.at) };
}

function named(pair: Pair<Declared>): Difference[] {
    const { old, new: now, recognised } = pair;
    const more = { ...sidesOf(pair), why: recognised && sureness(recognised) };
    if (old.title !== now.title) return [difference('thing-renamed', `Now called ${quoted(now.title)}, before ${quoted(old.title)}`, more)];
    return old.name === now.name ? [] : [difference('thing-renamed', `Now written as ${now.name}, not ${old.name}`, more)];
}

/** One line for each fact that differs, from what either side says of it. */
class Facts {
    readonly differences: Difference[] = [];

    constructor(private readonly sides: Sides, private readonly kind: DifferenceKind = 'thing-fact') {}

    fact(what: string, before: string | undefined, after: string | undefined): void {
        const told = instead(before, after);
        if (told !== undefined) this.differences.push(difference(this.kind, `${what}: ${told}`, this.sides));
    }

    list(what: string, before: readonly string[], after: readonly string[]): void {
        const { gone, added } = comings(before, after, one => one, one => one);
        if (gone.length === 1 && added.length === 1) this.fact(what, gone[0], added[0]);
        else {
            for (const one of added) this.fact(what, undefined, one);
            for (const one of gone) this.fact(what, one, undefined);
        }
    }

    kept(matched: Matched, before: Prose | undefined, after: Prose | undefined): void {
        const said = (prose: Prose | undefined, side: 'old' | 'new'): string | undefined => prose && (proseForPeople(prose, matched.titleIn(side)) || undefined);
        this.fact('Kept in', said(before, 'old'), said(after, 'new'));
    }

    notes(matched: Matched, before: readonly Prose[], after: readonly Prose[]): void {
        const old = before.map(note => proseForPeople(note, matched.titleIn('old')));
        const now = after.map(note => proseForPeople(note, matched.titleIn('new')));
        const { gone, added } = comings(old, now, one => one, one => one);
        if (gone.length + added.length > 0) {
            this.differences.push(difference(this.kind, gone.length > 0 && added.length > 0 ? 'The note is worded anew' : added.length > 0 ? 'A note is added' : 'A note is left out', {
                ...this.sides, before: gone.length > 0 ? gone.join(' ') : undefined, after: added.length > 0 ? added.join(' ') : undefined
            }));
        }
    }
}

const sources = { kit: 'from the kit', home: 'from home', shop: 'from a shop', library: 'from a library', printed: 'printed' } as const;

function materialFacts(matched: Matched, pair: Pair<MaterialSheet>): Difference[] {
    if (!pair.recognised && matched.saysTheSame(pair)) return [];
    const { old, new: now } = pair;
    const facts = new Facts(sidesOf(pair));
    const title = { old: matched.titleIn('old'), new: matched.titleIn('new') };
    facts.differences.push(...cautionDifferences(matched, old, now));
    facts.fact('Use', old.use, now.use);
    facts.fact('Counted in', old.counted?.many, now.counted?.many);
    facts.fact('Measured in', old.measured?.unit, now.measured?.unit);
    facts.fact('Size', sizeText(old), sizeText(now));
    facts.fact('Ages', agesText(old), agesText(now));
    facts.fact('Where it comes from', old.source && sources[old.source], now.source && sources[now.source]);
    facts.list('Packs', old.packs.map(packText), now.packs.map(packText));
    facts.fact('Arrives', spanText(old.arrives), spanText(now.arrives));
    facts.fact('Keeps', spanText(old.keeps), spanText(now.keeps));
    facts.fact('Spare', old.spare && `${old.spare.percent}%`, now.spare && `${now.spare.percent}%`);
    facts.fact('Loss', old.loss && `${old.loss.percent}%`, now.loss && `${now.loss.percent}%`);
    facts.fact('Always kept', old.safetyStock && amountWritten(old.safetyStock), now.safetyStock && amountWritten(now.safetyStock));
    facts.fact('Delivery', moneyWritten(old.delivery), moneyWritten(now.delivery));
    facts.list('Parts', old.parts.map(({ name }) => name), now.parts.map(({ name }) => name));
    const standIns = (sheet: MaterialSheet, titleOf: (name: string) => string): string[] => sheet.standIns.map(({ thing, give, replaces }) => `${titleOf(thing.name)}, ${give} for ${replaces}`);
    facts.list('Stand-in', standIns(old, name => title.new(matched.newThing(name))), standIns(now, title.new));
    facts.kept(matched, old.kept, now.kept);
    facts.notes(matched, old.notes, now.notes);
    return facts.differences;
}

function printFacts(matched: Matched, pair: Pair<PrintSheet>): Difference[] {
    const { old, new: now } = pair;
    const facts = new Facts(sidesOf(pair));
    facts.differences.push(...cautionDifferences(matched, old, now));
    facts.fact('Pages', counted(old.pages, 'page'), counted(now.pages, 'page'));
    facts.fact('Printed', old.twoSided ? 'on both sides' : 'on one side', now.twoSided ? 'on both sides' : 'on one side');
    facts.kept(matched, old.kept, now.kept);
    facts.notes(matched, old.notes, now.notes);
    return facts.differences;
}

function bookFacts(matched: Matched, pair: Pair<BookSheet>): Difference[] {
    const { old, new: now } = pair;
    const facts = new Facts(sidesOf(pair));
    facts.fact('Edition', old.edition, now.edition);
    facts.fact('Where it comes from', old.source && sources[old.source], now.source && sources[now.source]);
    facts.fact('Price', moneyWritten(old.cost), moneyWritten(now.cost));
    facts.kept(matched, old.kept, now.kept);
    facts.notes(matched, old.notes, now.notes);
    return facts.differences;
}

function gameFacts(matched: Matched, pair: Pair<GameSheet>): Difference[] {
    if (!pair.recognised && matched.saysTheSame(pair)) return [];
    const { old, new: now } = pair;
    const facts = new Facts(sidesOf(pair), 'game');
    facts.differences.push(...cautionDifferences(matched, old, now));
    const rules = { old: rulesFacts(old, name => matched.titleIn('new')(matched.newThing(name))), new: rulesFacts(now, matched.titleIn('new')) };
    if (!old.found || !now.found) facts.fact('Rules', listing(Object.values(rules.old)) || undefined, listing(Object.values(rules.new)) || undefined);
    else for (const what of ['Book', 'Edition of the book', 'Chapter', 'Number', 'Page']) facts.fact(`Rules. ${what}`, rules.old[what], rules.new[what]);
    const players = ({ players: range }: GameSheet): string | undefined => range && (range.to === undefined || range.to === range.from ? String(range.from) : `${range.from} to ${range.to}`);
    facts.fact('Players', players(old), players(now));
    facts.kept(matched, old.kept, now.kept);
    facts.differences.push(...gameNeedDifferences(matched, old, now), ...stepDifferences(matched, { old: old.steps, new: now.steps }, { old: old.uri, new: now.uri }, ''));
    return facts.differences;
}

function kitFacts(matched: Matched, pair: Pair<KitSheet>): Difference[] {
    const { old, new: now } = pair;
    const facts = new Facts(sidesOf(pair), 'kit');
    const title = matched.titleIn('new');
    const held = (list: readonly Held[], renamed: (name: string) => string): Map<string, Held> => new Map(list.map(one => [renamed(one.thing.name), one]));
    const [before, after] = [held(old.holds, matched.newThing), held(now.holds, name => name)];
    for (const name of new Set([...after.keys(), ...before.keys()])) {
        const [was, is] = [before.get(name), after.get(name)];
        if (was && is && amountKey(was.amount) === amountKey(is.amount)) continue;
        const titled = is ? title(name) : matched.titleIn('old')(was?.thing.name ?? name);
        facts.fact(titled, was && amountWritten(was.amount), is && amountWritten(is.amount));
    }
    facts.notes(matched, old.notes, now.notes);
    return facts.differences;
}

function packText({ amount, cost }: MaterialSheet['packs'][number]): string {
    return `${amountWritten(amount)}${cost ? ` for ${moneyWritten(cost)!}` : ', no price'}`;
}

function moneyWritten(money: { value: string; currency: string } | undefined): string | undefined {
    return money && `${money.value} ${money.currency}`;
}

function sizeText({ size }: MaterialSheet): string | undefined {
    return size && `${size.sides.join(' x ')} ${size.unit}`;
}

function agesText({ ages }: MaterialSheet): string | undefined {
    return ages && (ages.to === undefined ? `${ages.from} and up` : `${ages.from} to ${ages.to}`);
}

function spanText(span: MaterialSheet['arrives']): string | undefined {
    return span && `${counted(span.days, span.working ? 'working day' : 'day')}`;
}

function rulesFacts({ found }: GameSheet, titleOf: (name: string) => string): Record<string, string> {
    const facts = found ? { 'Book': titleOf(found.book.name), 'Edition of the book': found.edition, 'Chapter': found.chapter && quoted(found.chapter), 'Number': found.number, 'Page': found.page } : {};
    return Object.fromEntries(Object.entries(facts).flatMap(([what, value]) => (value === undefined ? [] : [[what, value]])));
}

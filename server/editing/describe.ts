import { AstUtils, type AstNode } from 'langium';
import * as ast from '@haversack/language/generated/ast';
import { titleFromName } from '@haversack/language/sheets/titles';
import { thingNamed } from '@haversack/language/sheets/programme';
import type { Amount, LessonSheet, MaterialSheet, Prose } from '@haversack/language/sheets/sheet';
import type { HaversackServerServices } from '../workspace/services.js';
import { adaptationInWords, termOf } from './describe-change.js';
import { courseFacts, kitFacts, partFacts, unitFacts } from './describe-lists.js';
import { aboutCalendar, aboutClass, aboutFramework, aboutLesson, aboutObjective, aboutPart, aboutThing } from './plan-facts.js';

/** A declaration in a few lines of Markdown: its title, its facts, what the week needs of it. */
export function describe(node: AstNode, services: HaversackServerServices, lesson: string | undefined): string | undefined {
    const { uri } = AstUtils.getDocument(node);
    const view = services.sheets.viewOf(uri);
    const { programme } = view;
    const plans = services.plans.of(uri);
    const terms = services.terms.of(uri);
    if (ast.isTaughtWord(node)) {
        const taught = [...programme.lessons.values()].find(sheet => sheet.words.some(word => word.name === node.name));
        return taught ? heading(node.name, `word, taught in ${plain(taught.title)}`) : undefined;
    }
    if (ast.isMaterial(node) || ast.isPrint(node) || ast.isBook(node)) {
        const thing = thingNamed(programme, node.name);
        if (!thing) return undefined;
        const facts = thing.kind === 'material' ? materialFacts(thing)
            : thing.kind === 'print' ? [`${thing.pages} ${thing.pages === 1 ? 'page' : 'pages'}${thing.twoSided ? ', two-sided' : ''}`]
                : [thing.edition ? `edition ${thing.edition}` : 'no edition given'];
        const week = lesson === undefined ? undefined : plans.factAbout(node.name, lesson);
        const planned = aboutThing(node.name, terms.all().classes);
        return [heading(thing.title, thing.kind), ...list(facts), ...keptIn(thing.kept), ...list(week ? [week] : []), ...list(planned), ...thing.notes.map(note => `\n${proseText(note)}`)].join('\n');
    }
    if (ast.isLesson(node)) {
        const sheet = programme.lessons.get(node.name);
        const things = sheet && view.factsOf(sheet).there;
        return sheet && [heading(sheet.title, lessonFacts(sheet, plans.weekOf(node.name))), ...list(aboutLesson(sheet, things!, terms.all().classes)), ...sheet.steps.filter(step => step.word === 'about').map(step => `\n${proseText(step.prose)}`)].join('\n');
    }
    if (ast.isGame(node)) {
        const sheet = programme.games.get(node.name);
        const found = sheet?.found;
        const where = found && [programme.books.get(found.book.name)?.title ?? found.book.name, found.edition && `edition ${found.edition}`,
            found.chapter && `chapter “${found.chapter}”`, found.number && `number ${found.number}`, found.page && `page ${found.page}`].filter(Boolean).join(', ');
        return sheet && [heading(sheet.title, 'game'), where ? `- Rules: ${plain(where)}` : '', sheet.players ? `- ${sheet.players.from}${sheet.players.to ? ` to ${sheet.players.to}` : ''} players` : '', ...keptIn(sheet.kept)].filter(Boolean).join('\n');
    }
    if (ast.isObjective(node)) {
        const sheet = programme.objectives.get(node.name);
        const lessonsThat = (pick: (lesson: LessonSheet) => { name: string }[]): string =>
            [...programme.lessons.values()].filter(one => pick(one).some(({ name }) => name === node.name)).map(one => one.name).join(', ') || 'no lesson';
        return sheet && [heading(sheet.title, 'objective'), `- introduced in ${lessonsThat(one => one.introduces)}`, `- practised in ${lessonsThat(one => one.practises)}`, `- checked in ${lessonsThat(one => one.checks)}`, ...list(aboutObjective(node.name, terms.all().classes))].join('\n');
    }
    if (ast.isClass(node)) {
        const sheet = programme.classes.get(node.name);
        const isPlanned = terms.classes().some(group => group === sheet);
        return sheet && [heading(sheet.title, 'class'), ...list(isPlanned ? aboutClass(plans.term(node.name, services.today.date)) : [])].join('\n');
    }
    if (ast.isFramework(node)) {
        const sheet = programme.frameworks.get(node.name);
        return sheet && [heading(sheet.title, 'framework'), ...list(aboutFramework(node.name, terms.all().classes))].join('\n');
    }
    if (ast.isKit(node)) {
        const sheet = programme.kits.get(node.name);
        return sheet && [heading(sheet.title, 'kit'), ...list(kitFacts(sheet, view)), ...sheet.notes.map(note => `\n${proseText(note)}`)].join('\n');
    }
    if (ast.isCourse(node)) {
        const sheet = programme.courses.get(node.name);
        return sheet && [heading(sheet.title, 'course'), ...list(courseFacts(sheet, view, terms.all().classes)), ...(sheet.about ? [`\n${proseText(sheet.about)}`] : [])].join('\n');
    }
    if (ast.isUnit(node)) {
        const sheet = programme.courses.get((node.$container as ast.Course).name)?.units.find(({ name }) => name === node.name);
        return sheet && [heading(sheet.title, 'unit'), ...list(unitFacts(sheet, view)), ...(sheet.about ? [`\n${proseText(sheet.about)}`] : [])].join('\n');
    }
    if (ast.isAdaptation(node)) {
        const sheet = programme.adaptations.get(node.name);
        const ledger = sheet && termOf(sheet, terms.all().classes)?.ledger;
        return sheet && [heading(sheet.title, 'adaptation'), ...list(ledger && sheet.changes.length > 0 ? [adaptationInWords(sheet, ledger)] : []), ...sheet.notes.map(note => `\n${proseText(note)}`)].join('\n');
    }
    const named = node as AstNode & { name?: string; title?: string };
    if (!named.name) return undefined;
    const title = heading(named.title ?? titleFromName(named.name), ast.isWarmUp(node) ? 'warm-up' : node.$type.toLowerCase());
    if (!ast.isLesson(node.$container)) return title;
    const part = programme.lessons.get(node.$container.name)?.parts.find(({ name }) => name === named.name);
    const why = part?.steps.find(({ word }) => word === 'why');
    return [title, ...list(part ? partFacts(part) : []), ...list(aboutPart(node.$container.name, named.name, terms.all().classes)), ...(why ? [`\n${proseText(why.prose)}`] : [])].join('\n');
}

function materialFacts(material: MaterialSheet): string[] {
    const facts = [material.use ?? 'neither reusable nor consumable yet'];
    if (material.source) facts.push(material.source === 'printed' ? 'printed' : `from ${material.source}`);
    if (material.parts.length > 0) facts.push(`parts: ${material.parts.map(part => part.name).join(', ')}`);
    for (const pack of material.packs) facts.push(`pack of ${amountText(pack.amount)}${pack.cost ? ` costs ${pack.cost.value} ${pack.cost.currency}` : ''}`);
    if (material.arrives) facts.push(`arrives in ${material.arrives.days} ${material.arrives.working ? 'working ' : ''}${material.arrives.days === 1 ? 'day' : 'days'}`);
    for (const caution of material.cautions) facts.push(`caution: ${caution.kind}`);
    return facts;
}

function keptIn(kept: Prose | undefined): string[] {
    return kept?.parts.length ? [`- kept in ${proseText(kept)}`] : [];
}

function amountText({ value, unit }: Amount): string {
    return unit ? `${value} ${unit}` : value;
}

function lessonFacts(lesson: LessonSheet, week: number | undefined): string {
    const minutes = lesson.parts.reduce((sum, part) => sum + (part.minutes ?? 0), 0);
    return ['lesson', `${minutes} min`, week === undefined ? '' : `week ${week}`].filter(Boolean).join(', ');
}

/** The days that a calendar takes from the class whose line names it. */
export function describeCalendar(node: ast.DayOff, services: HaversackServerServices): string | undefined {
    const term = services.terms.of(AstUtils.getDocument(node).uri).all().classes.find(({ group }) => group.name === (node.$container as ast.Class).name);
    return node.path === undefined || !term ? undefined : [heading(node.path, `calendar, for ${plain(term.group.title)}`), ...list(aboutCalendar(node.path, term))].join('\n');
}

function list(facts: readonly string[]): string[] {
    return facts.map(fact => `- ${plain(fact)}`);
}

function heading(title: string, detail: string): string {
    return `**${plain(title)}** (${detail})`;
}

/** Text of the programme as plain Markdown: nothing in it can become markup. */
function plain(text: string): string {
    return text.replace(/[\\`*_{}[\]<>()#+!|&~-]/g, '\\$&');
}

function proseText(prose: Prose): string {
    return plain(prose.parts.map(part => ('text' in part ? part.text : part.name)).join('').replace(/\n/g, ' '));
}

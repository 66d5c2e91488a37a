import { AstUtils, type LangiumDocument, type Reference, type ReferenceInfo, type Scope, type ScopeProvider } from 'langium';
import * as ast from '../generated/ast.js';
import { isPartOfNamedLesson } from '../linking/scopes.js';
import { nearest } from '../lexer/nearest.js';
import { mention, rangeOf } from '../sheets/ast-ranges.js';
import type { Programme } from '../sheets/programme.js';
import type { Range } from '../sheets/sheet.js';
import { titleFromName } from '../sheets/titles.js';
import type { Edit, Explained, Fix, Problem } from './check.js';
import { removeLinesOf } from './fixes.js';

export const unknownName: Explained = {
    code: 'unknown-name', severity: 'error', title: 'A name that nothing in the programme has',
    explains: 'Every name is looked up in all files of the programme. This one is not there: it is misspelt, or what it names has not been written down yet. The nearest known name is offered; a thing can be added to the inventory, an objective declared.',
    wrong: 'lesson weigh-1\n  materials\n    spring-scale 1 per pair', right: 'material spring-scale\n  reusable\n\nlesson weigh-1\n  materials\n    spring-scale 1 per pair\n  activity lift\n    do: Hang the bag on the {spring-scale}.\n'
};

/**
 * Names that lead nowhere, with the nearest known one. Asks the linker's references, so that it never disagrees with it. A
 * name that stands in a line that could not be read may be declared there, and a line that is wrong in itself has its own message:
 * both wait until that line is mended.
 */
export function unknownNames(document: LangiumDocument, scopes: ScopeProvider, programme: Programme): Problem[] {
    const broken = new Set(programme.files.get(document.uri.toString())?.brokenLines);
    const problems: Problem[] = [];
    for (const reference of document.references) {
        const error = 'error' in reference ? reference.error : undefined;
        const name = reference.$refText;
        if (!error || name === '') continue;
        const { at } = mention(reference as Reference);
        if (programme.unreadable.has(name) || broken.has(at.start.line)) continue;
        if (isPartOfUnknownLesson(error.info)) continue;
        problems.push(problemFor(error.info, name, at, document.uri.toString(), scopes, programme));
    }
    return problems;
}

/** A change names a part of a lesson that is unknown itself, which has its own message. */
function isPartOfUnknownLesson({ container, property }: ReferenceInfo): boolean {
    return property === 'part' && isPartOfNamedLesson(container) && !!container.lesson && container.lesson.ref === undefined;
}

function problemFor(info: ReferenceInfo, name: string, at: Range, uri: string, scopes: ScopeProvider, programme: Programme): Problem {
    const guess = nearestIn(scopes.getScope(info), name);
    const kind = kindOf(info);
    const fixes: Fix[] = [];
    if (guess) fixes.push({ title: `Change to '${guess}'`, edits: [{ uri, replace: at, text: guess }], preferred: true });
    if (kind === 'thing' || kind === 'material' || kind === 'in prose') fixes.push(addToInventory(name, uri, programme, !guess));
    if (kind === 'objective') fixes.push(declareObjective(name, uri, programme, !guess));
    fixes.push(...removalOfChange(info, uri));
    return {
        code: unknownName.code, severity: unknownName.severity, uri, at, fixes,
        message: `${sentence(info, kind, name)}${elsewhere(kind, name, programme)}${guess ? `; did you mean '${guess}'?` : '.'}`
    };
}

/** Where a line of an adaptation names what is not there, as when the course has dropped it; not for what it brings along. */
function removalOfChange({ container }: ReferenceInfo, uri: string): Fix[] {
    const line = ast.isPartOfLesson(container) ? container.$container : container;
    return ast.isChange(line) ? [{ title: 'Remove this change', edits: [removeLinesOf(uri, rangeOf(line))] }] : [];
}

function nearestIn(scope: Scope, name: string): string | undefined {
    return nearest(name, scope.getAllElements().map(({ name: known }) => known));
}

type Kind = 'thing' | 'material' | 'part' | 'lesson' | 'step' | 'objective' | 'game' | 'book' | 'kit' | 'course' | 'class' | 'framework' | 'in prose';

function kindOf({ container, property }: ReferenceInfo): Kind {
    if (property === 'names') return 'in prose';
    if (ast.isNeedOption(container) && property === 'parts') return 'part';
    if (ast.isStandIn(container)) return 'material';
    if (property === 'activity' || property === 'part') return 'step';
    if (property === 'objectives' || property === 'buildsOn') return 'objective';
    const byProperty: Record<string, Kind> = {
        game: 'game', book: 'book', kit: 'kit', of: 'course', teaches: 'course', forClass: 'class', sharesWith: 'class', framework: 'framework', lesson: 'lesson', lessons: 'lesson',
        follows: 'lesson', anchor: 'lesson', forLesson: 'lesson', others: 'lesson'
    };
    return byProperty[property] ?? 'thing';
}

function sentence({ container }: ReferenceInfo, kind: Kind, name: string): string {
    const lesson = AstUtils.getContainerOfType(container, ast.isLesson)?.name;
    const who = lesson ? `lesson ${lesson}` : 'this line';
    const subject = who.charAt(0).toUpperCase() + who.slice(1);
    switch (kind) {
        case 'thing':
        case 'material': return `${ast.isNeedOption(container) ? `${subject} needs` : `${subject} names`} '${name}', which is not in any inventory`;
        case 'part': return `'${name}' is not among the parts of ${ast.isNeedOption(container) ? `'${container.thing?.$refText}'` : 'this material'}`;
        case 'objective': return `${subject} names the objective '${name}', which is declared nowhere`;
        case 'step': return `There is no part '${name}' in this lesson`;
        case 'in prose': return `'{${name}}' names nothing in this programme`;
        default: return `There is no ${kind} '${name}'`;
    }
}

/** Says so when the name exists, but for something of another kind. */
function elsewhere(kind: Kind, name: string, programme: Programme): string {
    const kinds: [string, ReadonlyMap<string, unknown>][] = [
        ['material', programme.materials], ['print', programme.prints], ['book', programme.books], ['game', programme.games], ['kit', programme.kits],
        ['lesson', programme.lessons], ['objective', programme.objectives], ['course', programme.courses], ['class', programme.classes]
    ];
    const other = kinds.find(([, names]) => names.has(name));
    return other && other[0] !== kind ? ` ('${name}' is ${other[0] === 'objective' ? 'an' : 'a'} ${other[0]})` : '';
}

/** A new material after the last one of the programme; with no inventory yet, at the end of this file. */
function addToInventory(name: string, uri: string, programme: Programme, preferred: boolean): Fix {
    const lines = [`material ${name} "${titleFromName(name)}"`, '  reusable'];
    return { title: `Add '${name}' to the inventory`, edits: [afterLast(lines, uri, [...programme.materials.values()])], preferred };
}

function declareObjective(name: string, uri: string, programme: Programme, preferred: boolean): Fix {
    const lines = [`objective ${name} "${titleFromName(name)}"`];
    return { title: `Declare the objective '${name}'`, edits: [afterLast(lines, uri, [...programme.objectives.values()])], preferred };
}

function afterLast(lines: string[], uri: string, known: readonly { uri: string; whole: Range }[]): Edit {
    const last = known[known.length - 1];
    if (!last) return { uri, afterLine: Number.MAX_SAFE_INTEGER, deeper: 0, lines: ['', ...lines] };
    return { uri: last.uri, afterLine: last.whole.end.line, deeper: 0, like: last.whole.start.line, lines: ['', ...lines] };
}

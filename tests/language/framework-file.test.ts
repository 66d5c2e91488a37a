/** Frameworks that are broken, knotted, huge or hostile: always an answer, in words that help. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FrameworkFile, FrameworkItem } from '@haversack/language/attachments/attachment';
import { readFramework } from '@haversack/language/attachments/framework-file';

interface Tied { child: string; parent: string; n?: number; grouped?: boolean }

/** Items named by a letter, the document by "doc". */
function packageOf(items: string[], ties: Tied[]): Record<string, unknown> {
    return {
        CFDocument: { identifier: 'doc', uri: 'https://valley.example/doc', title: 'Valley' },
        CFItems: items.map(id => ({ identifier: id, uri: `https://valley.example/${id}`, fullStatement: `Statement ${id}`, humanCodingScheme: id })),
        CFAssociations: ties.map(({ child, parent, n, grouped }) => ({
            associationType: 'isChildOf', originNodeURI: { identifier: child }, destinationNodeURI: { identifier: parent }, sequenceNumber: n, CFAssociationGroupingURI: grouped ? { identifier: 'g' } : undefined
        }))
    };
}

function read(json: unknown): FrameworkFile {
    const attachment = readFramework(JSON.stringify(json));
    if (attachment.state !== 'framework') throw new Error(JSON.stringify(attachment));
    return attachment.framework;
}

function wrong(text: string): string {
    const attachment = readFramework(text);
    if (attachment.state !== 'wrong') throw new Error('it was read');
    return attachment.message;
}

/** Codes with those under them: "a(b c)". */
function outline(items: readonly FrameworkItem[]): string {
    return items.map(i => (i.code ?? i.statement) + (i.children.length > 0 ? `(${outline(i.children)})` : '')).join(' ');
}

function levels(items: readonly FrameworkItem[]): number {
    return items.length === 0 ? 0 : 1 + Math.max(...items.map(i => levels(i.children)));
}

const flat = (items: readonly FrameworkItem[]): string[] => items.flatMap(i => [i.identifier, ...flat(i.children)]);

test('the example', () => {
    const framework = readFramework(readFileSync(new URL('../../examples/year/frameworks/valley-outcomes.json', import.meta.url), 'utf8'));
    expect(framework).toMatchObject({ state: 'framework', framework: { title: 'Valley outcomes, ages 6 to 8', remarks: [] } });
    if (framework.state === 'framework') {
        expect(outline(framework.framework.items)).toBe('N(N.1 N.2 N.3 N.4 N.5) C(C.1 C.2 C.3 C.4 C.5) F(F.1) M(M.1 M.2 M.3 M.4) G(G.1 G.2) D(D.1) S(S.1 S.2 S.3 S.4 S.5 S.6) P(P.1)');
    }
});

describe('trees', () => {
    test.each<[string, string[], Tied[], string, string?]>([
        ['order by number; without one last, in the file’s order', ['a', 'b', 'c', 'd'], [{ child: 'a', parent: 'doc' }, { child: 'b', parent: 'doc', n: 2 }, { child: 'c', parent: 'doc', n: 1 }, { child: 'd', parent: 'doc' }], 'c b a d'],
        ['numbers below nought and broken ones', ['a', 'b', 'c'], [{ child: 'a', parent: 'doc', n: 1.5 }, { child: 'b', parent: 'doc', n: -1 }, { child: 'c', parent: 'doc', n: 1 }], 'b c a'],
        ['no associations', ['b', 'a'], [], 'b a', 'no isChildOf associations'],
        ['a parent that is not there', ['a', 'b', 'c'], [{ child: 'a', parent: 'doc', n: 1 }, { child: 'b', parent: 'gone', n: 0 }, { child: 'c', parent: 'b' }], 'a b(c)', 'One item stands under an item that the file does not have (b); shown at the top.'],
        ['a missing parent beside a known one', ['a', 'b'], [{ child: 'a', parent: 'doc' }, { child: 'b', parent: 'gone' }, { child: 'b', parent: 'a' }], 'a(b)'],
        ['several parents: the first, an item before the document', ['a', 'b', 'c'], [{ child: 'a', parent: 'doc' }, { child: 'b', parent: 'doc' }, { child: 'c', parent: 'doc' }, { child: 'c', parent: 'b' }, { child: 'c', parent: 'a' }], 'a b(c)', 'One item stands under several others (c)'],
        ['a grouping gives way to the main order', ['a', 'b', 'c'], [{ child: 'a', parent: 'doc' }, { child: 'b', parent: 'doc' }, { child: 'c', parent: 'b', grouped: true }, { child: 'c', parent: 'a' }], 'a(c) b', 'several others'],
        ['the same tie twice is no second parent', ['a', 'b'], [{ child: 'b', parent: 'a' }, { child: 'b', parent: 'a' }], 'a(b)'],
        ['a circle', ['a', 'b', 'c', 'd'], [{ child: 'a', parent: 'c' }, { child: 'b', parent: 'a' }, { child: 'c', parent: 'b' }, { child: 'd', parent: 'c' }], 'a(b(c(d)))', 'in a circle; it is cut at a'],
        ['under itself', ['a', 'b'], [{ child: 'a', parent: 'a' }, { child: 'b', parent: 'a' }], 'a(b)', 'circle'],
        ['a circle met from outside', ['x', 'a', 'b'], [{ child: 'x', parent: 'b' }, { child: 'a', parent: 'b' }, { child: 'b', parent: 'a' }], 'a(b(x))', 'cut at a'],
        ['an unknown child', ['a'], [{ child: 'gone', parent: 'a' }, { child: 'doc', parent: 'a' }], 'a']
    ])('%s', (_, items, ties, expected, remark) => {
        const framework = read(packageOf(items, ties));
        expect(outline(framework.items)).toBe(expected);
        expect(framework.remarks).toEqual(remark === undefined ? [] : [expect.stringContaining(remark)]);
    });
    test('any ties: every item stands in the tree once', () => {
        const names = ['doc', 'a', 'b', 'c', 'd', 'e', 'f', 'gone'];
        const tie = fc.record({ child: fc.constantFrom(...names), parent: fc.constantFrom(...names), n: fc.option(fc.integer({ min: -2, max: 4 }), { nil: undefined }), grouped: fc.boolean() });
        fc.assert(fc.property(fc.array(tie, { maxLength: 14 }), ties => {
            expect(flat(read(packageOf(names.slice(1, 7), ties)).items).sort()).toEqual(names.slice(1, 7));
        }), { numRuns: 500 });
    });
    test('items twice, items without statement, entries that are none, codes twice', () => {
        const framework = read({ CFItems: [
            { identifier: 'a', fullStatement: 'First', humanCodingScheme: 1.2 }, { identifier: 'a', fullStatement: 'Again' }, { identifier: 'b', humanCodingScheme: 'B', fullStatement: ' ' },
            { identifier: 'c', abbreviatedStatement: 'Short' }, 'x', null, 3, { humanCodingScheme: 'B', fullStatement: 'Other\u001b[31m \n text' }, {}
        ] });
        expect(framework.items.map(i => [i.code, i.statement])).toEqual([['1.2', 'First'], ['B', 'B'], [undefined, 'Short'], ['B', 'Other [31m text'], [undefined, 'Item without a statement']]);
        expect(framework.remarks).toEqual([
            expect.stringContaining('3 entries of CFItems cannot be read'), expect.stringContaining('lists a more than once'), expect.stringContaining('is given for B, item 5'),
            expect.stringContaining('no isChildOf'), expect.stringContaining('Several items have the code B')
        ]);
    });
});

describe('not a framework', () => {
    test.each([
        ['', 'empty'], [' \n', 'empty'], ['<!DOCTYPE html><html></html>', 'web page or XML'], ['BEGIN:VCALENDAR', 'line 1, column 1 on (at “BEGIN:VCALENDAR”): a framework in the CASE format'],
        ['{"CFItems": [\n  {"identifier": "a",}\n]}', 'line 2, column 22 on (at “} ]}”)'], ['{\r\n"a": 1,\r\n"b" 2}', 'line 3, column 5'], ['{"CFItems": [{"identifier": "a"', 'breaks off in the middle, at line 1, column 32'],
        ['[]', 'an empty list'], ['{}', 'an empty object'], ['"x"', 'a single text'], ['3', 'a single number'], ['true', 'a single word'], ['null', 'the word null'], ['[1, 2]', 'a list of other things'],
        ['{"name": "x", "version": 1, "a": 1, "b": 2}', 'an object with “name”, “version”, “a” and 1 more'], ['{"CFDocument": {}}', 'no CFItems'], ['{"CFItems": []}', 'no items'], ['{"CFItems": null}', 'no items'], ['{"CFItems": [[], "x"]}', 'no items']
    ])('%s', (text, says) => {
        expect(wrong(text)).toContain(says);
        expect(wrong(text)).toContain('Save the framework again');
    });
    test('a byte order mark is no fault', () => {
        expect(readFramework(`\uFEFF${JSON.stringify(packageOf(['a'], []))}`).state).toBe('framework');
    });
});

describe('hostile', () => {
    const example = JSON.stringify(packageOf(['a', 'b'], [{ child: 'a', parent: 'doc', n: 1 }, { child: 'b', parent: 'a' }]), null, 1);
    test('cut off anywhere: said, with the place where it ends', () => {
        for (let end = 1; end < example.length; end++) {
            const lines = example.slice(0, end).split('\n');
            expect(wrong(example.slice(0, end))).toContain(`breaks off in the middle, at line ${lines.length}, column ${lines.at(-1)!.length + 1}`);
        }
    });
    test('any JSON in any place of a package, and any text, gives an answer', () => {
        const value = fc.jsonValue();
        fc.assert(fc.property(value, value, value, value, (a, b, c, d) => {
            for (const json of [a, { CFDocument: a, CFItems: b, CFAssociations: c }, { CFItems: [{ identifier: a, fullStatement: b, humanCodingScheme: c, uri: d, CFItemType: a }], CFAssociations: [{ associationType: 'isChildOf', originNodeURI: a, destinationNodeURI: b, sequenceNumber: d }] }]) {
                const attachment = readFramework(JSON.stringify(json));
                expect(JSON.parse(JSON.stringify(attachment))).toEqual(attachment);
            }
        }));
        fc.assert(fc.property(fc.string({ unit: 'binary' }), text => { readFramework(text); }));
    });
    test('names of an object’s own making reach no prototype', () => {
        const text = `{"__proto__": {"CFItems": [{"fullStatement": "x"}], "polluted": 1}, "constructor": {"prototype": {"polluted": 1}}, "CFItems": [
            {"identifier": "__proto__", "fullStatement": "a", "humanCodingScheme": "constructor", "__proto__": {"polluted": 1}}, {"identifier": "toString", "fullStatement": "b"}],
            "CFAssociations": [{"associationType": "isChildOf", "originNodeURI": "toString", "destinationNodeURI": "__proto__"}, {"associationType": "isChildOf", "originNodeURI": "__proto__", "destinationNodeURI": "valueOf"}]}`;
        const attachment = readFramework(text);
        expect(attachment.state === 'framework' && outline(attachment.framework.items)).toBe('constructor(b)');
        expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
    });
    test('brackets 200,000 deep, closed and open', () => {
        expect(wrong('['.repeat(200_000) + ']'.repeat(200_000))).toContain('not a framework');
        expect(wrong('{"a":'.repeat(200_000))).toContain('breaks off');
        expect(readFramework(`{"CFItems": [{"fullStatement": "a", "notes": ${'['.repeat(200_000)}${']'.repeat(200_000)}}]}`).state).toBe('framework');
    });
    test('items 10,000 deep are lifted to a level that can be drawn, none lost', () => {
        const names = Array.from({ length: 10_000 }, (_, i) => `i${i}`);
        const framework = read(packageOf(names, names.map((child, i) => ({ child, parent: names[i - 1] ?? 'doc' }))));
        expect(levels(framework.items)).toBe(50);
        expect(flat(framework.items)).toEqual(names);
        expect(framework.remarks).toEqual([expect.stringContaining('more than 50 levels deep')]);
    });
    test('5 MB: 20,000 items under 200 branches, and one long statement', () => {
        const names = Array.from({ length: 20_000 }, (_, i) => `item-${i}`);
        const json = packageOf(names, names.map((child, i) => ({ child, parent: i < 200 ? 'doc' : names[i % 200]!, n: 20_000 - i })));
        const text = JSON.stringify(json);
        expect(text.length).toBeGreaterThan(5e6);
        const { items, remarks } = read(json);
        expect([items.length, items[0]?.code, items[0]?.children.length, remarks]).toEqual([200, 'item-199', 99, []]);
        expect(wrong(`${text}x`)).toContain(`line 1, column ${text.length + 1}`);
        expect(read({ CFItems: [{ fullStatement: 'x '.repeat(2.5e6) }] }).items[0]?.statement.length).toBe(5e6 - 1);
    });
});

/**
 * 1EdTech CASE, final version 1.0 of 7 July 2017. Field lists, required and optional, from the published OpenAPI (Swagger 2.0) definition
 * of the CASE v1p0 service as carried by opensalt/opensalt, `web/case-v1p0-swagger.json`. All statements and titles are our own.
 */
import { describe, expect, test } from 'vitest';
import type { FrameworkFile, FrameworkItem } from '@haversack/language/attachments/attachment';
import { readFramework } from '@haversack/language/attachments/framework-file';

const changed = '2026-08-01T08:00:00+00:00';
const base = 'https://valley.example/ims/case/v1p0';
const uuid = (n: number): string => `a1b2c3d4-0000-4000-8000-${String(n).padStart(12, '0')}`;
const link = (kind: string, id: string, title: string) => ({ title, identifier: id, uri: `${base}/${kind}/${id}` });

/** Required fields only. */
const requiredDocument = { identifier: uuid(0), uri: `${base}/CFDocuments/${uuid(0)}`, creator: 'Valley', title: 'Valley outcomes', lastChangeDateTime: changed };
const requiredItem = (n: number, fullStatement: string) => ({ identifier: uuid(n), fullStatement, uri: `${base}/CFItems/${uuid(n)}`, lastChangeDateTime: changed });
const requiredAssociation = (n: number, child: number, parent: number, associationType = 'isChildOf') => ({
    identifier: uuid(n), associationType, uri: `${base}/CFAssociations/${uuid(n)}`, lastChangeDateTime: changed,
    originNodeURI: link('CFItems', uuid(child), 'child'), destinationNodeURI: link(parent === 0 ? 'CFDocuments' : 'CFItems', uuid(parent), 'parent')
});

/** Every optional field of the definition, in the form that it gives. */
const optionalDocument = {
    officialSourceURL: 'https://valley.example/outcomes', publisher: 'Valley', description: 'Invented.', subject: ['Mathematics'], subjectURI: [link('CFSubjects', uuid(900), 'Mathematics')],
    language: 'en', version: '2', adoptionStatus: 'Draft', statusStartDate: '2026-08-01', statusEndDate: '2030-07-31', licenseURI: link('CFLicenses', uuid(901), 'Own'), notes: 'None.'
};
const optionalItem = {
    alternativeLabel: 'Weigh', CFItemType: 'Outcome', humanCodingScheme: 'M.1', listEnumeration: '1', abbreviatedStatement: 'Compares.', conceptKeywords: ['mass'],
    conceptKeywordsURI: link('CFConcepts', uuid(902), 'mass'), notes: 'None.', language: 'en', educationLevel: ['01', '02'],
    CFItemTypeURI: link('CFItemTypes', uuid(903), 'Outcome'), licenseURI: link('CFLicenses', uuid(901), 'Own'), statusStartDate: '2026-08-01', statusEndDate: '2030-07-31'
};
const optionalAssociation = { sequenceNumber: 1, CFAssociationGroupingURI: link('CFAssociationGroupings', uuid(904), 'Main') };
const definitions = {
    CFConcepts: [], CFSubjects: [], CFLicenses: [], CFAssociationGroupings: [],
    CFItemTypes: [{ identifier: uuid(903), uri: `${base}/CFItemTypes/${uuid(903)}`, title: 'Outcome', description: '', hierarchyCode: '1', lastChangeDateTime: changed, typeCode: 'O' }]
};

function read(json: unknown): FrameworkFile {
    const attachment = readFramework(JSON.stringify(json));
    if (attachment.state !== 'framework') throw new Error(JSON.stringify(attachment));
    return attachment.framework;
}

/** "a(b c(d))": statements with those under them. */
function outline(items: readonly FrameworkItem[]): string {
    return items.map(i => i.statement + (i.children.length > 0 ? `(${outline(i.children)})` : '')).join(' ');
}

describe('the published definition', () => {
    test('required fields alone', () => {
        const framework = read({
            CFDocument: requiredDocument, CFItems: [requiredItem(1, 'Mass'), requiredItem(2, 'Compares')],
            CFAssociations: [requiredAssociation(10, 1, 0), requiredAssociation(11, 2, 1)]
        });
        expect(framework).toEqual({
            title: 'Valley outcomes', remarks: [],
            items: [{ identifier: uuid(1), statement: 'Mass', children: [{ identifier: uuid(2), statement: 'Compares', children: [] }] }]
        });
    });
    test('every optional field', () => {
        const framework = read({
            CFDocument: { ...requiredDocument, ...optionalDocument }, CFItems: [{ ...requiredItem(1, 'Compares two masses.'), ...optionalItem }],
            CFAssociations: [{ ...requiredAssociation(10, 1, 0), ...optionalAssociation }], CFDefinitions: definitions, CFRubrics: []
        });
        expect(framework).toEqual({ title: 'Valley outcomes', remarks: [], items: [{ identifier: uuid(1), code: 'M.1', statement: 'Compares two masses.', type: 'Outcome', children: [] }] });
    });
    test('only CFDocument is required of a package: without items there is nothing to compare with', () => {
        expect(readFramework(JSON.stringify({ CFDocument: { ...requiredDocument, CFPackageURI: link('CFPackages', uuid(0), 'x') } }))).toEqual({ state: 'wrong', message: expect.stringContaining('no CFItems') });
    });
    // The enumeration of associationType in the definition, whole.
    test.each(['isChildOf', 'isPeerOf', 'isPartOf', 'exactMatchOf', 'precedes', 'isRelatedTo', 'replacedBy', 'exemplar', 'hasSkillLevel'])('%s', type => {
        const { items } = read({ CFDocument: requiredDocument, CFItems: [requiredItem(1, 'a'), requiredItem(2, 'b')], CFAssociations: [requiredAssociation(10, 1, 0), requiredAssociation(11, 2, 0), requiredAssociation(12, 2, 1, type)] });
        expect(outline(items)).toBe(type === 'isChildOf' ? 'a(b)' : 'a b');
    });
});

test('the display order follows sequenceNumber and not the array; the document’s identifier need not be a strict UUID', () => {
    // The shape of opensalt/opensalt, core/tests/_data/SequenceNumberFramework.json (two items, numbers 2 and 1, document id of noughts after a d), with invented texts.
    const document = 'd0000000-0000-0000-0000-000000000000';
    const item = (identifier: string, humanCodingScheme: string, fullStatement: string) => ({ ...requiredItem(1, fullStatement), identifier, uri: `${base}/CFItems/${identifier}`, humanCodingScheme });
    const child = (n: number, identifier: string, sequenceNumber: number) => ({
        ...requiredAssociation(n, 1, 0), sequenceNumber, originNodeURI: link('CFItems', identifier, 'item'), destinationNodeURI: link('CFDocuments', document, 'document')
    });
    const [first, second] = ['e144c2e6-1111-11e7-95f7-000000000001', 'ea98ab46-1111-11e7-820f-000000000002'];
    const { items, remarks } = read({
        CFDocument: { ...requiredDocument, identifier: document, uri: `${base}/CFDocuments/${document}` },
        CFItems: [item(first, 'ORD.1', 'Written first'), item(second, 'ORD.2', 'Written second, stands first')],
        CFAssociations: [child(10, first, 2), child(11, second, 1)]
    });
    expect(items.map(i => i.code)).toEqual(['ORD.2', 'ORD.1']);
    expect(remarks).toEqual([]);
});

/** What exports are seen to do beside the definition; the same repository's own import schema allows all of it. */
describe('as exports really are', () => {
    const two = [requiredItem(1, 'a'), requiredItem(2, 'b')];
    test('CFDocumentURI in items of a package, null fields, single words for lists, times in dates, unknown fields of 1.1', () => {
        const loose = {
            CFDocumentURI: link('CFDocuments', uuid(0), 'x'), humanCodingScheme: null, CFItemType: null, listEnumeration: null, educationLevel: '01', statusStartDate: changed, extensions: { x: [1] }, subject: ['M'], caseVersion: '1.1'
        };
        const framework = read({
            CFDocument: { ...requiredDocument, subject: 'Mathematics', caseVersion: '1.1', notes: null, statusStartDate: changed }, CFItems: [{ ...two[0], ...loose }, two[1]],
            CFAssociations: [{ ...requiredAssociation(10, 1, 0), sequenceNumber: null, extensions: {} }, { ...requiredAssociation(11, 2, 1), sequenceNumber: '3' }], CFDefinitions: null, CFRubrics: null
        });
        expect(outline(framework.items)).toBe('a(b)');
        expect(framework.items[0]).toEqual({ identifier: uuid(1), statement: 'a', children: [expect.anything()] });
        expect(framework.remarks).toEqual([]);
    });
    test.each([
        ['bare identifiers', uuid(2), uuid(1)],
        ['bare addresses', `${base}/CFItems/${uuid(2)}`, `${base}/CFItems/${uuid(1)}`],
        ['addresses alone in objects', { uri: `${base}/CFItems/${uuid(2)}` }, { uri: `${base}/CFItems/${uuid(1)}` }],
        ['addresses of another server', { uri: `https://other.example/uri/${uuid(2)}` }, `https://other.example/uri/${uuid(1)}`]
    ])('nodes as %s', (_, originNodeURI, destinationNodeURI) => {
        const { items, remarks } = read({ CFDocument: requiredDocument, CFItems: two, CFAssociations: [requiredAssociation(10, 1, 0), { ...requiredAssociation(11, 2, 0), originNodeURI, destinationNodeURI }] });
        expect(outline(items)).toBe('a(b)');
        expect(remarks).toEqual([]);
    });
    test('the document by its address alone, or without identifier', () => {
        const byAddress = [1, 2].map(n => ({ ...requiredAssociation(9 + n, n, 0), destinationNodeURI: requiredDocument.uri }));
        expect(read({ CFDocument: requiredDocument, CFItems: two, CFAssociations: byAddress }).remarks).toEqual([]);
        expect(read({ CFDocument: { title: 'x' }, CFItems: two, CFAssociations: byAddress }).remarks).toEqual([]);
        expect(read({ CFItems: two, CFAssociations: byAddress })).toMatchObject({ title: 'Framework without a title', remarks: [] });
    });
    test.each([['in an object', (p: unknown) => ({ CFPackage: p })], ['in data', (p: unknown) => ({ status: 'ok', data: { package: p } })], ['in a list', (p: unknown) => [p]]])('a package %s', (_, wrap) => {
        expect(outline(read(wrap({ CFDocument: requiredDocument, CFItems: two, CFAssociations: [requiredAssociation(10, 1, 0), requiredAssociation(11, 2, 1)] })).items)).toBe('a(b)');
    });
    test('several packages: the first, said', () => {
        expect(read([{ CFItems: [two[0]] }, { CFItems: [two[1]] }])).toMatchObject({ items: [{ statement: 'a' }], remarks: [expect.stringContaining('2 frameworks')] });
    });
});

import { nearest } from '../lexer/nearest.js';
import type { FrameworkFile, FrameworkItem } from '../attachments/attachment.js';
import { attachmentKey } from '../sheets/programme.js';
import type { Check } from './check.js';
import { replace } from './fixes.js';

const state = JSON.stringify({
    CFDocument: { identifier: 'state', title: 'State framework' },
    CFItems: [{ identifier: 'one', humanCodingScheme: 'M.1.1', fullStatement: 'Compares two masses.' }, { identifier: 'two', humanCodingScheme: 'M.1.2', fullStatement: 'Orders three masses.' }],
    CFAssociations: ['one', 'two'].map(item => ({ associationType: 'isChildOf', originNodeURI: { identifier: item }, destinationNodeURI: { identifier: 'state' } }))
});
const example = (code: string): string => `framework state-frame from "frameworks/state.json"\n\nobjective compare-mass\n  aligns to state-frame ${code}\n\nlesson weigh-1\n  objectives\n    introduces compare-mass\n    checks compare-mass\n\ncourse measuring\n  unit weighing\n    weigh-1`;

export const unknownFrameworkCode: Check = {
    code: 'unknown-framework-code', severity: 'warning', title: 'A code that the framework does not have',
    explains: 'The objective is aligned to an item of a framework, and the framework\'s file has no item with that code. What is taught then counts for nothing there. Compare the code with the file; an edition of another year may have other codes.',
    wrong: example('M.1.3'), right: example('M.1.2'), beside: { 'frameworks/state.json': state },
    *find(file, { programme }) {
        const known = new Map<FrameworkFile, Codes>();
        for (const { framework: { name }, code, at } of file.objectives.flatMap(({ alignsTo }) => alignsTo)) {
            const framework = programme.frameworks.get(name);
            const attachment = framework?.from && programme.attachments.get(attachmentKey(framework.uri, framework.from.path));
            if (!framework || attachment?.state !== 'framework') continue;
            const codes = known.get(attachment.framework) ?? new Codes(attachment.framework);
            known.set(attachment.framework, codes);
            if (codes.has(code)) continue;
            const meant = codes.meant(code);
            yield {
                message: `'${framework.title}' has no item '${code}'${meant === undefined ? '. Compare the code with the framework\'s file.' : `; did you mean '${meant}'?`}`, at,
                fixes: meant === undefined ? [] : [{ title: `Change to '${meant}'`, edits: [replace(file.uri, at, `aligns to ${name} ${meant}`)], preferred: true }]
            };
        }
    }
};

/** The codes of a framework: as written, then without regard to case and spaces where only one is meant. */
class Codes {
    private readonly codes = new Set<string>();
    private readonly identifiers = new Set<string>();
    private readonly loose = new Map<string, string | undefined>();

    constructor({ items }: FrameworkFile) {
        const open: FrameworkItem[] = [...items];
        for (let item = open.pop(); item; item = open.pop()) {
            this.identifiers.add(item.identifier);
            for (const child of item.children) open.push(child);
            if (item.code === undefined) continue;
            this.codes.add(item.code);
            this.loose.set(loosely(item.code), this.loose.has(loosely(item.code)) ? undefined : item.code);
        }
    }

    has(code: string): boolean {
        return this.codes.has(code) || this.identifiers.has(code) || this.loose.get(loosely(code)) !== undefined;
    }

    /** The nearest code that can be written: spaces in it are left out. */
    meant(code: string): string | undefined {
        return nearest(code, [...this.codes].map(known => known.replace(/\s+/g, '')).filter(known => /^[^,()"]+$/.test(known) && this.has(known)));
    }
}

function loosely(code: string): string {
    return code.replace(/\s+/g, '').toLowerCase();
}

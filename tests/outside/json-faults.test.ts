/** What is JSON (RFC 8259) and what is not, against the engine's own reader, which says whether but not always where. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jsonFault } from '@haversack/language/attachments/json-fault';

function engine(text: string): { position?: number } | undefined {
    try {
        JSON.parse(text);
        return undefined;
    } catch (error) {
        const position = / at position (\d+)/.exec((error as Error).message)?.[1];
        return { position: position === undefined ? undefined : Number(position) };
    }
}

function agree(text: string): void {
    const [ours, theirs] = [jsonFault(text), engine(text)];
    expect(ours === undefined, text).toBe(theirs === undefined);
    if (!ours || theirs?.position === undefined || ours.cutOff) return;
    // Ours is the start of a broken word, number or escape; the engine's the first odd letter in it.
    expect(ours.offset, text).toBeLessThanOrEqual(theirs.position);
    expect(ours.offset, text).toBeGreaterThanOrEqual(theirs.position - 6);
}

describe('agrees with the engine', () => {
    // The grammar's corners, section by section of RFC 8259: values, objects, arrays, numbers, strings.
    test.each([
        'true', 'false', 'null', 'True', 'nul', 'truex', ' 1 ', '1 2', '', '\u00a01', '\uFEFF1',
        '{}', '{ }', '{"a":1}', '{"a":1,}', '{,}', '{a:1}', "{'a':1}", '{"a" 1}', '{"a":}', '{"a":1 "b":2}', '{"a":1,"a":2}', '{"__proto__":1}',
        '[]', '[ ]', '[1,]', '[,1]', '[1 2]', '[[[]]]', '[[[]]', '[]]', '[1,2]3',
        '0', '-0', '-', '+1', '01', '1.', '.5', '1.5', '1e5', '1E+5', '1e', '1e+', '0x1', 'NaN', 'Infinity', '-Infinity', '1_000', '123456789012345678901234567890',
        '""', '"a', '"\\n"', '"\\x"', '"\\u00e9"', '"\\u00e"', '"\\ud800"', '"\t"', '"\n"', '"\u007f"', '"\u2028"', '"\\"', '"/"', '"\\/"', '// c\n1', '[1] // c'
    ])('%j', text => agree(text));
    test('any JSON with any letter put in, taken out or changed', () => {
        fc.assert(fc.property(fc.json(), fc.nat(), fc.constantFrom('', ',', '"', '\\', '{', '}', '[', ']', ':', '1', '-', '.', 'e', 't', ' ', '\n', '\u0001'), fc.integer({ min: 0, max: 2 }), (json, where, put, out) => {
            const at = where % (json.length + 1);
            agree(json.slice(0, at) + put + json.slice(at + out));
        }), { numRuns: 3000 });
    });
});

test('lines and columns, whatever ends the lines', () => {
    expect(jsonFault('{\n "a": 1,\n "b": x}')).toEqual({ offset: 17, line: 3, column: 7, cutOff: false });
    expect(jsonFault('{\r\n "a": 1,\r\n "b": x}')).toMatchObject({ line: 3, column: 7 });
    expect(jsonFault('{\r "a": 1,\r "b": x}')).toMatchObject({ line: 3, column: 7 });
    expect(jsonFault('[1,\n')).toEqual({ offset: 4, line: 2, column: 1, cutOff: true });
});

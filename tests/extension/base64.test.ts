import { expect, it } from 'vitest';
import { base64 } from '../../extension/base64.js';

// RFC 4648, section 10.
it.each([['', ''], ['f', 'Zg=='], ['fo', 'Zm8='], ['foo', 'Zm9v'], ['foob', 'Zm9vYg=='], ['fooba', 'Zm9vYmE='], ['foobar', 'Zm9vYmFy']])('%j travels as %j', (text, written) => {
    expect(base64(new TextEncoder().encode(text))).toBe(written);
});

it('takes every byte, and more of them than a call takes arguments', () => {
    const bytes = Uint8Array.from({ length: 300_001 }, (_, index) => (index * 7) % 256);
    expect(base64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
});

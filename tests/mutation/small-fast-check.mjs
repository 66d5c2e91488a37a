// fast-check with the same few samples each time: whether a change is noticed must not hang on chance, and thousands of changes are tried.
import * as all from 'fast-check';

const few = options => ({ ...options, numRuns: globalThis.haversackSamples === 'all' ? options?.numRuns : Math.min(options?.numRuns ?? 100, 30), seed: 20, endOnFailure: true });
export * from 'fast-check';
export const assert = (property, options) => all.assert(property, few(options));
export default { ...all.default, assert };

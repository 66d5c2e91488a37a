/** Texts that would break out of a careless writer. None of them is valid emphasis, code, list or permitted link. */
export const hostileTexts = [
    '<script>alert(1)</script>',
    '"><img src=x onerror=alert(1)>',
    "' onmouseover='alert(1)' style='color:red",
    '[go](javascript:alert(1))',
    '<javascript:alert(1)>',
    '![p](data:image/svg+xml,<svg/onload=alert(1)>)',
    '</style></title></section></main><h1>',
    '{constructor} }{ {',
    'constructor',
    ']]> <!-- --><?x?>',
    '&lt;b&gt; &#60;i&#62;',
    'dir \u202eesrever\u2066 ltr',
    '${alert(1)} #{x} <%= y %>'
];

/** Fields that hold one of a few fixed words or an address, which no writer can fill freely. */
const fixed = new Set(['kind', 'word', 'source', 'does', 'use', 'then', 'when', 'uri', 'exact', 'date', 'from', 'to', 'neededBy', 'orderBy', 'starts', 'ends', 'today', 'minor', 'currency', 'id', 'happened']);
/** `why` is one of these or a sentence. */
const reasons = new Set(['fixed', 'repeat', 'revisit', 'catch-up', 'waiting']);

/** Figures with every free text replaced by one text. */
export function everyTextAs<Figures>(figures: Figures, text: string): Figures {
    const walk = (value: unknown, key: string): unknown => {
        if (typeof value === 'string') return fixed.has(key) || (key === 'why' && reasons.has(value)) ? value : text;
        if (Array.isArray(value)) return value.map(inner => walk(inner, key));
        if (value === null || typeof value !== 'object') return value;
        return Object.fromEntries(Object.entries(value).map(([inner, content]) => [inner, walk(content, inner)]));
    };
    return walk(figures, '') as Figures;
}

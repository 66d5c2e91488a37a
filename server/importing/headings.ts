/** What a column of an inventory can mean. */
export const meanings = ['name', 'title', 'use', 'unit', 'pack', 'price', 'currency', 'lead', 'source', 'on-hand', 'safety-stock', 'spare', 'keeps', 'note', 'unused'] as const;
export type Meaning = (typeof meanings)[number];

/** Each meaning in words, as reports and menus show it. */
export const meaningWords: Readonly<Record<Meaning, string>> = {
    name: 'name in the language', title: 'title', use: 'reusable or consumable', unit: 'unit', pack: 'pack', price: 'price of a pack', currency: 'currency', lead: 'days until it arrives',
    source: 'where it comes from', 'on-hand': 'what is on hand', 'safety-stock': 'safety stock', spare: 'spare per cent', keeps: 'how long it keeps', note: 'note', unused: 'not used'
};

export interface HeadingGuess {
    means: Meaning;
    /** 3: these very words; 2: words that say it; 1: may mean it, if the cells fit. */
    sure: 1 | 2 | 3;
    /** Why a column is left out on purpose. */
    why?: string;
}

/** Lower case, without signs, brackets and accents: "Qty. (on hand)" is "qty on hand". */
export function plainHeading(heading: string): string {
    return heading.toLowerCase().normalize('NFKD').replace(/\p{M}/gu, '').replace(/[()[\]{}]/g, ' ').replace(/[^\p{L}\p{N}%#]+/gu, ' ').trim();
}

const computed = 'such numbers are worked out from the lessons';

// In this order: the first that fits counts. English first; a few words of other languages that spreadsheets are kept in.
const rules: [Meaning, HeadingGuess['sure'], RegExp, string?][] = [
    ['title', 3, /^(?:items?|item names?|item titles?|titles?|materials?|material names?|things?|articles?|products?|product names?|supply|supplies|equipment|resources?|objects?|what|item description|artikel|bezeichnung|gegenstand|material name|articulo|nom|nombre|designation)$/],
    ['title', 2, /^names?$/],
    ['name', 3, /^(?:short names?|slugs?|haversack names?|language names?|keys?|codes?|ids?|identifiers?|item (?:codes?|ids?|keys?)|kurzname)$/],
    ['unused', 3, /\b(?:totals?|sub ?totals?|sum|line (?:price|cost|value)|stock value|value of stock|gesamt|summe)\b/, 'totals are worked out'],
    ['unused', 2, /\b(?:needs?|needed|required?|requirements?|to (?:buy|order)|ordered|on order|used so far|per (?:child|learner|pupil|pair|group|student)|bedarf)\b/, computed],
    ['unused', 2, /\b(?:expiry|expires|expiration|best before|use by|date|last (?:bought|ordered|counted|checked)|updated)\b/, 'dates are not part of an inventory'],
    ['unused', 3, /^(?:row|no|nr|#|line|s ?no|index|lfd nr)$/, 'a running number says nothing about a thing'],
    ['currency', 3, /^(?:currency|currencies|ccy|cur|wahrung|devise|moneda)$/],
    ['safety-stock', 2, /\b(?:min|minimum|reorder|re order|safety stock|par|keep at least|buffer|mindestbestand)\b/],
    ['keeps', 2, /\b(?:shelf life|keeps|keeps for|good for|haltbar|haltbarkeit)\b/],
    ['lead', 2, /\b(?:lead ?time|lead|delivery(?: time| days| in)?|arrives?(?: in)?|arrival|days? to (?:arrive|deliver|get)|order(?:ing)? time|ships? in|shipping time|turnaround|lieferzeit|delai|plazo)\b/],
    ['spare', 2, /\b(?:spares?|allowance|overage|extra %|% extra)\b/],
    ['price', 3, /^(?:price|prices|cost|costs|price paid|preis|prix|precio|kosten)$/],
    ['price', 2, /\b(?:price|prices|cost|costs|rrp|msrp|paid|preis|stuckpreis|packungspreis|prix|precio|coste|costo)\b/],
    ['on-hand', 2, /\b(?:packs?|packets?|boxes|bags|packages) (?:in stock|on hand|left|we have|available)\b/],
    ['pack', 2, /\b(?:packs?|packages?|packets?|pkg|pk|packaging|packung|gebinde|bundles?|sold (?:in|as|by)|(?:box|bag|case|carton|container|unit) (?:size|qty|quantity|count|content|contents)|contents?|paquet|paquete)\b/],
    ['pack', 2, /^(?:sizes?|size sold)$/],
    ['unit', 3, /^(?:units?|uom|u o m|measures?|units? of measure(?:ment)?|measured in|counted in|einheit|unite|unidad|um)$/],
    ['on-hand', 2, /\b(?:on ?hand|in stock|stock|stock level|we have|have|owned|available|in (?:the )?cupboard|current|currently|inventory|left|remaining|bestand|vorhanden|existencias|en stock)\b/],
    ['on-hand', 2, /^(?:qty|qtys|quantity|quantities|count|amount|amounts|number|how many|how much|number of items|no of items|menge|anzahl|quantite|cantidad)$/],
    ['on-hand', 1, /\b(?:qty|quantity|count|amount|how many|how much|number|menge|anzahl)\b/],
    ['source', 2, /^(?:sources?|from|comes from|where from|where to (?:get|buy)(?: it)?|where we get it|get (?:it )?from|bring from|obtain(?:ed)? from|origin|provided by|quelle|herkunft)$/],
    ['use', 3, /^(?:use|uses|reusable|re usable|reuse|consumable|consumables?|consumable reusable|reusable (?:or )?consumable|consumable (?:or )?reusable|used up|single use|disposable|durable)$/],
    ['use', 1, /^(?:types?|kind|kinds|category|categories|class|art|typ)$/],
    ['note', 2, /\b(?:notes?|comments?|remarks?|remember|beware|care|anmerkung|anmerkungen|bemerkung|bemerkungen|notiz|notizen|notas?|remarques?|observaciones)\b/],
    ['note', 1, /^(?:descriptions?|details?|info|information|specification|specs?|beschreibung)$/],
    ['title', 1, /\b(?:item|title|material|thing|product|article|supply|name|artikel)\b/]
];

/** What a heading most likely means; undefined where its words say nothing. */
export function guessHeading(heading: string): HeadingGuess | undefined {
    const plain = plainHeading(heading);
    if (plain === '' || plain.length > 60) return undefined;
    // "Spare %" and "Extra %" keep their sign; "Cost $" has lost its own.
    const found = rules.find(([, , words]) => words.test(plain));
    return found && { means: found[0], sure: found[1], why: found[3] };
}

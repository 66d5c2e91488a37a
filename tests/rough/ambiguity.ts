/**
 * How long a backtracking matcher can take for a regular expression, decided on its automaton. Two ways through one loop over the same text make it exponential, two loops
 * one behind the other over the same text polynomial; so does a loop that a search can enter anew at each character of the text it runs over.
 * The conditions are those of Weber and Seidl, "On the degree of ambiguity of finite automata" (1991), applied to matchers by Weideman, van der Merwe, Berglund and Watson,
 * "Analyzing matching time behavior of backtracking regular expression matchers by using ambiguity of NFA" (2016).
 *
 * On the safe side: what is looked ahead or behind counts as found, so that an expression may be called slow that is not.
 */
import { parseRegExpLiteral, type AST } from '@eslint-community/regexpp';

export interface Growth {
    growth: 'linear' | 'polynomial' | 'exponential';
    /** Where, for whoever mends it. */
    why?: string;
}

/** Bounded repetitions are read as this many at most: more of them change a factor, not the growth. */
const mostCopies = 3;

interface Position {
    raw: string;
    /** Which characters of the alphabet it takes. */
    takes: Uint8Array;
    follow: Map<number, number>;
}

/** What a part of an expression begins and ends with; `sure` where nothing behind it can fail. */
interface Part {
    first: Map<number, number>;
    last: Map<number, { ways: number; sure: boolean }>;
    empty: number;
    emptySure: boolean;
}

export function growthOf(literal: string): Growth {
    const { pattern, flags } = parseRegExpLiteral(literal);
    const bodies: AST.Alternative[][] = [pattern.alternatives];
    const results = [];
    for (let index = 0; index < bodies.length; index++) {
        const machine = new Machine(flags.raw.replace(/[gyd]/g, ''), alphabetOf(literal), bodies);
        const isAnchored = ({ elements: [first] }: AST.Alternative): boolean => first?.type === 'Assertion' && first.kind === 'start';
        // Where ^ stands first, a search enters at the beginnings of lines alone, or only once.
        const searched = (alternative: AST.Alternative): 'anywhere' | 'lines' | 'once' => (index > 0 ? 'anywhere' : flags.sticky ? 'once' : !isAnchored(alternative) ? 'anywhere' : flags.multiline ? 'lines' : 'once');
        const rows = bodies[index]!.map(alternative => ({ part: machine.row(alternative.elements), searched: searched(alternative) }));
        const whole = machine.join({ first: new Map(), last: new Map(), empty: 1, emptySure: true }, machine.together(rows.map(({ part }) => part)));
        results.push(machine.growth(whole, rows));
    }
    return results.find(({ growth }) => growth === 'exponential') ?? results.find(({ growth }) => growth === 'polynomial') ?? { growth: 'linear' };
}

function alphabetOf(literal: string): string[] {
    const ascii = Array.from({ length: 128 }, (_, code) => String.fromCharCode(code));
    return [...new Set([...ascii, ...literal, ...'\u0085\u00a0äßÄǅʰאع天𐐷\u0301\u0903٣½’“”«»–—…\u2028\u2029\u3000\u200b\u202e\ue000\ufeff\ufdd0🔔＝\ud800'])];
}

class Machine {
    private readonly positions: Position[] = [];

    constructor(private readonly flags: string, private readonly alphabet: readonly string[], private readonly bodies: AST.Alternative[][]) {}

    either(alternatives: readonly AST.Alternative[]): Part {
        return this.together(alternatives.map(({ elements }) => this.row(elements)));
    }

    together(parts: readonly Part[]): Part {
        const first = new Map<number, number>();
        const last: Part['last'] = new Map();
        for (const part of parts) {
            for (const [at, ways] of part.first) first.set(at, (first.get(at) ?? 0) + ways);
            for (const [at, end] of part.last) last.set(at, end);
        }
        return { first, last, empty: Math.min(2, parts.reduce((sum, { empty }) => sum + empty, 0)), emptySure: parts.some(({ empty, emptySure }) => empty > 0 && emptySure) };
    }

    row(elements: readonly AST.Element[]): Part {
        return elements.reduce<Part>((before, element) => this.join(before, this.element(element)), { first: new Map(), last: new Map(), empty: 1, emptySure: true });
    }

    join(a: Part, b: Part): Part {
        for (const [from, { ways }] of a.last) for (const [to, more] of b.first) this.link(from, to, ways * more);
        const first = new Map(a.first);
        if (a.empty > 0) for (const [at, ways] of b.first) first.set(at, (first.get(at) ?? 0) + ways * a.empty);
        const last: Part['last'] = new Map(b.last);
        if (b.empty > 0) for (const [at, { ways, sure }] of a.last) last.set(at, { ways: Math.min(2, ways * b.empty), sure: sure && b.emptySure });
        return { first, last, empty: Math.min(2, a.empty * b.empty), emptySure: a.emptySure && b.emptySure };
    }

    private link(from: number, to: number, ways: number): void {
        const { follow } = this.positions[from]!;
        follow.set(to, Math.min(2, (follow.get(to) ?? 0) + ways));
    }

    private element(element: AST.Element): Part {
        switch (element.type) {
            case 'Group': case 'CapturingGroup': return this.either(element.alternatives);
            case 'Quantifier': return this.repeated(element);
            case 'Assertion':
                if ('alternatives' in element) this.bodies.push(element.alternatives);
                return { first: new Map(), last: new Map(), empty: 1, emptySure: false };
            case 'Backreference': throw new Error('A backreference takes as long as it likes: do without.');
            default: return this.leaf(element.raw);
        }
    }

    private leaf(raw: string): Part {
        const one = new RegExp(`^(?:${raw})$`, this.flags);
        const at = this.positions.push({ raw, takes: Uint8Array.from(this.alphabet, char => Number(one.test(char))), follow: new Map() }) - 1;
        return { first: new Map([[at, 1]]), last: new Map([[at, { ways: 1, sure: true }]]), empty: 0, emptySure: true };
    }

    private repeated({ min, max, element }: AST.Quantifier): Part {
        const optional = (part: Part): Part => ({ ...part, empty: 1, emptySure: true });
        const once = (): Part => this.element(element);
        let whole: Part = { first: new Map(), last: new Map(), empty: 1, emptySure: true };
        for (let copy = 0; copy < Math.min(min, mostCopies); copy++) whole = this.join(whole, once());
        if (max === Infinity) {
            const loop = once();
            for (const [from, { ways }] of loop.last) for (const [to, more] of loop.first) this.link(from, to, ways * more);
            return this.join(whole, optional(loop));
        }
        // Optional copies stand one in the other: only what follows a copy that is there may be there.
        const copies = Array.from({ length: Math.min(max - min, mostCopies) }, once);
        return this.join(whole, copies.reduceRight<Part>((inner, copy) => optional(this.join(copy, inner)), { first: new Map(), last: new Map(), empty: 1, emptySure: true }));
    }

    growth(part: Part, rows: readonly { part: Part; searched: 'anywhere' | 'lines' | 'once' }[]): Growth {
        const count = this.positions.length;
        const edges = this.positions.map(({ follow }) => [...follow.keys()]);
        const reach = edges.map((_, from) => {
            const seen = new Set<number>();
            const todo = [...edges[from]!];
            for (let at = todo.pop(); at !== undefined; at = todo.pop()) if (!seen.has(at)) { seen.add(at); todo.push(...edges[at]!); }
            return seen;
        });
        const loops = edges.map((_, at) => at).filter(at => reach[at]!.has(at));
        const sameLoop = (a: number, b: number): boolean => reach[a]!.has(b) && reach[b]!.has(a);
        const meets = memo((a: number, b: number) => this.positions[a]!.takes.some((takes, index) => takes === 1 && this.positions[b]!.takes[index] === 1), count);
        const meet3 = (a: number, b: number, c: number): boolean => this.positions[a]!.takes.some((takes, index) => takes === 1 && this.positions[b]!.takes[index] === 1 && this.positions[c]!.takes[index] === 1);
        const name = (at: number): string => `${this.positions[at]!.raw} (the ${at + 1}. of ${count})`;
        // Two ways from a loop back to itself over the same text.
        for (const p of loops) {
            const inLoop = edges.map((_, at) => at === p || sameLoop(p, at));
            const key = (a: number, b: number, other: boolean): number => (a * count + b) * 2 + Number(other);
            const seen = new Set<number>();
            const todo: [number, number, boolean][] = [[p, p, false]];
            for (let now = todo.pop(); now; now = todo.pop()) {
                const [a, b, other] = now;
                for (const x of edges[a]!) for (const y of edges[b]!) {
                    if (!inLoop[x] || !inLoop[y] || !meets(x, y)) continue;
                    const differs = other || x !== y || (a === b && this.positions[a]!.follow.get(x)! > 1);
                    if (x === p && y === p && differs) return { growth: 'exponential', why: `two ways around ${name(p)}` };
                    const id = key(x, y, differs);
                    if (!seen.has(id)) { seen.add(id); todo.push([x, y, differs]); }
                }
            }
        }
        const failing = (q: number): boolean => !part.last.get(q)?.sure;
        // A loop, and another behind it, over the same text.
        for (const p of loops) for (const q of loops) {
            if (p === q || sameLoop(p, q) || !reach[p]!.has(q) || !failing(q)) continue;
            if (this.reaches([[p, p, q]], [p, q, q], edges, meet3)) return { growth: 'polynomial', why: `${name(p)}, then ${name(q)}` };
        }
        // A search that comes into the loop at each character of the text that the loop runs over.
        const newline = this.alphabet.indexOf('\n');
        for (const q of loops) for (const { part: { first: entries }, searched } of rows) {
            if (!failing(q) || searched === 'once') continue;
            const around = edges.map((_, at) => at).filter(at => sameLoop(q, at) || at === q);
            if (searched === 'lines' && !around.some(at => this.positions[at]!.takes[newline] === 1)) continue;
            const starts = around.flatMap(from => edges[from]!.filter(to => around.includes(to)).flatMap(to => [...entries.keys()].filter(first => meets(first, to)).map((first): [number, number] => [first, to])));
            const seen = new Set<number>();
            const todo = [...starts];
            for (let now = todo.pop(); now; now = todo.pop()) {
                const [a, b] = now;
                if (seen.has(a * count + b)) continue;
                seen.add(a * count + b);
                if (a === q && b === q) return { growth: 'polynomial', why: `a search enters ${name(q)} at each character` };
                for (const x of edges[a]!) for (const y of edges[b]!) if (around.includes(y) && meets(x, y)) todo.push([x, y]);
            }
        }
        return { growth: 'linear' };
    }

    private reaches(from: [number, number, number][], [p, q, r]: [number, number, number], edges: readonly number[][], meet: (a: number, b: number, c: number) => boolean): boolean {
        const count = this.positions.length;
        const seen = new Set<number>();
        const todo = [...from];
        for (let now = todo.pop(); now; now = todo.pop()) {
            for (const x of edges[now[0]]!) for (const y of edges[now[1]]!) for (const z of edges[now[2]]!) {
                if (!meet(x, y, z)) continue;
                if (x === p && y === q && z === r) return true;
                const id = (x * count + y) * count + z;
                if (seen.size < 200_000 && !seen.has(id)) { seen.add(id); todo.push([x, y, z]); }
            }
        }
        return false;
    }
}

function memo(of: (a: number, b: number) => boolean, count: number): (a: number, b: number) => boolean {
    const known = new Map<number, boolean>();
    return (a, b) => {
        const key = a * count + b;
        const before = known.get(key);
        if (before !== undefined) return before;
        const answer = of(a, b);
        known.set(key, answer);
        return answer;
    };
}

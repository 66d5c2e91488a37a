import type { Grammar, GrammarAST } from 'langium';
import { GrammarAST as Ast, GrammarUtils } from 'langium';

/**
 * The grammar as a finite automaton. No block of the language contains itself, so all rules can be written out in place
 * and every line be matched against exactly what the grammar allows at that spot. The line lexer, completion and the
 * messages read it; nothing about the shape of a line is written twice.
 */

/** A keyword's text, or the name of a terminal rule. Keywords are lower-case words or punctuation, terminals capitals. */
export type TokenSymbol = string;

export interface Edge {
    symbol: TokenSymbol;
    to: number;
    element: GrammarAST.Keyword | GrammarAST.RuleCall | GrammarAST.CrossReference;
    /** The assignment around the element, where there is one. */
    assignment?: GrammarAST.Assignment;
    /** The rule whose node the element belongs to. */
    rule: GrammarAST.ParserRule;
    /** Set where the block may say this only once: the name of the property. */
    single?: string;
}

/** A place in the grammar: which tokens may come next. Made on demand and shared. */
export class GrammarState {
    /** Answers given before, for words of the language alone: whatever else is typed would stay here for ever. */
    private readonly moves = new Map<TokenSymbol, GrammarState>();
    private readonly singles = new Map<TokenSymbol, string>();
    private readonly symbols: ReadonlySet<TokenSymbol>;

    constructor(private readonly automaton: GrammarAutomaton, readonly edges: readonly Edge[]) {
        this.symbols = new Set(edges.map(({ symbol }) => symbol));
    }

    move(symbol: TokenSymbol): GrammarState | undefined {
        if (!this.symbols.has(symbol)) return undefined;
        let next = this.moves.get(symbol);
        if (next === undefined) {
            next = this.automaton.stateAfter(this.edges, symbol)!;
            this.moves.set(symbol, next);
        }
        return next;
    }

    /** The place after one of several ways to take the same word: after `in` of `in kit`, say, and not of inches. */
    after(edge: Edge): GrammarState | undefined {
        return this.automaton.stateAfter([edge], edge.symbol);
    }

    accepts(symbol: TokenSymbol): boolean {
        return this.symbols.has(symbol);
    }

    /** The property that this token sets and that the block may set only once. */
    single(symbol: TokenSymbol): string | undefined {
        if (!this.symbols.has(symbol)) return undefined;
        let single = this.singles.get(symbol);
        if (single === undefined) {
            single = this.findSingle(symbol) ?? '';
            this.singles.set(symbol, single);
        }
        return single === '' ? undefined : single;
    }

    private findSingle(symbol: TokenSymbol): string | undefined {
        const taken = this.edges.filter(edge => edge.symbol === symbol);
        const name = taken[0]?.single;
        return name !== undefined && taken.every(edge => edge.single === name) ? name : undefined;
    }
}

interface Context {
    rule: GrammarAST.ParserRule;
    assignment?: GrammarAST.Assignment;
    /** True inside the block of a rule, false on its first line and inside parts that have a node of their own. */
    inBlock: boolean;
    /** The property of the block that is being set, where it can be set only once. */
    single?: string;
}

export class GrammarAutomaton {
    readonly start: GrammarState;
    private readonly edges: Edge[][] = [];
    private readonly silent: number[][] = [];
    private readonly states = new Map<string, GrammarState>();

    constructor(grammar: Grammar) {
        const entry = GrammarUtils.getEntryRule(grammar);
        if (!entry) throw new Error('The grammar has no entry rule.');
        const first = this.newNode();
        this.expand(entry.definition, first, { rule: entry, inBlock: false });
        this.start = this.stateOf([first]);
    }

    stateAfter(edges: readonly Edge[], symbol: TokenSymbol): GrammarState | undefined {
        const targets = edges.filter(edge => edge.symbol === symbol).map(edge => edge.to);
        return targets.length > 0 ? this.stateOf(targets) : undefined;
    }

    private stateOf(nodes: readonly number[]): GrammarState {
        const closed = new Set<number>(nodes);
        for (const node of closed) {
            for (const next of this.silent[node]!) closed.add(next);
        }
        const key = [...closed].sort((a, b) => a - b).join(' ');
        let state = this.states.get(key);
        if (!state) {
            state = new GrammarState(this, [...closed].flatMap(node => this.edges[node]!));
            this.states.set(key, state);
        }
        return state;
    }

    private newNode(): number {
        this.edges.push([]);
        this.silent.push([]);
        return this.edges.length - 1;
    }

    /** Adds an element after node `from`; returns the node after it. */
    private expand(element: GrammarAST.AbstractElement, from: number, context: Context): number {
        const cardinality = element.cardinality;
        if (!cardinality) return this.expandOnce(element, from, context);
        const before = this.newNode();
        this.silent[from]!.push(before);
        const after = this.expandOnce(element, before, context);
        const end = this.newNode();
        this.silent[after]!.push(end);
        if (cardinality !== '+') this.silent[before]!.push(end);
        if (cardinality !== '?') this.silent[after]!.push(before);
        return end;
    }

    private expandOnce(element: GrammarAST.AbstractElement, from: number, context: Context): number {
        if (Ast.isGroup(element)) {
            let node = from;
            let inside = context;
            for (const part of element.elements) {
                node = this.expand(part, node, inside);
                if (Ast.isRuleCall(part) && part.rule.$refText === 'INDENT') inside = { ...inside, inBlock: true, single: undefined };
            }
            return node;
        }
        if (Ast.isAlternatives(element)) {
            const end = this.newNode();
            for (const choice of element.elements) this.silent[this.expand(choice, from, context)]!.push(end);
            return end;
        }
        if (Ast.isAssignment(element)) {
            const single = context.inBlock ? (element.operator === '+=' ? undefined : element.feature) : context.single;
            return this.expand(element.terminal, from, { ...context, assignment: element, single });
        }
        if (Ast.isAction(element)) return from;
        if (Ast.isKeyword(element)) return this.addEdge(element.value, element, from, context);
        if (Ast.isCrossReference(element)) {
            const terminal = element.terminal;
            const symbol = terminal && Ast.isRuleCall(terminal) ? terminal.rule.$refText : 'NAME';
            return this.addEdge(symbol, element, from, context);
        }
        if (Ast.isRuleCall(element)) return this.expandCall(element, from, context);
        throw new Error(`The automaton does not know the grammar element ${element.$type}.`);
    }

    private expandCall(call: GrammarAST.RuleCall, from: number, context: Context): number {
        const rule = call.rule.ref;
        if (Ast.isTerminalRule(rule)) return this.addEdge(rule.name, call, from, context);
        if (!Ast.isParserRule(rule)) throw new Error(`The automaton does not know the rule ${call.rule.$refText}.`);
        const inside = rule.fragment || GrammarUtils.isDataTypeRule(rule) ? context : { rule, inBlock: false, single: context.single };
        return this.expand(rule.definition, from, inside);
    }

    private addEdge(symbol: TokenSymbol, element: Edge['element'], from: number, context: Context): number {
        const to = this.newNode();
        const { assignment, rule, single } = context;
        this.edges[from]!.push({ symbol, to, element, assignment, rule, single });
        return to;
    }
}

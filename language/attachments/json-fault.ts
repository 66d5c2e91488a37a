/** Where a text stops being JSON (RFC 8259): offset in UTF-16 units, line and column from 1. */
export interface JsonFault {
    offset: number;
    line: number;
    column: number;
    /** The text ends before the value does: a file that was cut off. */
    cutOff: boolean;
}

const literals = ['true', 'false', 'null'];
const space = /[\t\n\r ]*/y;
const number = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
// JSON's strings hold anything but quotation marks, backslashes and control characters, and escapes.
// eslint-disable-next-line no-control-regex
const stringPart = /[^"\\\u0000-\u001f]*/y;
const escape = /\\(?:["\\/bfnrt]|u[\dA-Fa-f]{4})/y;
/** What a text cut off in an escape, a literal or a number leaves over. */
const cutShort = /^(?:\\(?:u[\dA-Fa-f]{0,3})?|t|tr|tru|f|fa|fal|fals|n|nu|nul|-|\.|[eE][+-]?)$/;

/**
 * Finds the first place at which a text is not JSON; undefined for JSON. Engines word their own message differently and often
 * leave the place out. Keeps its own stack, so that no nesting is too deep.
 */
export function jsonFault(text: string): JsonFault | undefined {
    const fault = new Scanner(text).scan();
    if (fault === undefined) return undefined;
    const before = text.slice(0, fault.offset).split(/\r\n|\n|\r/);
    return { ...fault, line: before.length, column: (before[before.length - 1]?.length ?? 0) + 1 };
}

type Fault = Pick<JsonFault, 'offset' | 'cutOff'>;

class Scanner {
    private at = 0;

    constructor(private readonly text: string) {}

    scan(): Fault | undefined {
        /** What closes the lists and objects that are open. */
        const open: string[] = [];
        for (;;) {
            this.skip(space);
            const opens = this.text[this.at];
            if (opens === '[' || opens === '{') {
                this.at += 1;
                const closes = opens === '[' ? ']' : '}';
                this.skip(space);
                if (this.text[this.at] !== closes) {
                    open.push(closes);
                    if (closes === '}' && !this.key()) return this.fault();
                    continue;
                }
                this.at += 1;
            } else if (!this.scalar()) {
                return this.fault();
            }
            for (;;) {
                this.skip(space);
                const closes = open[open.length - 1];
                if (closes === undefined) return this.at < this.text.length ? { offset: this.at, cutOff: false } : undefined;
                if (this.text[this.at] === ',') {
                    this.at += 1;
                    this.skip(space);
                    if (closes === '}' && !this.key()) return this.fault();
                    break;
                }
                if (this.text[this.at] !== closes) return this.fault();
                this.at += 1;
                open.pop();
            }
        }
    }

    /** A name, a colon. */
    private key(): boolean {
        if (!this.string()) return false;
        this.skip(space);
        if (this.text[this.at] !== ':') return false;
        this.at += 1;
        return true;
    }

    private scalar(): boolean {
        if (this.text[this.at] === '"') return this.string();
        const literal = literals.find(word => this.text.startsWith(word, this.at));
        if (literal !== undefined) {
            this.at += literal.length;
            return true;
        }
        return this.skip(number);
    }

    private string(): boolean {
        if (this.text[this.at] !== '"') return false;
        this.at += 1;
        for (;;) {
            this.skip(stringPart);
            if (this.text[this.at] === '"') {
                this.at += 1;
                return true;
            }
            if (!this.skip(escape)) return false;
        }
    }

    private skip(pattern: RegExp): boolean {
        pattern.lastIndex = this.at;
        const found = pattern.exec(this.text)?.[0].length ?? 0;
        this.at += found;
        return found > 0;
    }

    private fault(): Fault {
        const rest = this.text.slice(this.at, this.at + 7);
        const cutOff = rest === '' || cutShort.test(rest);
        return { offset: cutOff ? this.text.length : this.at, cutOff };
    }
}

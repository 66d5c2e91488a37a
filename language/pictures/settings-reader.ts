import type { PictureLine, Range } from '../sheets/sheet.js';

/** Why a picture cannot be drawn, in a teacher's words. */
export interface PictureFault {
    message: string;
    at: Range;
    /** The picture with its settings as it could be written instead, the likeliest first; empty where none can be worked out. */
    mends: string[];
}

export function isFault<T extends object>(read: T | number | PictureFault): read is PictureFault {
    return typeof read === 'object' && 'mends' in read;
}

/** Goes through the settings of a `show` line from left to right. */
export class SettingsReader {
    private index = 0;

    constructor(private readonly line: PictureLine) {}

    get kind(): string {
        return this.line.picture.name;
    }

    /** Every setting as written. */
    get texts(): string[] {
        return this.line.settings.map(({ text }) => text);
    }

    /** What stands next; absent at the end. */
    peek(): string | undefined {
        return this.line.settings[this.index]?.text;
    }

    take(): string | undefined {
        const text = this.peek();
        if (text !== undefined) this.index++;
        return text;
    }

    /** Takes the next setting where it is one of these words. */
    skip(...words: string[]): boolean {
        const found = words.includes(this.peek() ?? '');
        if (found) this.index++;
        return found;
    }

    /** Where the setting taken last stands; the name of the picture before the first. */
    get last(): Range {
        return this.line.settings[this.index - 1]?.at ?? this.line.picture.at;
    }

    /** Where the next setting stands, or what stands before the end. */
    get next(): Range {
        return this.line.settings[this.index]?.at ?? this.last;
    }

    /** All settings in one line, the one taken last written otherwise. */
    lastAs(text: string): string {
        return inOneLine(this.texts.map((one, index) => (index === this.index - 1 ? text : one)));
    }

    /** A fault at the setting taken last. */
    wrong(message: string, ...mends: (string | undefined)[]): PictureFault {
        return { message, at: this.last, mends: this.whole(mends) };
    }

    /** A fault at the setting that stands next, or where one is missing. */
    wrongNext(message: string, ...mends: (string | undefined)[]): PictureFault {
        return { message, at: this.next, mends: this.whole(mends) };
    }

    /** What is left over, where the picture was complete before. */
    tooMuch(shows: string): PictureFault | undefined {
        if (this.peek() === undefined) return undefined;
        const rest = this.line.settings.slice(this.index);
        const at = { start: rest[0]!.at.start, end: rest.at(-1)!.at.end };
        return { message: `${shows}: '${inOneLine(rest.map(({ text }) => text))}' is too much here.`, at, mends: this.whole([inOneLine(this.texts.slice(0, this.index))]) };
    }

    private whole(mends: readonly (string | undefined)[]): string[] {
        return mends.flatMap(mend => (mend === undefined ? [] : [`${this.kind} ${mend}`.trim()]));
    }
}

/** Settings as a writer types them: no blank before a comma. */
export function inOneLine(texts: readonly string[]): string {
    return texts.join(' ').replaceAll(' ,', ',');
}

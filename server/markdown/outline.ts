/** Collects Markdown lines: headings, paragraphs and nested lists with the blank lines CommonMark wants between them. */
export class Outline {
    private readonly lines: string[] = [];

    heading(level: number, text: string): void {
        this.blank();
        this.lines.push(`${'#'.repeat(level)} ${text}`, '');
    }

    paragraph(text: string): void {
        if (text === '') return;
        this.blank();
        this.lines.push(text, '');
    }

    /** `content` is ready Markdown; its further lines are indented under the item. */
    item(depth: number, content: string | string[], marker = '-'): void {
        const [first = '', ...more] = typeof content === 'string' ? [content] : content;
        const indent = '  '.repeat(depth);
        this.lines.push(`${indent}${marker} ${first}`);
        for (const line of more) this.lines.push(line && `${indent}${' '.repeat(marker.length + 1)}${line}`);
    }

    blank(): void {
        if (this.lines.length && this.lines[this.lines.length - 1] !== '') this.lines.push('');
    }

    toString(): string {
        return `${this.lines.join('\n').replace(/\n+$/, '')}\n`;
    }
}

import type { BriefSection } from '@haversack/server/protocol/pages';

/** The sections of the last good brief. The server sends again only what changed, and so does this to the page. */
export class KeptSections {
    private html = new Map<string, { hash: string; html: string }>();
    private order: string[] = [];
    private readonly onPage = new Map<string, string>();

    /** Hashes by section, for the next question to the server. */
    known(): Record<string, string> {
        return Object.fromEntries([...this.html].map(([id, { hash }]) => [id, hash]));
    }

    /** @returns false, and keeps what it has, when the answer leaves out a text that is not known here */
    take(sections: readonly BriefSection[]): boolean {
        const html = new Map<string, { hash: string; html: string }>();
        for (const section of sections) {
            const before = this.html.get(section.id);
            const text = section.html ?? (before?.hash === section.hash ? before.html : undefined);
            if (text === undefined) return false;
            html.set(section.id, { hash: section.hash, html: text });
        }
        this.html = html;
        this.order = sections.map(({ id }) => id);
        return true;
    }

    /** All sections in order, with html only where the page has another text; the page is taken to have them afterwards. */
    forPage(): BriefSection[] {
        const sections = this.order.map(id => {
            const { hash, html } = this.html.get(id)!;
            return this.onPage.get(id) === hash ? { id, hash } : { id, hash, html };
        });
        this.onPage.clear();
        for (const { id, hash } of sections) this.onPage.set(id, hash);
        return sections;
    }

    /** The page was loaded anew and shows nothing. */
    pageIsEmpty(): void {
        this.onPage.clear();
    }

    forget(): void {
        this.html.clear();
        this.order = [];
    }
}

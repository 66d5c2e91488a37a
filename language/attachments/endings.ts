/** What the names of the files end in that a programme names beside its own; capitals do as well. */
export const attachmentEndings = { calendar: ['ics', 'ical', 'icalendar'], framework: ['json'] } as const;

export type AttachmentKind = keyof typeof attachmentEndings;

/** True for a path of a kind; without a kind, of any. */
export function endsAs(path: string, kind?: AttachmentKind): boolean {
    const ending = /\.([^./]+)$/.exec(path)?.[1]?.toLowerCase();
    const endings: readonly string[] = kind ? attachmentEndings[kind] : Object.values(attachmentEndings).flat();
    return ending !== undefined && endings.includes(ending);
}

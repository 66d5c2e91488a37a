/** What the brief's page and the extension tell each other. */
import type { BriefAnswer, BriefSection, TermAnswer } from '@haversack/server/protocol/pages';

/** A line of a source file, counted from 0. */
export interface SourceLine {
    uri: string;
    line: number;
}

/** What the page shows: a week's brief, the whole term, or what adaptations change for the class. */
export type PreviewView = 'week' | 'term' | 'changes';

const views: readonly unknown[] = ['week', 'term', 'changes'] satisfies PreviewView[];

/** What survives a restart of the editor. */
export interface BriefState {
    /** Absent for the week. */
    view?: Exclude<PreviewView, 'week'>;
    /** Set while the brief stays on a week. */
    week?: number;
    class?: string;
    cursor?: SourceLine;
}

/** Everything the page shows; it changes only what differs. */
export interface ShowMessage {
    type: 'show';
    state: BriefState;
    followCursor: boolean;
    leadBack: boolean;
    /** Absent while no brief could be made yet. Sections without html are on the page already. A week is shown with its number. */
    brief?: Pick<TermAnswer, 'class' | 'classes' | 'around'> & Partial<Pick<BriefAnswer, 'week' | 'weeks'>> & { view: PreviewView; sections: BriefSection[] };
    /** Why the brief is old or incomplete. */
    says?: string;
    /** Scroll to the item of the cursor if it is out of view, or to its lesson. */
    reveal?: 'item' | 'lesson';
}

/** A web page that the reader's browser is to download. */
export interface DownloadMessage {
    type: 'download';
    /** Of the file, with its ending. */
    name: string;
    html: string;
}

export type PageMessage =
    | { type: 'ready' }
    | { type: 'open' } & SourceLine
    | { type: 'step'; by: 1 | -1 }
    | { type: 'class'; name: string }
    | { type: 'stay'; on: boolean }
    | { type: 'view'; view: PreviewView }
    | { type: 'save' }
    | { type: 'print' }
    | { type: 'practice'; lesson: string };

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;
const isLine = (value: unknown): value is number => Number.isInteger(value) && (value as number) >= 0;
const isView = (value: unknown): value is PreviewView => views.includes(value);
const shortText = (value: unknown): value is string => typeof value === 'string' && value.length <= 4096;

/** The message if it has one of the shapes above, else nothing. */
export function readPageMessage(message: unknown): PageMessage | undefined {
    if (!isRecord(message)) return undefined;
    switch (message.type) {
        case 'ready': return { type: 'ready' };
        case 'save':
        case 'print': return { type: message.type };
        case 'practice': return shortText(message.lesson) ? { type: 'practice', lesson: message.lesson } : undefined;
        case 'open': return shortText(message.uri) && isLine(message.line) ? { type: 'open', uri: message.uri, line: message.line } : undefined;
        case 'step': return message.by === 1 || message.by === -1 ? { type: 'step', by: message.by } : undefined;
        case 'class': return shortText(message.name) ? { type: 'class', name: message.name } : undefined;
        case 'stay': return typeof message.on === 'boolean' ? { type: 'stay', on: message.on } : undefined;
        case 'view': return isView(message.view) ? { type: 'view', view: message.view } : undefined;
        default: return undefined;
    }
}

/** The state that a page of an earlier session kept, as far as it can be trusted. */
export function readState(state: unknown): BriefState {
    if (!isRecord(state)) return {};
    const { cursor } = state;
    return {
        view: isView(state.view) && state.view !== 'week' ? state.view : undefined,
        week: isLine(state.week) && state.week > 0 ? state.week : undefined,
        class: shortText(state.class) ? state.class : undefined,
        cursor: isRecord(cursor) && shortText(cursor.uri) && isLine(cursor.line) ? { uri: cursor.uri, line: cursor.line } : undefined
    };
}

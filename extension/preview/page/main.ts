/** The script of the brief's page: shows what the extension sends and tells it what the reader does. */
import type { BriefState, DownloadMessage, PageMessage, PreviewView, ShowMessage, SourceLine } from '../messages.js';
import { isInView, itemAt, markOf } from './cursor-item.js';
import { download } from './download.js';
import { showSections } from './patch.js';

interface PageState extends BriefState {
    scroll?: number;
}

declare function acquireVsCodeApi(): { postMessage(message: PageMessage): void; getState(): PageState | undefined; setState(state: PageState): void };

const host = acquireVsCodeApi();
const byId = <T extends HTMLElement>(id: string): T => document.getElementById(id) as T;
const main = byId('brief');
const controls = byId('controls');
const previous = byId<HTMLButtonElement>('previous');
const next = byId<HTMLButtonElement>('next');
const stay = byId<HTMLInputElement>('stay');
const chosenClass = byId<HTMLSelectElement>('class');
const updated = byId('updated');
const views: Record<PreviewView, HTMLElement> = { week: byId('show-week'), term: byId('show-term'), changes: byId('show-changes') };

/** Readers of the screen are told once typing rests, not at every letter. */
const restMilliseconds = 1500;
let resting: ReturnType<typeof setTimeout> | undefined;
/** The week that is shown, or what else; nothing before the first brief. */
let shown: number | PreviewView | undefined;
let clicked: { at: SourceLine; item: HTMLElement } | undefined;
let scrollToRestore = host.getState()?.scroll;

window.addEventListener('message', ({ data }: MessageEvent<ShowMessage | DownloadMessage>) => {
    if (data.type === 'show') show(data);
    else if (data.type === 'download') download(data);
});
previous.addEventListener('click', () => host.postMessage({ type: 'step', by: -1 }));
next.addEventListener('click', () => host.postMessage({ type: 'step', by: 1 }));
stay.addEventListener('change', () => host.postMessage({ type: 'stay', on: stay.checked }));
chosenClass.addEventListener('change', () => host.postMessage({ type: 'class', name: chosenClass.value }));
for (const view of Object.keys(views) as PreviewView[]) views[view].addEventListener('click', () => host.postMessage({ type: 'view', view }));
byId('print').addEventListener('click', () => host.postMessage({ type: 'print' }));
byId('save').addEventListener('click', () => host.postMessage({ type: 'save' }));
main.addEventListener('click', savePractice);
main.addEventListener('click', leadBack);
window.addEventListener('scroll', () => host.setState({ ...host.getState(), scroll: window.scrollY }), { passive: true });
host.postMessage({ type: 'ready' });

function show(message: ShowMessage): void {
    byId('says').textContent = message.says ?? '';
    main.classList.toggle('leads', message.leadBack);
    host.setState({ ...message.state, scroll: window.scrollY });
    const { brief } = message;
    if (!brief) return;
    showControls(brief, message.state);
    const changed = showSections(main, brief.sections);
    const now = brief.week ?? brief.view;
    const other = shown !== undefined && shown !== now;
    shown = now;
    if (scrollToRestore !== undefined) {
        window.scrollTo(0, scrollToRestore);
        scrollToRestore = undefined;
    } else if (other) {
        window.scrollTo(0, 0);
    }
    mark(message);
    if (changed) announce();
}

function showControls(brief: NonNullable<ShowMessage['brief']>, state: BriefState): void {
    controls.hidden = false;
    const { view: current, week, weeks = 0 } = brief;
    for (const [view, button] of Object.entries(views)) button.setAttribute('aria-pressed', String(view === current));
    if (week !== undefined) {
        label(previous, week - 1, weeks, '\u2190 ', '');
        label(next, week + 1, weeks, '', ' \u2192');
    }
    for (const control of [previous, next, byId('stay-label')]) control.hidden = weeks < 2;
    stay.checked = state.week !== undefined;
    byId('class-label').hidden = brief.classes.length < 2;
    const wanted = brief.classes.map(({ name, title }) => `${name}\n${title}`).join('\n');
    if (chosenClass.dataset.shown !== wanted) {
        chosenClass.dataset.shown = wanted;
        chosenClass.replaceChildren(...brief.classes.map(({ name, title }) => new Option(title, name)));
    }
    chosenClass.value = brief.class ?? '';
}

/** At either end the button stays where it is, out of use. */
function label(button: HTMLButtonElement, to: number, weeks: number, before: string, after: string): void {
    const { text = '', label: name = '' } = button.dataset;
    const there = to >= 1 && to <= weeks;
    button.disabled = !there;
    button.textContent = before + (there ? text.replace('{0}', String(to)) : name) + after;
    if (there) button.setAttribute('aria-label', `${name}: ${text.replace('{0}', String(to))}`);
    else button.removeAttribute('aria-label');
}

function mark({ state, brief, followCursor, reveal }: ShowMessage): void {
    const { cursor } = state;
    const found = followCursor && cursor && brief?.around ? itemAt(main, cursor, brief.around) : undefined;
    const led = clicked && cursor && clicked.at.uri === cursor.uri && clicked.at.line === cursor.line && main.contains(clicked.item) ? clicked.item : undefined;
    if (!led) clicked = undefined;
    const target = found && markOf(led ?? found);
    for (const old of main.querySelectorAll('[aria-current]')) {
        if (old !== target) old.removeAttribute('aria-current');
    }
    target?.setAttribute('aria-current', 'location');
    // What was clicked is in view: the page stays where it is.
    if (led || !reveal) return;
    if (reveal === 'lesson' && cursor && brief?.around) {
        const lesson = itemAt(main, { uri: cursor.uri, line: brief.around.from }, brief.around)?.closest('.lesson');
        lesson?.scrollIntoView({ block: 'start' });
    } else if (target && !isInView(target, controls.offsetHeight, window.innerHeight)) {
        target.scrollIntoView({ block: 'center' });
    }
}

function savePractice({ target }: MouseEvent): void {
    const lesson = target instanceof Element ? target.closest<HTMLElement>('[data-practice]')?.dataset.practice : undefined;
    if (lesson !== undefined) host.postMessage({ type: 'practice', lesson });
}

function leadBack(event: MouseEvent): void {
    if (!main.classList.contains('leads') || !(event.target instanceof Element)) return;
    const selecting = event.detail > 0 && !(window.getSelection()?.isCollapsed ?? true);
    if (selecting || event.target.closest('a, summary, [data-practice]')) return;
    const element = event.target.closest<HTMLElement>('[data-line]');
    const { uri, line } = element?.dataset ?? {};
    if (!element || uri === undefined || line === undefined) return;
    const at = { uri, line: Number(line) };
    clicked = { at, item: element.closest<HTMLElement>('[data-line]:not(button)') ?? element };
    host.postMessage({ type: 'open', ...at });
}

function announce(): void {
    clearTimeout(resting);
    updated.textContent = '';
    resting = setTimeout(() => {
        updated.textContent = updated.dataset.text ?? '';
    }, restMilliseconds);
}

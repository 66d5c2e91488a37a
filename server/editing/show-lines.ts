import type { LangiumDocument } from 'langium';
import { CompletionItemKind, MarkupKind, type CompletionItem, type MarkupContent } from 'vscode-languageserver-protocol';
import { stepsIn } from '@haversack/language/checks/walk-lessons';
import type { PictureKind } from '@haversack/language/pictures/picture-kind';
import { pictureOf, pictureInWords, pictureKind, pictureKinds, readPicture } from '@haversack/language/pictures/read-picture';
import type { Picture } from '@haversack/language/pictures/picture';
import { pictureSvg } from '../brief/picture/picture-svg.js';
import { messageText, plainText } from '../markdown/plain-text.js';
import type { HaversackServerServices } from '../workspace/services.js';

/** What a `show` line shows, in words first, for editors that show no pictures; or why it shows nothing. */
export function describePicture(document: LangiumDocument, line: number, services: HaversackServerServices): string | undefined {
    const step = stepsIn(services.sheets.sheetOf(document)).find(({ show, at }) => show && at.start.line === line);
    if (!step?.show) return undefined;
    const kind = pictureKind(step.show.picture.name);
    const read = readPicture(step.show);
    const told = 'picture' in read ? shown(read.picture, services.client.showsPictures) : plainText(read.message);
    return [...(step.show.title ? [`**${plainText(step.show.title)}**`] : []), told, ...(kind ? [about(kind)] : [])].join('\n\n');
}

/** Kinds of pictures, then their settings by example, then the words that may follow. `words` are those behind `show`. */
export function completeShowLine(words: readonly string[], showsPictures: boolean): CompletionItem[] {
    const [name, ...settings] = words;
    if (name === undefined) return pictureKinds.map((kind, index) => kindItem(kind, index, showsPictures));
    const kind = pictureKind(name);
    if (!kind) return [];
    if (settings.length === 0) return kind.examples.map((example, index) => exampleItem(kind, example, index, showsPictures));
    return kind.next(settings).map((word, index) => ({ label: word, kind: CompletionItemKind.Keyword, detail: kind.title, documentation: kind.settings.replaceAll('`', ''), sortText: `3${index}` }));
}

function kindItem(kind: PictureKind, index: number, showsPictures: boolean): CompletionItem {
    return {
        label: kind.kind, kind: CompletionItemKind.Value, detail: kind.title, insertText: `${kind.kind} `, sortText: `1${String(index).padStart(2, '0')}`,
        documentation: markdown(`${about(kind)}\n\n${shown(pictureOf(kind.examples[0]), showsPictures)}`)
    };
}

function exampleItem(kind: PictureKind, example: string, index: number, showsPictures: boolean): CompletionItem {
    return {
        label: example.slice(kind.kind.length + 1), kind: CompletionItemKind.Value, detail: kind.title, sortText: `1${index}`,
        documentation: markdown(`${shown(pictureOf(example), showsPictures)}\n\n${messageText(kind.settings)}`)
    };
}

function markdown(value: string): MarkupContent {
    return { kind: MarkupKind.Markdown, value };
}

const about = (kind: PictureKind): string => `${plainText(kind.says)} ${messageText(kind.settings)}`;

function shown(picture: Picture | undefined, showsPictures: boolean): string {
    if (!picture) return '';
    const words = pictureInWords(picture);
    return showsPictures ? `${plainText(words)}\n\n![${plainText(words)}](${dataAddress(pictureSvg(picture))})` : plainText(words);
}

/** An SVG as an address that Markdown reads as one: brackets would end it. */
function dataAddress(svg: string): string {
    return `data:image/svg+xml,${encodeURIComponent(svg).replace(/[()'*!]/g, mark => `%${mark.charCodeAt(0).toString(16)}`)}`;
}

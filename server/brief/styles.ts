import { changesStyles } from './look/changes.css.js';
import { drawingStyles } from './look/drawing.css.js';
import { editorColours, pageColours } from './look/palette.js';
import { pictureStyles } from './look/picture.css.js';
import { printStyles } from './look/print.css.js';
import { pageFrame, screenStyles } from './look/screen.css.js';

/** The stylesheet of the preview: everything under `.brief`, coloured by the editor's theme, printed by a sheet that uses none of it. */
export function briefStyles(): string {
    return [editorColours, screenStyles, drawingStyles, changesStyles, pictureStyles, printStyles].join('');
}

/** The stylesheet of a page of its own. */
export function pageStyles(): string {
    return [pageFrame, pageColours, screenStyles, drawingStyles, changesStyles, pictureStyles, printStyles].join('');
}

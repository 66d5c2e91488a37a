import { pageStyles } from '@haversack/server/brief/styles';
import { renderToString } from 'preact-render-to-string';
import { h } from 'preact';
import { pictureFigures } from '@haversack/server/planning/pictures';
import { PictureFigure } from '../../server/brief/picture/picture-figure.js';
import { pictureLine } from '../language/picture-lines.js';
import { pictureSamples } from './picture-samples.js';

const nowhere = { uri: 'file:///sheet.lesson', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } } };

/** A page of the samples of these kinds, each under the line that shows it, in the brief's styles. */
export function pictureSheet(kinds: readonly string[] = Object.keys(pictureSamples)): string {
    const figures = kinds.map(kind => `<h2>${kind}</h2><div class="samples">${(pictureSamples[kind] ?? []).map(settings => `<div><h3>${kind} ${settings}</h3>${figureOf(`${kind} ${settings}`)}</div>`).join('')}</div>`).join('');
    return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Pictures</title><style>${pageStyles()}</style></head><body><main class="brief"><h1>Pictures</h1>${figures}</main></body></html>`;
}

function figureOf(line: string): string {
    return renderToString(h(PictureFigure, { figures: pictureFigures(pictureLine(line), nowhere) }));
}

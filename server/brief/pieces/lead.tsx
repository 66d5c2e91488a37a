import type { ComponentChildren, JSX } from 'preact';
import type { Place } from '../../planning/figures.js';
import type { View } from '../view.js';

/** The attributes by which a line is found again: its file and its zero-based line. */
export function placed(place: Place | undefined, view: View): { 'data-uri'?: string; 'data-line'?: string } {
    return place ? { 'data-uri': view.address(place), 'data-line': String(place.range.start.line) } : {};
}

/** In the preview a button that leads back to the source; elsewhere just its text. */
export function Lead({ place, view, children }: { place: Place | undefined; view: View; children: ComponentChildren }): JSX.Element {
    return view.preview && place
        ? <button type="button" class="lead" {...placed(place, view)}>{children}</button>
        : <>{children}</>;
}

/** A title: apart from the words around it in writing direction too. */
export function Title({ place, view, text }: { place?: Place; view: View; text: string }): JSX.Element {
    return <Lead place={place} view={view}><bdi>{text}</bdi></Lead>;
}

import type { JSX } from 'preact';
import type { Place } from '../../planning/figures.js';
import type { View } from '../view.js';
import { Lead } from './lead.js';

/** A message that leads to its place; words of the language in it stand between backticks. */
export function Message({ place, view, text }: { place?: Place; view: View; text: string }): JSX.Element {
    return <Lead place={place} view={view}><bdi>{text.split(/`([^`]+)`/).map((piece, index) => (index % 2 ? <code>{piece}</code> : piece))}</bdi></Lead>;
}

import type { JSX } from 'preact';
import type { Prose } from '../../planning/figures.js';
import { readProse, type ProseBlock, type ProseInline } from '../prose.js';
import type { View } from '../view.js';
import { placed } from './lead.js';

export function ProseText({ prose, view }: { prose: Prose; view: View }): JSX.Element {
    return <div class="prose" dir="auto"><Blocks blocks={readProse(prose)} view={view} /></div>;
}

/** Prose that goes on in a line of ours where it is one paragraph; lists and further paragraphs stand below it. */
export function ProseGoingOn({ prose, view }: { prose: Prose; view: View }): JSX.Element {
    const blocks = readProse(prose);
    const [only] = blocks;
    return blocks.length === 1 && only?.kind === 'paragraph'
        ? <span class="prose" dir="auto"><Inlines inside={only.inside} view={view} /></span>
        : <div class="prose" dir="auto"><Blocks blocks={blocks} view={view} /></div>;
}

function Blocks({ blocks, view }: { blocks: ProseBlock[]; view: View }): JSX.Element {
    return <>{blocks.map(block => <Block block={block} view={view} />)}</>;
}

function Block({ block, view }: { block: ProseBlock; view: View }): JSX.Element {
    if (block.kind === 'paragraph') return <p><Inlines inside={block.inside} view={view} /></p>;
    const items = block.items.map(item => <li><Blocks blocks={item} view={view} /></li>);
    return block.ordered ? <ol start={block.start}>{items}</ol> : <ul>{items}</ul>;
}

function Inlines({ inside, view, linked = false }: { inside: ProseInline[]; view: View; linked?: boolean }): JSX.Element {
    return <>{inside.map(piece => <Inline piece={piece} view={view} linked={linked} />)}</>;
}

function Inline({ piece, view, linked }: { piece: ProseInline; view: View; linked: boolean }): JSX.Element {
    switch (piece.kind) {
        case 'text':
            return <>{piece.text}</>;
        case 'break':
            return <br />;
        case 'code':
            return <code>{piece.text}</code>;
        case 'em':
            return <em><Inlines inside={piece.inside} view={view} linked={linked} /></em>;
        case 'strong':
            return <strong><Inlines inside={piece.inside} view={view} linked={linked} /></strong>;
        case 'link':
            return <a href={piece.href} rel="noreferrer"><Inlines inside={piece.inside} view={view} linked /></a>;
        case 'name':
            return <Name piece={piece} view={view} linked={linked} />;
    }
}

/** A name's title: in the preview it leads to its declaration, on a page to its line in this brief. */
function Name({ piece, view, linked }: { piece: ProseInline & { kind: 'name' }; view: View; linked: boolean }): JSX.Element {
    const { name } = piece;
    const title = <bdi>{view.inSentence(name, piece)}</bdi>;
    const place = view.placeOf(name);
    const anchor = view.anchorOf(name);
    const fact = view.factOf(name);
    if (!linked && view.preview && place) {
        return <button type="button" class="lead name" title={fact} {...placed(place, view)}>{title}</button>;
    }
    if (!linked && !view.preview && anchor !== undefined) return <a class="name" href={`#${anchor}`} title={fact}>{title}</a>;
    return <span class="name" title={fact}>{title}</span>;
}

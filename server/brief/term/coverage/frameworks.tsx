import { Fragment, type JSX } from 'preact';
import type { FrameworkFigures, FrameworkNode } from '../../../planning/coverage-figures.js';
import { groundFill, Grounds } from '../../drawing/grounds.js';
import { placed, Title } from '../../pieces/lead.js';
import { Section } from '../../pieces/section.js';
import { sentence } from '../../sentences.js';
import { asId, type View } from '../../view.js';
import type { TermFigures } from '../../../planning/term-figures.js';
import { nodeTitle, shareWords, unmetItems } from '../sentences.js';
import { termWords } from '../words.js';

export function Frameworks({ term, view }: { term: TermFigures; view: View }): JSX.Element | null {
    const { frameworks } = term.coverage;
    if (frameworks.length === 0) return null;
    return <Section id="term-frameworks" title={termWords.frameworks}>{frameworks.map(framework => <Framework framework={framework} view={view} />)}</Section>;
}

function Framework({ framework, view }: { framework: FrameworkFigures; view: View }): JSX.Element {
    const { document, wrong, tree, unknownCodes } = framework;
    return (
        <>
            <h3 {...placed(framework.place, view)}><Title place={framework.place} view={view} text={framework.title} /></h3>
            {document !== undefined && document !== framework.title && <p class="quiet"><bdi>{document}</bdi></p>}
            <p><bdi>{sentence(wrong ?? framework.text)}</bdi></p>
            {tree.length > 0 && <ul class="branches">{tree.map((node, index) => <Branch node={node} id={`share-${asId(framework.name)}-${index + 1}`} outermost view={view} />)}</ul>}
            {unknownCodes.length > 0 && (
                <p class="quiet">{termWords.unknownCodes}: {unknownCodes.map(({ code, place }, index) => (
                    <Fragment>{index > 0 && ', '}<span {...placed(place, view)}><Title place={place} view={view} text={code} /></span></Fragment>
                ))}.</p>
            )}
        </>
    );
}

interface BranchProps {
    node: FrameworkNode;
    id: string;
    /** Says which of its items are not met. */
    outermost?: boolean;
    view: View;
}

function Branch({ node, id, outermost = false, view }: BranchProps): JSX.Element {
    if (node.children.length === 0) return <li><Leaf node={node} view={view} /></li>;
    const unmet = unmetItems(node);
    return (
        <li>
            <p><bdi>{nodeTitle(node)}</bdi>: {shareWords(node)}</p>
            <Share node={node} id={id} />
            {outermost && unmet.length > 0 && <p>{termWords.notMet}: <bdi>{unmet.map(nodeTitle).join('; ')}</bdi></p>}
            <details class="in-words">
                <summary>{termWords.branch}<span class="unseen">: <bdi>{nodeTitle(node)}</bdi></span></summary>
                <ul class="branches">{node.children.map((child, index) => <Branch node={child} id={`${id}-${index + 1}`} view={view} />)}</ul>
            </details>
        </li>
    );
}

/** A bar as long as all items of the branch, filled as far as they are met. */
function Share({ node, id }: { node: FrameworkNode; id: string }): JSX.Element {
    const share = node.leaves > 0 ? Math.round((node.leavesMet / node.leaves) * 1000) / 10 : 0;
    return (
        <svg class="drawing share" width="100%" height="12" role="img" aria-label={`${nodeTitle(node)}: ${shareWords(node)}`}>
            <Grounds id={id} grounds={['slanted']} />
            {share > 0 && <rect x="0" y="1" width={`${share}%`} height="10" fill={groundFill(id, 'slanted')} />}
            <rect class="frame" x="0" y="1" width="100%" height="10" />
            {share > 0 && share < 100 && <line class="stroke" x1={`${share}%`} x2={`${share}%`} y1="1" y2="11" />}
        </svg>
    );
}

function Leaf({ node, view }: { node: FrameworkNode; view: View }): JSX.Element {
    return (
        <>
            <bdi>{nodeTitle(node)}</bdi>:{' '}
            {node.lessons.length === 0 ? termWords.noLessonMeets : node.lessons.map((lesson, index) => (
                <Fragment>{index > 0 && ', '}<span {...placed(lesson.place, view)}><Title place={lesson.place} view={view} text={lesson.title} /></span></Fragment>
            ))}
        </>
    );
}

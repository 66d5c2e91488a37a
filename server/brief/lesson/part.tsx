import type { JSX } from 'preact';
import type { PartFigures } from '../../planning/figures.js';
import type { CautionPlaces } from '../caution-places.js';
import type { ChangePlaces } from '../change-places.js';
import { Changes } from '../pieces/change.js';
import { Labelled } from '../pieces/labelled.js';
import { Lead, placed, Title } from '../pieces/lead.js';
import { ProseText } from '../pieces/prose.js';
import { partFacts, partTitle } from '../sentences.js';
import type { View } from '../view.js';
import { words } from '../words.js';
import { Needs } from './needs.js';
import { Practice } from './practice.js';
import { Steps } from './step.js';

interface PartProps {
    part: PartFigures;
    /** The name of its lesson. */
    lesson: string;
    number: number;
    cautions: CautionPlaces;
    changes: ChangePlaces;
    view: View;
}

export function Part({ part, lesson, number, cautions, changes, view }: PartProps): JSX.Element {
    return (
        <div class="part" {...placed(part.place, view)}>
            <h3><span class="count">{number}</span> <Title place={part.place} view={view} text={partTitle(part)} /></h3>
            <p class="quiet">{partFacts(part)}</p>
            <Changes told={changes.get(part)} view={view} />
            {part.game && <GameFacts game={part.game} view={view} />}
            {part.needs.length > 0 && <Needs needs={part.needs} changes={changes} view={view} />}
            <Steps steps={[...(part.game?.steps ?? []), ...part.steps]} first={cautions.parts.get(part)} cautions={cautions.steps} changes={changes} view={view} />
            {part.kind === 'practice' && <Practice part={part} lesson={lesson} view={view} />}
            {part.unsure && <Labelled label={words.ifUnsure}><p><bdi>{part.unsure}</bdi></p></Labelled>}
        </div>
    );
}

function GameFacts({ game, view }: { game: NonNullable<PartFigures['game']>; view: View }): JSX.Element | null {
    const facts = [[words.rules, game.rules], [words.players, game.players], [words.tables, game.tables]]
        .filter((fact): fact is [string, string] => fact[1] !== undefined && fact[1] !== '');
    if (facts.length === 0 && !game.kept) return null;
    return (
        <div {...placed(game.place, view)}>
            {facts.map(([label, text], index) => (
                <Labelled label={<Lead place={index === 0 ? game.place : undefined} view={view}>{label}</Lead>}><p><bdi>{text}</bdi></p></Labelled>
            ))}
            {game.kept && <Labelled label={words.kept}><ProseText prose={game.kept} view={view} /></Labelled>}
        </div>
    );
}

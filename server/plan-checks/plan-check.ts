import type { Explained, Finding } from '@haversack/language/checks/check';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import type { Term } from './term.js';

/** A finding in one of the files of the programme. */
export interface PlanFinding extends Finding {
    uri: string;
}

/**
 * A rule that needs the plan: figures of every class in, findings in all files out. Pure. It computes no quantity of its own,
 * and tells of nothing that lies before today.
 */
export interface PlanCheck extends Explained {
    /** The day on which the examples are read. */
    on: string;
    /** True where it tells of something that is still missing: only a hint in a lesson marked `draft`. */
    missing?: boolean;
    find(view: ProgrammeView, term: Term): Iterable<PlanFinding>;
}

import type { URI } from 'langium';
import type { ProgrammeKey, Programmes } from '@haversack/language/linking/programmes';

/** One of something for every programme that is open, made when it is first asked for and forgotten when its folder is closed. */
export class PerProgramme<T> {
    private readonly kept = new Map<ProgrammeKey, T>();
    private open: readonly ProgrammeKey[] = [];

    constructor(private readonly programmes: Programmes, private readonly make: (programme: ProgrammeKey) => T) {}

    /** That of the programme that a file belongs to. */
    of(file: URI | string): T {
        return this.at(this.programmes.of(file));
    }

    at(programme: ProgrammeKey): T {
        this.forgetClosed();
        let one = this.kept.get(programme);
        if (one === undefined) {
            one = this.make(programme);
            this.kept.set(programme, one);
        }
        return one;
    }

    private forgetClosed(): void {
        const { open } = this.programmes;
        if (this.open === open) return;
        this.open = open;
        const all = this.programmes.all;
        for (const programme of this.kept.keys()) if (!all.includes(programme)) this.kept.delete(programme);
    }
}

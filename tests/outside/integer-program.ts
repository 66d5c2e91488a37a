import type loadHighs from 'highs';

type Highs = Awaited<ReturnType<typeof loadHighs>>;
type Terms = ReadonlyMap<string, number>;

export interface IntegerProgram {
    /** Minimised one after the other, each kept at its least while the next is. */
    aims: readonly Terms[];
    rows: readonly { terms: Terms; relation: '>=' | '<=' | '='; bound: number }[];
    whole: readonly string[];
    yesNo: readonly string[];
}

/** The least value of each aim, found by HiGHS. */
export function solveInOrder(highs: Highs, { aims, rows, whole, yesNo }: IntegerProgram): number[] {
    const kept = [...rows];
    return aims.map(aim => {
        const text = [
            'Minimize', ` aim: ${sum(aim)}`, 'Subject To',
            ...kept.map(({ terms, relation, bound }, i) => ` r${i}: ${sum(terms)} ${relation} ${bound}`),
            'General', ` ${whole.join(' ')}`, ...(yesNo.length > 0 ? ['Binary', ` ${yesNo.join(' ')}`] : []), 'End'
        ].join('\n');
        const solution = highs.solve(text, { mip_rel_gap: 0, mip_abs_gap: 0 });
        if (solution.Status !== 'Optimal') throw new Error(`HiGHS says ${solution.Status}:\n${text}`);
        const least = Math.round([...aim].reduce((total, [name, weight]) => total + weight * Math.round(solution.Columns[name]!.Primal), 0));
        kept.push({ terms: aim, relation: '<=', bound: least });
        return least;
    });
}

function sum(terms: Terms): string {
    const written = [...terms].filter(([, weight]) => weight !== 0).map(([name, weight]) => `${weight < 0 ? '-' : '+'} ${Math.abs(weight)} ${name}`);
    return written.length > 0 ? written.join(' ') : `0 ${[...terms.keys()][0]}`;
}

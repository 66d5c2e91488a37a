/**
 * Which of the items have moved, when `order` gives for each the place it has on the other side: as few as possible, the others keeping
 * their order among themselves (a longest increasing subsequence). Which of equally few is left to the search, always in the same way.
 */
export function movedItems(order: readonly number[]): Set<number> {
    // tails[k]: index of the smallest last item of a run of k + 1; before: the item before each in its run.
    const tails: number[] = [];
    const before: number[] = [];
    order.forEach((value, index) => {
        let low = 0;
        let high = tails.length;
        while (low < high) {
            const middle = (low + high) >> 1;
            if (order[tails[middle]!]! < value) low = middle + 1;
            else high = middle;
        }
        before[index] = low === 0 ? -1 : tails[low - 1]!;
        tails[low] = index;
    });
    const stay = new Set<number>();
    for (let index = tails[tails.length - 1] ?? -1; index >= 0; index = before[index] ?? -1) stay.add(index);
    return new Set(order.flatMap((_, index) => (stay.has(index) ? [] : [index])));
}

/** Lists whose lengths multiply to more than this are not compared item by item with every other. */
const mostCells = 1_000_000;

/**
 * What both lists have in the same order, as pairs of places in either: as many as possible (a longest common subsequence), or of very
 * long lists only what stands alike at their beginnings and ends.
 */
export function commonRun(a: readonly string[], b: readonly string[]): [number, number][] {
    let head = 0;
    while (head < a.length && head < b.length && a[head] === b[head]) head++;
    let tail = 0;
    while (tail < Math.min(a.length, b.length) - head && a[a.length - 1 - tail] === b[b.length - 1 - tail]) tail++;
    const inner = (a.length - head - tail) * (b.length - head - tail) > mostCells ? [] : longestRun(a.slice(head, a.length - tail), b.slice(head, b.length - tail));
    return [
        ...Array.from({ length: head }, (_, index): [number, number] => [index, index]),
        ...inner.map(([i, j]): [number, number] => [i + head, j + head]),
        ...Array.from({ length: tail }, (_, index): [number, number] => [a.length - tail + index, b.length - tail + index])
    ];
}

function longestRun(a: readonly string[], b: readonly string[]): [number, number][] {
    const lengths = Array.from({ length: a.length + 1 }, () => new Array<number>(b.length + 1).fill(0));
    for (let i = a.length - 1; i >= 0; i--) {
        for (let j = b.length - 1; j >= 0; j--) {
            lengths[i]![j] = a[i] === b[j] ? lengths[i + 1]![j + 1]! + 1 : Math.max(lengths[i + 1]![j]!, lengths[i]![j + 1]!);
        }
    }
    const run: [number, number][] = [];
    for (let i = 0, j = 0; i < a.length && j < b.length;) {
        if (a[i] === b[j]) run.push([i++, j++]);
        else if (lengths[i + 1]![j]! >= lengths[i]![j + 1]!) i++;
        else j++;
    }
    return run;
}

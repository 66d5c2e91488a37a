/**
 * Groups of nodes that lead back to themselves (strongly connected components of more than one node, or a node that names
 * itself), after Tarjan, "Depth-first search and linear graph algorithms" (1972), with a list instead of recursion. Linear.
 */
export function circlesAmong(edges: readonly (readonly number[])[]): number[][] {
    const index = new Int32Array(edges.length).fill(-1);
    const low = new Int32Array(edges.length);
    const onStack = new Uint8Array(edges.length);
    const stack: number[] = [];
    const circles: number[][] = [];
    let counter = 0;
    for (let root = 0; root < edges.length; root++) {
        if (index[root] !== -1) continue;
        const path: { node: number; next: number }[] = [{ node: root, next: 0 }];
        while (path.length > 0) {
            const top = path[path.length - 1]!;
            const { node } = top;
            if (top.next === 0) {
                index[node] = low[node] = counter++;
                stack.push(node);
                onStack[node] = 1;
            }
            const target = edges[node]?.[top.next];
            if (target !== undefined) {
                top.next += 1;
                if (index[target] === -1) path.push({ node: target, next: 0 });
                else if (onStack[target]) low[node] = Math.min(low[node]!, index[target]!);
                continue;
            }
            path.pop();
            const above = path[path.length - 1];
            if (above) low[above.node] = Math.min(low[above.node]!, low[node]!);
            if (low[node] !== index[node]) continue;
            const group = stack.splice(stack.lastIndexOf(node));
            for (const member of group) onStack[member] = 0;
            if (group.length > 1 || edges[node]?.includes(node)) circles.push(group.sort((a, b) => a - b));
        }
    }
    return circles;
}

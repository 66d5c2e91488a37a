import { DefaultFoldingRangeProvider } from 'langium/lsp';

/** Every block folds from its first line to its last; the last line is folded too, for no bracket stands on it. */
export class HaversackFolding extends DefaultFoldingRangeProvider {
    protected override includeLastFoldingLine(): boolean {
        return true;
    }
}

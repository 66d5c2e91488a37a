interface Code {
    code: string;
    severity: string;
    title: string;
}

export function textsInSources(): string[];
export function textsIn(name: string, source: string): string[];
export function severityProperties(codes: readonly Code[]): Record<string, object>;
export function severityTexts(codes: readonly Code[]): Record<string, string>;

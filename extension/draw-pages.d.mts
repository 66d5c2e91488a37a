export function drawPages(commandLine: string, repository: string): Promise<Record<string, Buffer> | undefined>;
export function withPictures(text: string, drawn: Readonly<Record<string, Buffer>> | undefined, address?: string): string;

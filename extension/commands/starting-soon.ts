/** The first Monday after a day, in the line that says when the class starts. */
export function startingSoon(text: string, today: Date): string {
    const monday = new Date(today.getFullYear(), today.getMonth(), today.getDate() + ((8 - today.getDay()) % 7 || 7));
    const two = (part: number): string => String(part).padStart(2, '0');
    return text.replace(/^(\s*starts )\d{4}-\d{2}-\d{2}$/m, `$1${monday.getFullYear()}-${two(monday.getMonth() + 1)}-${two(monday.getDate())}`);
}

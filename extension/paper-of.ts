/**
 * Regions that print on Letter; all others print on A4. From memory of the paper sizes in CLDR's supplemental data ("measurementData").
 */
const letterRegions = new Set(['BZ', 'CA', 'CL', 'CO', 'CR', 'GT', 'MX', 'NI', 'PA', 'PH', 'PR', 'SV', 'US', 'VE']);

/**
 * @param setting `a4`, `letter`, `region` or `printer`; anything else counts as `printer`
 * @param locale of the machine, as BCP 47 writes it
 * @returns nothing where the printer's own paper counts, or the region is not known
 */
export function paperOf(setting: unknown, locale: string): 'a4' | 'letter' | undefined {
    if (setting === 'a4' || setting === 'letter') return setting;
    if (setting !== 'region') return undefined;
    const { region } = new Intl.Locale(locale);
    return region === undefined ? undefined : letterRegions.has(region) ? 'letter' : 'a4';
}

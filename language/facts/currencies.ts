/** Decimals of the currencies that have not two (ISO 4217, list one as published on 2024-06-25). */
const decimals: ReadonlyMap<string, number> = new Map([
    ...['BIF', 'CLP', 'DJF', 'GNF', 'ISK', 'JPY', 'KMF', 'KRW', 'PYG', 'RWF', 'UGX', 'UYI', 'VND', 'VUV', 'XAF', 'XOF', 'XPF'].map(code => [code, 0] as const),
    ...['BHD', 'IQD', 'JOD', 'KWD', 'LYD', 'OMR', 'TND'].map(code => [code, 3] as const),
    ...['CLF', 'UYW'].map(code => [code, 4] as const)
]);

/** How many decimals an ISO 4217 code has: two for every code that is not known to have others. */
export function decimalsOfCurrency(currency: string): number {
    return decimals.get(currency) ?? 2;
}

/** @returns 32 figures and letters that nobody can guess: 16 random bytes in hexadecimal */
export function randomName(): string {
    return Array.from(crypto.getRandomValues(new Uint8Array(16)), byte => byte.toString(16).padStart(2, '0')).join('');
}

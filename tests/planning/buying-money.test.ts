import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { moneyFigure, moneyText, perLearner, readMoney, sumsByCurrency } from '../../server/planning/buying/money.js';

const money = (value: string, currency = 'USD') => ({ value, currency });

describe('reading', () => {
    test.each([['14.50', 'USD', 1450n], ['14.5', 'USD', 1450n], ['14.5000', 'USD', 1450n], ['14', 'USD', 1400n], ['1 1/2', 'USD', 150n], ['900', 'JPY', 900n], ['0.125', 'KWD', 125n], ['9007199254740993.01', 'USD', 900719925474099301n]])(
        '%s %s', (value, currency, minor) => expect(readMoney(money(value, currency))).toEqual({ minor, currency }));
    test.each([['14.505', 'USD'], ['0.5', 'JPY'], ['1/3', 'USD'], ['1/0', 'USD'], ['much', 'USD'], ['9'.repeat(60), 'USD']])(
        '%s %s is no sum of coins', (value, currency) => expect(readMoney(money(value, currency))).toBeUndefined());
    test('what is written is read back', () => {
        fc.assert(fc.property(fc.bigInt({ min: 0n, max: 10n ** 20n }), fc.constantFrom('USD', 'JPY', 'KWD', 'CLF'), (minor, currency) => {
            const [value, code] = moneyText({ minor, currency }).split(' ');
            expect(readMoney(money(value!, code))).toEqual({ minor, currency });
        }));
    });
    test('as plain data', () => expect(moneyFigure({ minor: 1450n, currency: 'USD' })).toEqual({ minor: '1450', currency: 'USD', text: '14.50 USD' }));
    test('less than nothing', () => expect(moneyText({ minor: -5n, currency: 'USD' })).toBe('-0.05 USD'));
});

test('sums stay apart by currency', () => {
    const amounts = [{ minor: 5n, currency: 'USD' }, { minor: 7n, currency: 'EUR' }, { minor: 11n, currency: 'USD' }];
    expect(sumsByCurrency(amounts)).toEqual([{ minor: 7n, currency: 'EUR' }, { minor: 16n, currency: 'USD' }]);
    expect(sumsByCurrency([])).toEqual([]);
});

describe('each learner', () => {
    test.each([
        [4350n, 7, 'USD', '43.50 USD among 7 learners: rounded up to 6.22 USD each'],
        [4200n, 7, 'USD', '42.00 USD among 7 learners: 6.00 USD each'],
        [100n, 3, 'JPY', '100 JPY among 3 learners: rounded up to 34 JPY each'],
        [4350n, 1, 'USD', '43.50 USD among 1 learner: 43.50 USD each']
    ])('%d among %d', (minor, learners, currency, words) => expect(perLearner({ minor, currency }, learners)?.words).toBe(words));
    test.each([0, -1, NaN, 2.5])('no share for %d learners', learners => expect(perLearner({ minor: 100n, currency: 'USD' }, learners)).toBeUndefined());
    test('the shares are enough, and one coin less would not be', () => {
        fc.assert(fc.property(fc.bigInt({ min: 0n, max: 10n ** 12n }), fc.integer({ min: 1, max: 400 }), (minor, learners) => {
            const share = perLearner({ minor, currency: 'USD' }, learners)!.minor;
            expect(share * BigInt(learners) >= minor && (share === 0n || (share - 1n) * BigInt(learners) < minor)).toBe(true);
        }));
    });
});

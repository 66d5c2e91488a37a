import type Fraction from 'fraction.js';
import { amountText, figure } from '../amounts.js';
import { exactText } from '../exact.js';
import type { Figure, TrailStep } from '../figure.js';
import { readsPlainly, sensiblyDown, sensiblyUp } from '../rounding.js';
import type { Quantity } from '../supply-figures.js';
import type { Ledger } from './ledger.js';
import { fractionOf } from './ratio.js';

/** A ledger's numbers as people read them. `exact` of a quantity is in the measure's own unit throughout. */
export class Quantities {
    private readonly asNeeded = new Map<bigint, Quantity>();
    private readonly asThere = new Map<bigint, Quantity>();

    constructor(private readonly ledger: Pick<Ledger, 'measure' | 'scale'>) {}

    /** What is needed or bought. */
    of(amount: bigint): Quantity {
        return this.kept(this.asNeeded, amount, sensiblyUp);
    }

    /** What is there or left over: told rounded down. */
    rest(amount: bigint): Quantity {
        return this.kept(this.asThere, amount, sensiblyDown);
    }

    text(amount: bigint): string {
        return amountText(this.value(amount), this.ledger.measure);
    }

    /** What is needed, rounded up to what people weigh and cut where it does not read plainly. */
    needed(amount: bigint, trail: TrailStep[]): Figure {
        return this.figure(amount, trail, sensiblyUp);
    }

    /** What is there, rounded down in the same way. */
    there(amount: bigint, trail: TrailStep[]): Figure {
        return this.figure(amount, trail, sensiblyDown);
    }

    value(amount: bigint): Fraction {
        return fractionOf({ n: amount, d: this.ledger.scale });
    }

    private kept(known: Map<bigint, Quantity>, amount: bigint, round: typeof sensiblyUp): Quantity {
        let quantity = known.get(amount);
        if (!quantity) known.set(amount, quantity = { exact: exactText(this.value(amount)), text: this.figure(amount, [], round).text });
        return quantity;
    }

    private figure(amount: bigint, trail: TrailStep[], round: typeof sensiblyUp): Figure {
        const { measure } = this.ledger;
        const value = this.value(amount);
        return figure(value, measure, trail, readsPlainly(value, measure) ? value : round(value, measure));
    }
}

import { DefaultValueConverter, type CstNode, type GrammarAST, type ValueType } from 'langium';
import { isName, nameFrom } from '../lexer/scan.js';

/** Text of tokens to values. Numbers stay text, so that nothing is rounded. */
export class HaversackValueConverter extends DefaultValueConverter {
    protected override runConverter(rule: GrammarAST.AbstractRule, input: string, cstNode: CstNode): ValueType {
        switch (rule.name) {
            case 'STRING': return input.slice(1, -1);
            // A name in capitals is reported by the lexer; it still means the thing it was meant to.
            case 'NAME': return isName(input) ? input : nameFrom(input);
            case 'NUMBER': return input;
            default: return super.runConverter(rule, input, cstNode);
        }
    }
}

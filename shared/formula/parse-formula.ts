import { type Node, parseExpressionAt } from 'acorn';
import * as message from '../messages/formula.ts';
import type { BinaryOperator, Expression, Span } from './expression.ts';
import { FormulaFault } from './formula-fault.ts';

/** A formula is read by people; these bounds are far above any that is. */
const LONGEST = 2000;
const DEEPEST = 60;
const MOST_PARTS = 600;

const BINARY = new Set<string>(['+', '-', '*', '/', '%', '**', '<', '<=', '>', '>=', '==', '!=', '&&', '||']);
/** ECMAScript's strict comparisons say what we mean by the short ones. */
const SAME: Readonly<Record<string, string>> = { '===': '==', '!==': '!=' };

/** What a library's node may hold; every field is looked at before it is believed. */
interface Raw extends Node {
  readonly [field: string]: unknown;
}

const spanOf = ({ start, end }: Node): Span => ({ from: start, to: end });

/**
 * Reads a formula into a tree. The grammar is ECMAScript's for expressions, cut down; nothing is ever run as code.
 * @throws FormulaFault
 */
export function parseFormula(text: string): Expression {
  if (text.length > LONGEST)
    throw new FormulaFault(message.formulaTooLong(text.length, LONGEST), { from: LONGEST, to: LONGEST + 1 });
  if (text.trim() === '') throw new FormulaFault(message.formulaEmpty(), { from: 0, to: 1 });
  const root = parseText(text);
  const rest = text.slice(root.end).trim();
  if (rest !== '') {
    const from = text.length - rest.length;
    throw new FormulaFault(message.notUnderstood(`"${rest.slice(0, 20)}" follows its end`), { from, to: text.length });
  }
  return new Reader(text).read(root as Raw, 1);
}

function parseText(text: string): Node {
  try {
    return parseExpressionAt(text, 0, { ecmaVersion: 2022, preserveParens: true });
  } catch (error) {
    const { pos = 0, message: reason = '' } = error as { pos?: number; message?: string };
    throw new FormulaFault(message.notUnderstood(reason.replace(/ \(\d+:\d+\)$/, '').toLowerCase()), {
      from: Math.min(pos, text.length),
      to: pos + 1,
    });
  }
}

/** Turns the library's tree into ours and refuses whatever the language lacks. */
class Reader {
  #parts = 0;

  constructor(private readonly text: string) {}

  read(node: Raw, depth: number): Expression {
    this.#parts++;
    if (depth > DEEPEST) throw new FormulaFault(message.formulaTooDeep(DEEPEST), spanOf(node));
    if (this.#parts > MOST_PARTS) throw new FormulaFault(message.tooManyCalls(this.#parts, MOST_PARTS), spanOf(node));
    const inner = (child: unknown): Expression => this.read(child as Raw, depth + 1);
    switch (node.type) {
      case 'ParenthesizedExpression':
        return inner(node.expression);
      case 'Literal':
        return this.#literal(node);
      case 'Identifier':
        return { kind: 'name', name: String(node.name), ...spanOf(node) };
      case 'MemberExpression':
        return { kind: 'name', name: this.#memberName(node), ...spanOf(node) };
      case 'UnaryExpression':
        return unary(node, inner);
      case 'BinaryExpression':
      case 'LogicalExpression':
        return this.#binary(node, inner);
      case 'ConditionalExpression': {
        const [test, yes, no] = [node.test, node.consequent, node.alternate].map(inner);
        return { kind: 'choice', test, yes, no, ...spanOf(node) };
      }
      case 'CallExpression':
        return this.#call(node, inner);
      default:
        throw this.#refuse(node);
    }
  }

  #refuse(node: Node): FormulaFault {
    const found = this.text.slice(node.start, node.end);
    const quoted = found.length > 40 ? `${found.slice(0, 40)} ...` : found;
    return new FormulaFault(message.notInLanguage(quoted), spanOf(node));
  }

  #literal(node: Raw): Expression {
    const { value } = node;
    if (typeof value === 'number') return { kind: 'number', value, ...spanOf(node) };
    if (typeof value === 'string') return { kind: 'text', value, ...spanOf(node) };
    throw this.#refuse(node);
  }

  /** Only one dot between two plain names; what it names is looked up in a list, never in an object. */
  #memberName(node: Raw): string {
    const object = node.object as Raw;
    const property = node.property as Raw;
    if (node.computed || node.optional || object.type !== 'Identifier' || property.type !== 'Identifier')
      throw this.#refuse(node);
    return `${object.name}.${property.name}`;
  }

  #binary(node: Raw, inner: (child: unknown) => Expression): Expression {
    const written = String(node.operator);
    const operator = SAME[written] ?? written;
    const from = this.text.indexOf(written, (node.left as Node).end);
    const at = { from, to: from + written.length };
    if (!BINARY.has(operator)) throw new FormulaFault(message.notInLanguage(written), at);
    const [left, right] = [inner(node.left), inner(node.right)];
    return { kind: 'binary', operator: operator as BinaryOperator, at, left, right, ...spanOf(node) };
  }

  #call(node: Raw, inner: (child: unknown) => Expression): Expression {
    const callee = node.callee as Raw;
    if (callee.type !== 'Identifier' || node.optional) throw this.#refuse(node);
    const given = (node.arguments as Raw[]).map((argument) => inner(argument));
    return { kind: 'call', name: String(callee.name), at: spanOf(callee), arguments: given, ...spanOf(node) };
  }
}

function unary(node: Raw, inner: (child: unknown) => Expression): Expression {
  const { operator } = node;
  if (operator !== '-' && operator !== '+' && operator !== '!')
    throw new FormulaFault(message.notInLanguage(String(operator)), spanOf(node));
  return { kind: 'unary', operator, argument: inner(node.argument), ...spanOf(node) };
}

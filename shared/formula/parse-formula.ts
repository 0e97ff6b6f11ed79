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
  let root: Node;
  try {
    root = parseExpressionAt(text, 0, { ecmaVersion: 2022, preserveParens: true });
  } catch (error) {
    const { pos = 0, message: reason = '' } = error as { pos?: number; message?: string };
    throw new FormulaFault(message.notUnderstood(reason.replace(/ \(\d+:\d+\)$/, '').toLowerCase()), {
      from: Math.min(pos, text.length),
      to: pos + 1,
    });
  }
  const rest = text.slice(root.end).trim();
  if (rest !== '') {
    const from = text.length - rest.length;
    throw new FormulaFault(message.notUnderstood(`"${rest.slice(0, 20)}" follows its end`), { from, to: text.length });
  }
  let parts = 0;
  return read(root as Raw, 1);

  function read(node: Raw, depth: number): Expression {
    parts++;
    if (depth > DEEPEST) throw new FormulaFault(message.formulaTooDeep(DEEPEST), spanOf(node));
    if (parts > MOST_PARTS) throw new FormulaFault(message.tooManyCalls(parts, MOST_PARTS), spanOf(node));
    const inner = (child: unknown): Expression => read(child as Raw, depth + 1);
    switch (node.type) {
      case 'ParenthesizedExpression':
        return inner(node.expression);
      case 'Literal':
        return literal(node);
      case 'Identifier':
        return { kind: 'name', name: String(node.name), ...spanOf(node) };
      case 'MemberExpression':
        return { kind: 'name', name: memberName(node), ...spanOf(node) };
      case 'UnaryExpression':
        return unary(node, inner);
      case 'BinaryExpression':
      case 'LogicalExpression':
        return binary(node, inner, text);
      case 'ConditionalExpression':
        return {
          kind: 'choice',
          test: inner(node.test),
          yes: inner(node.consequent),
          no: inner(node.alternate),
          ...spanOf(node),
        };
      case 'CallExpression':
        return call(node, inner);
      default:
        throw new FormulaFault(message.notInLanguage(quote(node)), spanOf(node));
    }
  }

  function quote(node: Node): string {
    const found = text.slice(node.start, node.end);
    return found.length > 40 ? `${found.slice(0, 40)} ...` : found;
  }

  function literal(node: Raw): Expression {
    const { value } = node;
    if (typeof value === 'number') return { kind: 'number', value, ...spanOf(node) };
    if (typeof value === 'string') return { kind: 'text', value, ...spanOf(node) };
    throw new FormulaFault(message.notInLanguage(quote(node)), spanOf(node));
  }

  /** Only one dot between two plain names; what it names is looked up in a list, never in an object. */
  function memberName(node: Raw): string {
    const object = node.object as Raw;
    const property = node.property as Raw;
    if (node.computed || node.optional || object.type !== 'Identifier' || property.type !== 'Identifier')
      throw new FormulaFault(message.notInLanguage(quote(node)), spanOf(node));
    return `${object.name}.${property.name}`;
  }

  function unary(node: Raw, inner: (child: unknown) => Expression): Expression {
    const { operator } = node;
    if (operator !== '-' && operator !== '+' && operator !== '!')
      throw new FormulaFault(message.notInLanguage(String(operator)), spanOf(node));
    return { kind: 'unary', operator, argument: inner(node.argument), ...spanOf(node) };
  }

  function binary(node: Raw, inner: (child: unknown) => Expression, source: string): Expression {
    const written = String(node.operator);
    const operator = SAME[written] ?? written;
    const leftEnd = (node.left as Node).end;
    const from = source.indexOf(written, leftEnd);
    const at = { from, to: from + written.length };
    if (!BINARY.has(operator)) throw new FormulaFault(message.notInLanguage(written), at);
    return {
      kind: 'binary',
      operator: operator as BinaryOperator,
      at,
      left: inner(node.left),
      right: inner(node.right),
      ...spanOf(node),
    };
  }

  function call(node: Raw, inner: (child: unknown) => Expression): Expression {
    const callee = node.callee as Raw;
    if (callee.type !== 'Identifier' || node.optional)
      throw new FormulaFault(message.notInLanguage(quote(node)), spanOf(node));
    const given = (node.arguments as Raw[]).map((argument) => inner(argument));
    return { kind: 'call', name: String(callee.name), at: spanOf(callee), arguments: given, ...spanOf(node) };
  }
}

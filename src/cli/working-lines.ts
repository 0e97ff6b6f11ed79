import * as say from '../../shared/messages/working.ts';
import { sourceTitle } from '../../shared/sources/source-title.ts';
import type { ShownReading, ShownWorking } from '../../shared/working/shown-working.ts';
import { foldLine } from './fold-line.ts';

/** Widest lines of a terminal that are still pleasant to read. */
const WIDEST = 110;

/** The working of a number as lines for a terminal so many characters wide. */
export function workingLines(working: ShownWorking, width: number): string[] {
  const { title, steps, inputs, budget, readings, functions, sources } = working;
  const fold = (text: string, indent: number): string[] => foldLine(text, Math.min(width, WIDEST), indent);
  const last = steps[steps.length - 1];
  return [
    ...fold(say.workingHead(title, last.stated), 2),
    ...readings.flatMap((reading) => ['', ...readingLines(reading, fold, width)]),
    '',
    `${say.inputsHead()}:`,
    ...inputs.flatMap(({ title: what, symbol, stated, shownSd, from }) => [
      ...fold(`  ${say.inputWords(what, symbol, stated, shownSd)}`, 6),
      ...(from ? fold(`      ${say.fromCell(from.cell)}`, 6) : []),
    ]),
    '',
    `${say.stepsHead(steps.length)}:`,
    ...steps.flatMap((step) => [
      ...fold(`  ${step.title}`, 4),
      ...fold(`    ${step.symbols}`, 8),
      ...(step.numbers === `${step.symbols.split(' = ')[0]} = ${step.result}` ? [] : fold(`    ${step.numbers}`, 8)),
      `    = ${step.result}`,
      ...fold(`    ${sourceTitle(step.source)}`, 8),
    ]),
    '',
    say.workingSd(last.sd, last.unit),
    ...(budget.length > 0 ? [say.budgetIntro(budget.length)] : []),
    ...budget.map((share) => `  ${say.shareWords(share.percent).padStart(12)}  ${share.title}`),
    ...(functions.length === 0 ? [] : ['', `${say.functionsHead(functions.length)}:`]),
    ...functions.flatMap(({ usage, title: does }) => fold(`  ${usage}: ${does}`, 6)),
    ...(sources.length === 0 ? [] : ['', `${say.sourcesHead(sources.length)}:`]),
    ...sources.flatMap(({ full, standing }) => fold(`  ${full} (${say.standingWords(standing)})`, 6)),
  ];
}

function readingLines(
  { unit, takenAt, fire, state, fuel, file, line, origin, amended }: ShownReading,
  fold: (text: string, indent: number) => string[],
  width: number,
): string[] {
  const cells = origin?.cells ?? [];
  const gone = origin && origin.text === '' ? fold(`  ${say.originGone()}`, 2) : [];
  return [
    ...fold(say.readingWords(unit, takenAt, fire, state, fuel), 2),
    ...fold(say.workingOrigin(file, line), 2),
    ...gone,
    ...(origin?.text ?? '')
      .split('\n')
      .flatMap((text) => (text.trim() === '' ? [] : cut(`  ${text.trimEnd()}`, width))),
    ...cells.flatMap(({ position, head, text }) => fold(`  ${say.originCell(position, head, text)}`, 6)),
    ...(amended.length === 0 ? [] : [`  ${say.amendedHead(amended.length)}:`]),
    ...amended.flatMap((text) => fold(`    ${text}`, 6)),
  ];
}

/** A line of a file holds no words to break at: it is cut where the terminal ends. */
function cut(text: string, width: number): string[] {
  const room = Math.max(1, width - 6);
  const [first, rest] = [text.slice(0, width), text.slice(width)];
  const parts = rest.match(new RegExp(`.{1,${room}}`, 'gsu')) ?? [];
  return [first, ...parts.map((part) => `      ${part}`)];
}

import type { Segment } from '../../shared/cell.ts';
import type { CellState } from '../../shared/cell-state.ts';
import { RELATIONS } from '../../shared/combustion/relations/relations.ts';
import { type Markup, markup } from '../../shared/markup/markup.ts';
import { allCautions } from '../../shared/messages/cautions.ts';
import * as say from '../../shared/messages/report.ts';
import type { Source } from '../../shared/sources/source.ts';
import { methodSources, sourceNamed } from './method-sources.ts';

/** Defaults and remarks of every cell, the gravest first inside each. */
export function defaultsSection(states: readonly CellState[]): Markup {
  const told = states.filter(({ description }) => (description?.remarks.length ?? 0) > 0);
  if (told.length === 0) return markup``;
  return markup`<section><h2>${say.defaultsHead()}</h2>
${told.map(
  ({ title, description }) =>
    markup`<div class="cell"><h3>${title}</h3><ul class="remarks">${(description?.remarks ?? []).map(({ text }) => markup`<li>${text}</li>`)}</ul></div>`,
)}</section>`;
}

/** The sentence of each cell, its choices underlined. */
export function methodsSection(states: readonly CellState[]): Markup {
  return markup`<section><h2>${say.methodsHead()}</h2><p class="quiet">${say.methodsIntro()}</p>
${states
  .filter(({ kind }) => kind !== 'note')
  .map(
    ({ title, name, kind, sentence, details, description }) =>
      markup`<div class="cell"><h3>${title}${name === title ? '' : markup` <span class="quiet">${name}</span>`}</h3><p>${written(
        sentence,
      )}</p>${details.length === 0 ? '' : markup`<p class="quiet">${written(details)}</p>`}${description ? markup`<p class="quiet">${description.answer}</p>` : ''}${sourcesOf(kind)}</div>`,
  )}${states.some(({ kind }) => kind === 'derive') ? relations() : ''}</section>`;
}

const written = (segments: readonly Segment[]): (Markup | string)[] =>
  segments.map((segment) => (typeof segment === 'string' ? segment : markup`<u>${segment.text}</u>`));

function sourcesOf(kind: string): Markup {
  const sources = methodSources(kind);
  return sources.length === 0 ? markup`` : markup`<p class="quiet">${say.bySources(sources.join('; '))}</p>`;
}

/** The built-in derivations as they are computed, each with its source. */
function relations(): Markup {
  return markup`<h3>${say.relationsHead()}</h3><p class="quiet">${say.relationsIntro()}</p>
<table><thead><tr>${say.relationColumns().map((title) => markup`<th>${title}</th>`)}</tr></thead><tbody>${RELATIONS.map(
    ({ name, title, unit, formula, source }) =>
      markup`<tr><td>${title}${unit === '1' || unit === '' ? '' : `, ${unit}`}</td><td class="raw">${name} = ${formula}</td><td>${sourceNamed(source)}</td></tr>
`,
  )}</tbody></table>`;
}

/** Words that the reader put beside the results. */
export function notesSection(states: readonly CellState[]): Markup {
  const notes = states.filter(({ kind, description }) => kind === 'note' && (description?.answer ?? '') !== '');
  return notes.length === 0
    ? markup``
    : markup`<section>${notes.map(({ title, description }) => markup`<h2>${title}</h2><p>${description?.answer ?? ''}</p>`)}</section>`;
}

export function sourcesSection(sources: Readonly<Record<string, Source>>): Markup {
  // Two rooms may name one source; it is printed once.
  const byShort = new Map(Object.values(sources).map((source) => [source.short, source]));
  const entries = [...byShort.values()].sort((a, b) => (a.short < b.short ? -1 : 1));
  return markup`<section><h2>${say.sourcesHead()}</h2><p class="quiet">${say.sourcesIntro()}</p>
<dl>${entries.map(({ short, full, standing }) => markup`<dt>${short}</dt><dd>${full} <span class="quiet">(${standing})</span></dd>`)}</dl></section>`;
}

export function cautionsBox(): Markup {
  return markup`<section class="cautions"><h2>${say.cautionsHead()}</h2><ul>${allCautions().map((text) => markup`<li>${text}</li>`)}</ul></section>`;
}

/** Cells that came to nothing: said at the top, since what follows lacks them. */
export function troubles(states: readonly CellState[]): Markup[] {
  return states.flatMap(({ name, phase, message, question, waitsFor }) => {
    if (question) return [markup`<p class="trouble">${say.askingLine(name, question.message, question.remedy)}</p>`];
    if (phase === 'failed') return [markup`<p class="trouble">${say.failedLine(name, message)}</p>`];
    if (waitsFor.length > 0) return [markup`<p class="trouble">${say.waitingLine(name, waitsFor.join(', '))}</p>`];
    return [];
  });
}

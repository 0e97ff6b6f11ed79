import { escapeText } from '../markup/escape-text.ts';
import { laneKeyWords } from '../messages/lanes.ts';
import { LANE_COLORS } from './lane-colors.ts';

/** What the marks of the fire lanes mean, as one line of SVG to stand once above many of them. */
export function drawLaneKey(): string {
  const words = laneKeyWords();
  const { ink, paper, fit, spread, leaving, supply, edge, quiet } = LANE_COLORS;
  const marks: readonly (readonly [string, string, number])[] = [
    [`<circle cx="8" cy="9" r="3.6" fill="${paper}" stroke="${ink}" stroke-width="1.2"/>`, words.found, 74],
    [`<circle cx="8" cy="9" r="3.6" fill="${ink}"/>`, words.left, 66],
    [
      `<path d="M8 2V13" stroke="${quiet}" stroke-dasharray="1 2.5"/><path d="M6.6 14h2.8" stroke="${quiet}" stroke-width="2.8"/>`,
      words.shown,
      118,
    ],
    [
      `<path d="M0 3h16v12H0Z" fill="${spread}" fill-opacity=".26"/><path d="M0 9h16" stroke="${fit}" stroke-width="1.8"/>`,
      words.level,
      122,
    ],
    [`<path d="M0 5h16M0 14h16" stroke="${edge}" stroke-width="1.2"/>`, words.band, 52],
    [
      `<path d="M8 0V16" stroke="${leaving}" stroke-width="1.6"/><path d="M3 5h10L8 17Z" fill="${leaving}"/>`,
      words.leaving,
      166,
    ],
    [`<path d="M5 2h5V15h-5Z" fill="${supply}"/>`, words.supply, 90],
  ];
  let x = 0;
  const drawn = marks.map(([mark, word, width]) => {
    const group = `<g transform="translate(${x} 0)">${mark}<text x="22" y="13" font-size="11" fill="${ink}">${escapeText(word)}</text></g>`;
    x += width + 22;
    return group;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" class="lane-key" role="img" viewBox="0 0 ${x} 20" width="${x}" height="20" style="max-width:100%;height:auto" font-family="inherit" color="inherit"><title>${escapeText(words.title)}</title>${drawn.join('')}</svg>`;
}

import type { Config } from 'vega-embed';

/** Okabe and Ito's colours for colour-blind readers (Color Universal Design, 2002/2008), in an order that keeps neighbours apart. */
const SERIES_LIGHT = ['#0072b2', '#d55e00', '#009e73', '#cc79a7', '#e69f00', '#56b4e9', '#14202a'];
const SERIES_DARK = ['#56b4e9', '#e69f00', '#2cc79a', '#e39cc4', '#f0e442', '#e8712b', '#eef2f4'];

/** Vega-Lite's configuration in the colours and letters that the page has at this moment. */
export function pictureTheme(style: CSSStyleDeclaration): Config {
  const token = (name: string, otherwise: string): string => style.getPropertyValue(name).trim() || otherwise;
  const ink = token('--ink', '#14202a');
  const soft = token('--ink-2', '#45535e');
  const rule = token('--rule', '#cfd7dc');
  const isDark = token('--light', 'day') === 'night';
  const font = style.fontFamily;
  const letters = {
    labelFont: font,
    titleFont: font,
    labelFontSize: 15,
    titleFontSize: 16,
    labelColor: ink,
    titleColor: ink,
  };
  return {
    background: 'transparent',
    font,
    axis: { ...letters, titleFontWeight: 600, domainColor: soft, tickColor: soft, gridColor: rule, labelPadding: 6 },
    // Readings are years apart: a month without its year says nothing.
    axisTemporal: { format: '%b %Y', labelOverlap: true },
    legend: { ...letters, symbolSize: 160, orient: 'bottom' },
    header: { ...letters },
    title: { color: ink, font, fontSize: 18, anchor: 'start' },
    text: { color: ink, font, fontSize: 15 },
    view: { stroke: rule },
    range: { category: isDark ? SERIES_DARK : SERIES_LIGHT },
    mark: { color: isDark ? SERIES_DARK[0] : SERIES_LIGHT[0] },
    rule: { color: soft },
  };
}

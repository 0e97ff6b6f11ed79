/**
 * The lanes' colors as CSS custom properties, so that the page can set a dark set; the fallbacks are for paper.
 * Hues: Okabe and Ito, "Color Universal Design" (2002/2008), a palette that the common kinds of color blindness tell
 * apart. No color says anything that shape, position or words do not say as well.
 */
export const LANE_COLORS = {
  ink: 'var(--lane-ink, currentColor)',
  quiet: 'var(--lane-quiet, #6b6b6b)',
  paper: 'var(--lane-paper, #ffffff)',
  band: 'var(--lane-band, #eaf2f7)',
  edge: 'var(--lane-edge, #57707f)',
  fit: 'var(--lane-fit, #0072b2)',
  spread: 'var(--lane-spread, #56b4e9)',
  leaving: 'var(--lane-leaving, #d55e00)',
  flame: 'var(--lane-flame, #e69f00)',
  supply: 'var(--lane-supply, #00795a)',
} as const;

import type { Browser, Page } from 'playwright-core';

/** The longest task of the page's own thread, in ms: as the clock tells, and as its processor time alone. */
export interface LongestTask {
  readonly wall: number;
  readonly processor: number;
}

interface TraceEvent {
  readonly ph: string;
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/**
 * The longest task of the page's thread while something is done. Beside the clock it tells the processor's time, since on
 * a computer that others use too the clock counts their work as well.
 */
export async function longestTask(browser: Browser, page: Page, act: () => Promise<void>): Promise<LongestTask> {
  await browser.startTracing(page, { categories: ['toplevel'] });
  // What the beginning of the trace costs is not the page's.
  await page.waitForTimeout(300);
  await act();
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as { traceEvents: TraceEvent[] };
  const mains = traceEvents.filter(
    ({ ph, name, args }) => ph === 'M' && name === 'thread_name' && args?.name === 'CrRendererMain',
  );
  const isMain = ({ pid, tid }: TraceEvent): boolean => mains.some((main) => main.pid === pid && main.tid === tid);
  const tasks = traceEvents.filter((event) => event.ph === 'X' && event.name.endsWith('RunTask') && isMain(event));
  const most = (of: (event: TraceEvent) => number): number => Math.max(0, ...tasks.map(of)) / 1000;
  return { wall: most(({ dur = 0 }) => dur), processor: most(({ tdur = 0 }) => tdur) };
}

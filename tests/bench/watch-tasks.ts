import type { Page } from 'playwright-core';

/** Begins to gather the page's long tasks and the longest gaps between two frames, in ms. */
export async function watchTasks(page: Page): Promise<void> {
  await page.evaluate(() => {
    const gathered = { longest: 0, gap: 0, watching: true };
    (window as unknown as { gathered: typeof gathered }).gathered = gathered;
    // Tasks under 50 ms are told of none: what is gathered is what is too long.
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) gathered.longest = Math.max(gathered.longest, duration);
    }).observe({ type: 'longtask', buffered: false });
    let last = performance.now();
    const tick = (): void => {
      const now = performance.now();
      gathered.gap = Math.max(gathered.gap, now - last);
      last = now;
      if (gathered.watching) setTimeout(tick, 0);
    };
    tick();
  });
}

/** Longest task since (0 where none reached 50 ms), and the longest that a task of ours had to wait for its turn. */
export async function tasksSince(page: Page): Promise<{ longest: number; gap: number }> {
  return page.evaluate(() => {
    const { gathered } = window as unknown as { gathered: { longest: number; gap: number; watching: boolean } };
    const { longest, gap } = gathered;
    gathered.longest = 0;
    gathered.gap = 0;
    return { longest, gap };
  });
}

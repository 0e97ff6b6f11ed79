import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  lastTop,
  positionAfter,
  RAIL_LIMIT_PX,
  railPx,
  scrollAtTop,
  topAtScroll,
  topShowing,
} from '../../../cells/parts/sheet-window.ts';

const geometry = (rows: number) => ({ rows, rowPx: 38, viewPx: 437 });

describe('a window onto any number of rows', () => {
  test('the rail never grows beyond what browsers draw', () => {
    expect(railPx(geometry(100))).toBe(3800);
    expect(railPx(geometry(50_000_000))).toBe(RAIL_LIMIT_PX);
    expect(railPx(geometry(2))).toBe(437);
  });

  test('both ends of the scroll bar are both ends of the table', () => {
    for (const rows of [20, 1204, 1_000_000, 50_000_000]) {
      const whole = geometry(rows);
      expect(topAtScroll(whole, 0)).toBe(0);
      expect(topAtScroll(whole, railPx(whole) - whole.viewPx)).toBeCloseTo(lastTop(whole), 6);
    }
  });

  test('a row and its place on the scroll bar lead to each other, within a pixel', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 12, max: 50_000_000 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (rows, share) => {
          const whole = geometry(rows);
          const top = share * lastTop(whole);
          const rowsAPixel = lastTop(whole) / Math.max(1, railPx(whole) - whole.viewPx);
          expect(Math.abs(topAtScroll(whole, scrollAtTop(whole, top)) - top)).toBeLessThanOrEqual(
            rowsAPixel / 2 + 1e-6,
          );
        },
      ),
    );
  });

  test('in a table of millions, the wheel still moves row by row', () => {
    const whole = geometry(50_000_000);
    const before = { scrollPx: 8_000_000, top: 25_000_000 };
    expect(positionAfter(whole, before, 8_000_038).top).toBeCloseTo(25_000_001, 9);
    expect(positionAfter(whole, before, 12_000_000).top).toBeCloseTo(topAtScroll(whole, 12_000_000), 9);
  });

  test('no movement leaves the table', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5_000_000 }),
        fc.array(fc.integer({ min: 0, max: RAIL_LIMIT_PX }), { maxLength: 20 }),
        (rows, moves) => {
          const whole = geometry(rows);
          let at = { scrollPx: 0, top: 0 };
          for (const move of moves) {
            at = positionAfter(whole, at, Math.min(move, railPx(whole) - whole.viewPx));
            expect(at.top).toBeGreaterThanOrEqual(0);
            expect(at.top).toBeLessThanOrEqual(lastTop(whole) + 1e-9);
          }
        },
      ),
    );
  });

  test('a row is brought into view with the least movement', () => {
    expect(topShowing(geometry(1000), 10, 12)).toBe(10);
    expect(topShowing(geometry(1000), 10, 3)).toBe(3);
    expect(topShowing(geometry(1000), 10, 30)).toBe(31 - 437 / 38);
  });
});

import * as say from '../messages/judged-working.ts';
import { numbersOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';
import type { JudgedNumber } from '../working/judged-number.ts';
import { plainNumber } from '../working/plain-number.ts';
import type { WorkedNumber } from '../working/worked-number.ts';

export interface JudgedDrop extends JudgedNumber {
  readonly drop: WorkedNumber;
}

/** The drop of a row of the supply table against its limit: what it is over by, or what is left. */
export function judgedDrop(supply: Table, row: number): JudgedDrop {
  const number = (column: string): number => numbersOf(supply, column)[row];
  const [value, sd, most] = ['drop_now_Pa', 'drop_now_sd_Pa', 'drop_limit_Pa'].map(number);
  const drop = plainNumber('drop_now', say.dropNow(number('readings_used')), 'Δp,now', value, 'Pa', sd);
  const limit = plainNumber('drop_limit', say.dropLimit(), 'Δp,limit', most, 'Pa');
  const isOver = value > most;
  return {
    title: isOver ? say.dropOver() : say.dropRoom(),
    symbol: isOver ? 'Δp,over' : 'Δp,room',
    from: isOver ? drop : limit,
    less: isOver ? limit : drop,
    drop,
  };
}

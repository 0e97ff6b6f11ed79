import { open } from 'node:fs/promises';

const PIECE = 1 << 20;
const HEAD =
  'unit,taken_at,fire,state,technician,o2_pct,co2_pct,co_ppm,nox_ppm,flue_C,air_C,supply_static_Pa,supply_running_Pa,manifold_Pa,draft_Pa,analyzer,note';

/** How an export writes the same readings. */
export interface Style {
  /** Every text in quotes. */
  readonly quoted: boolean;
  /** Semicolons, decimal comma, d.m.y, German words. */
  readonly german: boolean;
  /** A visit number in each row, another one each four rows. */
  readonly visits: boolean;
}

export const PLAIN: Style = { quoted: false, german: false, visits: false };

/** Seeded readings of about 90 bytes in the project's own columns, sorted by time as an export is. */
export async function writeReadings(name: string, count: number, style = PLAIN): Promise<void> {
  const file = await open(name, 'w');
  let seed = 12345;
  const random = (): number => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return seed / 2 ** 32;
  };
  const units = Math.ceil(count / 24);
  const mark = style.german ? ';' : ',';
  let text = `${HEAD.replaceAll(',', mark)}${style.visits ? `${mark}visit` : ''}\n`;
  for (let i = 0; i < count; i++) {
    const cells = cellsOf(i, units, random, style);
    if (style.visits) cells.push(`V-${1_000_000 + Math.floor(i / 4)}`);
    text += cells.join(mark);
    text += '\n';
    if (text.length > PIECE) {
      await file.write(text);
      text = '';
    }
  }
  await file.write(text);
  await file.close();
}

function cellsOf(i: number, units: number, random: () => number, { quoted, german }: Style): string[] {
  const visit = Math.floor(i / 4 / units);
  const unit = Math.floor(i / 4) % units;
  const text = (value: string): string => (quoted ? `"${value}"` : value);
  const number = (value: number, digits: number): string =>
    german ? value.toFixed(digits).replace('.', ',') : value.toFixed(digits);
  const [year, month, day] = [2014 + (visit % 11), two(1 + (unit % 12)), two(1 + (unit % 28))];
  const clock = `${two(8 + (unit % 9))}:${two((i % 4) * 12)}`;
  const o2 = 3 + 4 * random();
  return [
    text(`U-${unit}`),
    german ? `${day}.${month}.${year} ${clock}` : `${year}-${month}-${day}T${clock}`,
    text(i % 2 === 0 ? (german ? 'Vollast' : 'high') : german ? 'Teillast' : 'low'),
    text(i % 4 < 2 ? (german ? 'vorher' : 'as_found') : german ? 'nachher' : 'as_left'),
    text(`T${unit % 40}`),
    number(o2, 1),
    number((11.9 * (20.95 - o2)) / 20.95, 1),
    i % 9999 === 0 ? '>4000' : String(Math.floor(60 * random())),
    String(Math.floor(20 + 40 * random())),
    number(140 + 60 * random(), 1),
    number(10 + 20 * random(), 1),
    i % 4 === 0 ? '1743' : '',
    String(Math.floor(1600 + 90 * random())),
    String(Math.floor(860 + 40 * random())),
    number(-5 - 20 * random(), 1),
    text(`An-${unit % 37}`),
    i % 50 === 7 ? text('no change') : '',
  ];
}

const two = (n: number): string => String(n).padStart(2, '0');

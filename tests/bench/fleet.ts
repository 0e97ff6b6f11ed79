/** A fleet of any size as canonical CSV, invented line by line from a seed. */
export interface Fleet {
  readonly readings: string;
  readonly register: string;
  readonly units: number;
  readonly rows: number;
}

const VISITS = 6;
const FIRES = ['high', 'low'] as const;
const STATES = ['as_found', 'as_left'] as const;
const ROWS_PER_UNIT = VISITS * FIRES.length * STATES.length;

/** mulberry32: 32 bits of state, the same numbers everywhere. */
function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export function makeFleet(rows: number, seed: number): Fleet {
  const random = randomFrom(seed);
  const normal = (): number => random() + random() + random() + random() - 2;
  const units = Math.ceil(rows / ROWS_PER_UNIT);
  const readings: string[] = [HEAD];
  const register: string[] = [REGISTER_HEAD];
  for (let unit = 0; unit < units; unit++) {
    const id = `U-${String(unit + 1).padStart(5, '0')}`;
    register.push(
      `${id},natural_gas,Site ${unit % 40},Building ${unit % 400},heating,premix,modulating,pneumatic,${unit % 2 ? 'room' : 'outside'},no,yes,${300 + (unit % 10) * 50},${60 + (unit % 10) * 10},8.8,0.3,8.5,0.3,5,14,1`,
    );
    const drift = { high: normal() * 0.15, low: normal() * 0.15 };
    const dropGrowth = unit % 50 === 0 ? 0.08 : 0;
    let left = { high: 0, low: 0 };
    for (let visit = 0; visit < VISITS; visit++) {
      const day = new Date(Date.UTC(2020 + visit, unit % 12, 1 + (unit % 27))).toISOString().slice(0, 10);
      const analyzer = `An-${(unit + visit) % 60}`;
      for (const state of STATES)
        for (const fire of FIRES) {
          const target = fire === 'high' ? 8.8 : 8.5;
          const offset =
            state === 'as_found' ? left[fire] + (visit > 0 ? drift[fire] : 0) + normal() * 0.05 : normal() * 0.05;
          if (state === 'as_left') left = { ...left, [fire]: offset };
          const co2 = target + offset + normal() * 0.04;
          const o2 = 20.95 * (1 - co2 / 11.85);
          const co = 20 + Math.round(Math.abs(normal()) * 30);
          const drop = 0.4 + dropGrowth * visit + normal() * 0.02;
          readings.push(
            `${id},${day},${fire},${state},${state === 'as_left' ? 'yes' : ''},${o2.toFixed(1)},${co2.toFixed(1)},${co},${(fire === 'high' ? 62 : 48) + Math.round(normal() * 3)},${20 + Math.round(normal() * 4)},9.9,${(9.9 - (fire === 'high' ? drop : drop / 4)).toFixed(2)},${analyzer}`,
          );
        }
    }
  }
  return {
    readings: `${readings.join('\n')}\n`,
    register: `${register.join('\n')}\n`,
    units,
    rows: units * ROWS_PER_UNIT,
  };
}

const HEAD =
  'unit,taken_at,fire,state,adjusted,o2_pct,co2_pct,co_ppm,flue_C,air_C,supply_static_inwc,supply_running_inwc,analyzer';
const REGISTER_HEAD =
  'unit,fuel,site,building,service,burner,firing,fuel_air_control,air_source,trim,condensing,heat_input_high_kW,heat_input_low_kW,co2_high_target_pct,co2_high_tolerance_pct,co2_low_target_pct,co2_low_tolerance_pct,supply_min_inwc,supply_max_inwc,supply_drop_limit_inwc';

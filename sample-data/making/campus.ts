import type { FirePlan, FuelPlan, UnitPlan } from './unit-plan.ts';

type Row = Pick<UnitPlan, 'unit' | 'site' | 'building' | 'inputHigh' | 'installed'> &
  Partial<UnitPlan> & { readonly drop: number; readonly static: number; readonly annual: number };

const fire = (
  quantity: 'o2' | 'co2',
  target: number,
  tolerance: number,
  flueC: number,
  service?: readonly [number, number],
): FirePlan => ({ quantity, target, tolerance, flueC, ...(service ? { service } : {}) });

const gas = (annual: number, lowShare: number, fires: FuelPlan['fires']): FuelPlan => ({
  fuel: 'natural_gas',
  fires,
  annual,
  price: 9.4,
  lowShare,
});

const common = (row: Row): UnitPlan => ({
  service: 'heating',
  burner: 'premix',
  firing: 'modulating',
  control: 'pneumatic',
  air: 'outside',
  trim: false,
  condensing: true,
  inputLow: Math.round(row.inputHigh / 5),
  fuels: [],
  supply: { staticInwc: row.static, dropInwc: row.drop },
  visitsPerYear: 1,
  blank: [],
  ...row,
});

/** Condensing premix: set by CO2, 8.8 ± 0.2 at high and 8.5 ± 0.2 at low fire (common practice), wider between visits. */
function premix(row: Row): UnitPlan {
  return common({
    fuels: [
      gas(row.annual, 0.6, {
        high: fire('co2', 8.8, 0.2, 62, [8.2, 9.4]),
        low: fire('co2', 8.5, 0.2, 49, [8.0, 9.0]),
      }),
    ],
    ...row,
  });
}

/** Power burner on cams and rods: O2 3.5 ± 0.5 at high, 5.5 ± 1.0 at low fire. */
function linkage(row: Row): UnitPlan {
  return common({
    burner: 'power',
    control: 'linkage',
    air: 'room',
    condensing: false,
    inputLow: Math.round(row.inputHigh / 4),
    fuels: [
      gas(row.annual, 0.5, {
        high: fire('o2', 3.5, 0.5, 196, [2.5, 4.5]),
        low: fire('o2', 5.5, 1.0, 152, [3.8, 7.4]),
      }),
    ],
    ...row,
  });
}

/** Power burner with a drive of its own for air and for fuel: O2 3.5 ± 0.5 at high, 4.5 ± 0.5 at low fire. */
function parallel(row: Row): UnitPlan {
  return common({
    burner: 'power',
    control: 'parallel',
    air: 'room',
    condensing: false,
    inputLow: Math.round(row.inputHigh / 5),
    fuels: [
      gas(row.annual, 0.4, {
        high: fire('o2', 3.5, 0.5, 188, [2.6, 4.4]),
        low: fire('o2', 4.5, 0.5, 148, [3.0, 6.0]),
      }),
    ],
    ...row,
  });
}

/** Atmospheric: hardly adjustable, O2 about 8. */
function atmospheric(row: Row): UnitPlan {
  return common({
    burner: 'atmospheric',
    firing: 'two_stage',
    control: 'fixed',
    air: 'room',
    condensing: false,
    inputLow: Math.round(row.inputHigh * 0.5),
    fuels: [
      gas(row.annual, 0.5, {
        high: fire('o2', 7.8, 1.5, 204),
        low: fire('o2', 9.2, 1.5, 163),
      }),
    ],
    ...row,
  });
}

const alder = { site: 'North', building: 'Alderquill Hall' } as const;
const brindle = { site: 'North', building: 'Brindlemere Library' } as const;
const cobble = { site: 'North', building: 'Cobbleden Court' } as const;
const drum = { site: 'North', building: 'Drumlow House' } as const;
const ember = { site: 'North', building: 'Embersome Laundry' } as const;
const fernlab = { site: 'South', building: 'Fernquay Laboratories' } as const;
const gully = { site: 'South', building: 'Gullymead Pool' } as const;
const hutch = { site: 'South', building: 'Hutchwell Commons' } as const;
const iron = { site: 'South', building: 'Ironwick Plant' } as const;

const oilFires = {
  high: fire('o2', 4.0, 0.75, 214, [2.6, 5.6]),
  low: fire('o2', 5.5, 0.75, 168, [3.8, 7.2]),
};
const oil: FuelPlan = { fuel: 'no2_oil', annual: 900, price: 21.5, lowShare: 0.4, fires: oilFires };

function fernOne(): UnitPlan {
  const plan = parallel({
    unit: 'FER-1',
    ...fernlab,
    inputHigh: 8000,
    static: 9.6,
    drop: 0.42,
    annual: 14200,
    installed: '2009-09-01',
  });
  return { ...plan, service: 'steam', visitsPerYear: 2, fuels: [...plan.fuels, oil] };
}

function drumThree(): UnitPlan {
  const row = {
    unit: 'DRU-3',
    ...drum,
    inputHigh: 250,
    static: 7.3,
    drop: 0.2,
    annual: 610,
    installed: '2013-05-20',
  } as const;
  const fires = { single: fire('o2', 8.2, 1.5, 190) };
  return atmospheric({ ...row, service: 'hot_water', firing: 'single', inputLow: 250, fuels: [gas(610, 0, fires)] });
}

/** The 26 units of the campus in its 9 buildings. Places, ids and numbers are invented. */
export const CAMPUS: readonly UnitPlan[] = [
  linkage({ unit: 'ALD-1', ...alder, inputHigh: 3200, static: 8.9, drop: 0.44, annual: 5100, installed: '2004-08-16' }),
  linkage({ unit: 'ALD-2', ...alder, inputHigh: 3200, static: 8.9, drop: 0.41, annual: 4700, installed: '2004-08-16' }),
  premix({
    unit: 'ALD-3',
    ...alder,
    service: 'hot_water',
    air: 'room',
    inputHigh: 500,
    static: 8.9,
    drop: 0.22,
    annual: 1350,
    installed: '2015-06-02',
  }),
  premix({
    unit: 'BRI-1',
    ...brindle,
    inputHigh: 1500,
    static: 8.1,
    drop: 0.35,
    annual: 2300,
    installed: '2014-09-10',
  }),
  premix({
    unit: 'BRI-2',
    ...brindle,
    inputHigh: 1500,
    static: 8.1,
    drop: 0.33,
    annual: 2250,
    installed: '2014-09-10',
  }),
  premix({
    unit: 'BRI-3',
    ...brindle,
    inputHigh: 1500,
    static: 8.1,
    drop: 0.37,
    annual: 1900,
    installed: '2014-09-10',
    blank: ['service_limits'],
  }),
  premix({ unit: 'COB-1', ...cobble, inputHigh: 1000, static: 7.8, drop: 0.3, annual: 1700, installed: '2013-10-04' }),
  premix({ unit: 'COB-2', ...cobble, inputHigh: 1000, static: 7.8, drop: 0.31, annual: 1750, installed: '2013-10-04' }),
  premix({ unit: 'COB-3', ...cobble, inputHigh: 1000, static: 7.8, drop: 0.28, annual: 1680, installed: '2013-10-04' }),
  premix({
    unit: 'COB-4',
    ...cobble,
    inputHigh: 1000,
    static: 7.8,
    drop: 0.32,
    annual: 1600,
    installed: '2013-10-04',
    blank: ['economics'],
  }),
  atmospheric({
    unit: 'DRU-1',
    ...drum,
    inputHigh: 800,
    static: 7.3,
    drop: 0.24,
    annual: 1250,
    installed: '1998-10-12',
    blank: ['supply'],
  }),
  atmospheric({
    unit: 'DRU-2',
    ...drum,
    inputHigh: 800,
    static: 7.3,
    drop: 0.25,
    annual: 1180,
    installed: '1998-10-12',
  }),
  drumThree(),
  parallel({
    unit: 'EMB-1',
    ...ember,
    service: 'steam',
    trim: true,
    inputHigh: 6000,
    static: 9.9,
    drop: 0.48,
    annual: 16800,
    installed: '2012-04-18',
    visitsPerYear: 2,
  }),
  parallel({
    unit: 'EMB-2',
    ...ember,
    service: 'steam',
    inputHigh: 6000,
    static: 9.9,
    drop: 0.46,
    annual: 15900,
    installed: '2012-04-18',
    visitsPerYear: 2,
  }),
  fernOne(),
  parallel({
    unit: 'FER-2',
    ...fernlab,
    service: 'steam',
    trim: true,
    inputHigh: 8000,
    static: 9.6,
    drop: 0.45,
    annual: 13100,
    installed: '2009-09-01',
    visitsPerYear: 2,
  }),
  premix({
    unit: 'FER-3',
    ...fernlab,
    service: 'hot_water',
    air: 'room',
    inputHigh: 750,
    static: 9.6,
    drop: 0.2,
    annual: 2050,
    installed: '2015-11-23',
    blank: ['hardware'],
  }),
  premix({
    unit: 'GUL-1',
    ...gully,
    service: 'process',
    inputHigh: 2000,
    static: 8.6,
    drop: 0.4,
    annual: 6400,
    installed: '2014-03-31',
  }),
  premix({
    unit: 'GUL-2',
    ...gully,
    service: 'process',
    inputHigh: 2000,
    static: 8.6,
    drop: 0.36,
    annual: 6150,
    installed: '2014-03-31',
  }),
  linkage({
    unit: 'GUL-3',
    ...gully,
    inputHigh: 1800,
    static: 8.6,
    drop: 0.34,
    annual: 2900,
    installed: '2003-07-09',
    blank: ['planning'],
  }),
  premix({
    unit: 'HUT-1',
    ...hutch,
    inputHigh: 1200,
    static: 8.3,
    drop: 0.33,
    annual: 2100,
    installed: '2015-08-25',
    blank: ['targets'],
  }),
  premix({ unit: 'HUT-2', ...hutch, inputHigh: 1200, static: 8.3, drop: 0.35, annual: 2150, installed: '2008-09-15' }),
  premix({ unit: 'HUT-3', ...hutch, inputHigh: 1200, static: 8.3, drop: 0.32, annual: 2080, installed: '2015-08-25' }),
  linkage({
    unit: 'IRO-1',
    ...iron,
    service: 'steam',
    inputHigh: 10000,
    static: 9.7,
    drop: 0.5,
    annual: 21500,
    installed: '2001-10-30',
    visitsPerYear: 2,
  }),
  linkage({
    unit: 'IRO-2',
    ...iron,
    service: 'steam',
    inputHigh: 10000,
    static: 9.7,
    drop: 0.47,
    annual: 19800,
    installed: '2001-10-30',
    visitsPerYear: 2,
  }),
];

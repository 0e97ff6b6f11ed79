import { CAMPUS } from './campus.ts';
import { csvLine } from './csv-line.ts';
import type { FirePlan, FuelPlan, UnitPlan } from './unit-plan.ts';

const FIRE_COLUMNS = (['co2', 'o2'] as const).flatMap((quantity) =>
  (['high', 'low', 'single'] as const).flatMap((fire) => {
    const name = `${quantity}_${fire}`;
    return ['target', 'tolerance', 'service_lower', 'service_upper'].map((what) => `${name}_${what}_pct`);
  }),
);

const HEAD = [
  ...'unit,fuel,valid_from,site,building,service,burner,firing,fuel_air_control,air_source,trim,condensing,heat_input_high_btuh,heat_input_low_btuh'.split(
    ',',
  ),
  ...FIRE_COLUMNS,
  ...'supply_min_inwc,supply_max_inwc,supply_drop_limit_inwc,annual_fuel_MMBtu,fuel_price,low_fire_share,installed_on,max_interval_months,next_visit_on,standby,access_note,tap_note,adjust_high_note,adjust_low_note'.split(
    ',',
  ),
];

const yesNo = (value: boolean): string => (value ? 'yes' : 'no');

function fireFields(quantity: 'co2' | 'o2', plan: FirePlan | undefined, unit: UnitPlan): string[] {
  if (plan?.quantity !== quantity || unit.blank.includes('targets')) return ['', '', '', ''];
  const service = unit.blank.includes('service_limits') ? undefined : plan.service;
  return [
    plan.target.toFixed(1),
    plan.tolerance.toFixed(2),
    service ? service[0].toFixed(1) : '',
    service ? service[1].toFixed(1) : '',
  ];
}

const targets = (unit: UnitPlan, { fires }: FuelPlan): string[] =>
  (['co2', 'o2'] as const).flatMap((quantity) =>
    (['high', 'low', 'single'] as const).flatMap((fire) => fireFields(quantity, fires[fire], unit)),
  );

function hardware(unit: UnitPlan): string[] {
  if (unit.blank.includes('hardware')) return [unit.service, '', '', '', '', '', '', '', ''];
  return [
    unit.service,
    unit.burner,
    unit.firing,
    unit.control,
    unit.air,
    yesNo(unit.trim),
    yesNo(unit.condensing),
    String(unit.inputHigh * 1000),
    unit.firing === 'single' ? '' : String(unit.inputLow * 1000),
  ];
}

const ADJUSTING = {
  pneumatic: ['throttle screw, clockwise lowers CO2', 'offset screw, clockwise raises CO2'],
  linkage: ['cam screws 7 to 9', 'cam screws 1 to 3'],
  parallel: ['curve point 10, coded access', 'curve point 2, coded access'],
  fixed: ['', ''],
} as const;

function planning(unit: UnitPlan): string[] {
  if (unit.blank.includes('planning')) return ['', '', '', '', '', '', ''];
  const spare = ['BRI-3', 'COB-4', 'IRO-2'].includes(unit.unit);
  const access = unit.building === 'Drumlow House' ? 'key at the porter, low door' : '';
  return ['13', '', yesNo(spare), access, 'test nipple before the gas valve', ...ADJUSTING[unit.control]];
}

function row(unit: UnitPlan, fuel: FuelPlan, validFrom: string): string[] {
  const noSupply = unit.blank.includes('supply') || fuel.fuel !== 'natural_gas';
  const noMoney = unit.blank.includes('economics');
  return [
    unit.unit,
    fuel.fuel,
    validFrom,
    `Quillmere ${unit.site}`,
    unit.building,
    ...hardware(unit),
    ...targets(unit, fuel),
    ...(noSupply ? ['', '', ''] : ['4.5', '14', '1']),
    ...(noMoney ? ['', '', ''] : [String(fuel.annual), String(fuel.price), String(fuel.lowShare)]),
    validFrom || unit.installed,
    ...planning(unit),
  ];
}

/** HUT-2 before it was replaced: the same id, richer targets. */
function older(fuel: FuelPlan): FuelPlan {
  const shifted = (plan: FirePlan | undefined): FirePlan | undefined =>
    plan && {
      ...plan,
      target: plan.target + 0.4,
      ...(plan.service ? { service: [plan.service[0] + 0.4, plan.service[1] + 0.4] } : {}),
    };
  return { ...fuel, fires: { high: shifted(fuel.fires.high), low: shifted(fuel.fires.low) } as FuelPlan['fires'] };
}

/** The register: one row a unit and fuel, and a second one for HUT-2 from the day of its replacement. */
export function registerFile(): string {
  const rows = CAMPUS.flatMap((unit) =>
    unit.fuels.flatMap((fuel) =>
      unit.unit === 'HUT-2' ? [row(unit, older(fuel), ''), row(unit, fuel, '2021-07-14')] : [row(unit, fuel, '')],
    ),
  );
  return [HEAD, ...rows]
    .map((fields) => csvLine(fields, ','))
    .join('\n')
    .concat('\n');
}

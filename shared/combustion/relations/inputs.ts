import type { InputType } from '../../formula/definition.ts';

const number = (unit: string, symbol: string, title: string): InputType => ({ kind: 'number', unit, symbol, title });

/** What the relations read: the readings' columns, the conditions at the burner, and the fuel's properties. */
export const RELATION_INPUTS: ReadonlyMap<string, InputType> = new Map<string, InputType>([
  ['reading.o2_pct', number('%', 'O2,shown', 'O2 as read')],
  ['reading.co2_pct', number('%', 'CO2,shown', 'CO2 as read')],
  ['reading.o2_wet_pct', number('%', 'O2,wet', 'O2 as read in wet gas')],
  ['reading.co_ppm', number('[ppm]', 'CO', 'CO as read')],
  ['reading.co_air_free_ppm', number('[ppm]', 'CO,af,shown', 'CO read air-free')],
  ['reading.nox_ppm', number('[ppm]', 'NOx', 'NOx as read')],
  ['reading.flue_C', number('Cel', 't,shown', 'Flue gas temperature as read')],
  ['reading.supply_static_Pa', number('Pa', 'p,static', 'Gas supply, static')],
  ['reading.supply_running_Pa', number('Pa', 'p,running', 'Gas supply, running')],
  ['reading.co2_from', { kind: 'text', symbol: 'source of CO2', title: 'How CO2 was found' }],
  ['burner.air_C', number('Cel', 't,air,shown', 'Combustion air temperature as read or assumed')],
  ['pressure_Pa', number('Pa', 'p', 'Atmospheric pressure')],
  ['site_pressure_Pa', number('Pa', 'p,site', 'Standard pressure at the site')],
  ['burner.temperature_exponent', number('1', 'n,T', 'Exponent of air density over temperature')],
  ['burner.pressure_exponent', number('1', 'n,p', 'Exponent of air density over pressure')],
  ['burner.season', number('1', 's', 'Season that no correction takes out')],
  ['fuel.air', number('mol/MJ', 'n,air', 'Stoichiometric dry air')],
  ['fuel.oxygen', number('mol/MJ', 'n,O2', 'Oxygen used up')],
  ['fuel.carbon_dioxide', number('mol/MJ', 'n,CO2', 'CO2 formed')],
  ['fuel.nitrogen', number('mol/MJ', 'n,N2', 'Nitrogen out of the fuel')],
  ['fuel.water', number('mol/MJ', 'n,H2O', 'Water formed')],
  ['fuel.dry_flue', number('mol/MJ', 'n,dry0', 'Stoichiometric dry flue gas')],
  ['fuel.co2_max', number('%', 'CO2max', 'Highest CO2 of the fuel')],
  ['fuel.dry_ratio', number('1', 'k', 'Dry flue gas over air, stoichiometric')],
  ['fuel.epa_fd', number('ft3/MMBtu', 'Fd', 'EPA’s tabulated dry factor')],
  ['fuel.epa_fc', number('ft3/MMBtu', 'Fc', 'EPA’s tabulated carbon factor')],
  ['fuel.net_over_gross', number('1', 'h', 'Net over gross heating value')],
]);

import { numeric, type Schema, text } from '../table/schema.ts';

/** How lambda follows the air's density by behavior of the burner: what is used, and what the fleet's own readings say. */
export const exponentsSchema: Schema = [
  text('behavior', 'Burner'),
  numeric('temperature_exponent', '1', 'Exponent over temperature, used', '', 3),
  numeric('temperature_exponent_sd', '1', 'Its standard uncertainty', '', 3),
  numeric('pressure_exponent', '1', 'Exponent over pressure, used', '', 3),
  numeric('season_sd', '1', 'Season not taken out, relative', '', 3),
  text('source', 'Source'),
  numeric('swings', '1', 'Swings between visits', '', 0),
  numeric('units', '1', 'Units', '', 0),
  numeric('fleet_exponent', '1', 'Exponent of the fleet', '', 3),
  numeric('fleet_lower', '1', 'Lower, 95 %', '', 3),
  numeric('fleet_upper', '1', 'Upper, 95 %', '', 3),
  text('fleet_says', 'What the fleet says'),
];

import { date, numeric, type Schema, text } from '../table/schema.ts';

/** One row a unit: the gas supply at its highest fire, the drop (static less running) brought to the rated heat input. */
export const supplySchema: Schema = [
  text('unit', 'Unit'),
  numeric('readings_used', '1', 'Readings used', '', 0),
  numeric('static_now_Pa', 'Pa', 'Static, last', 'Pa', 0),
  numeric('running_now_Pa', 'Pa', 'Running, last', 'Pa', 0),
  numeric('drop_now_Pa', 'Pa', 'Drop now', 'Pa', 0),
  numeric('drop_slope_Pa_per_year', 'Pa/a', 'Growth of the drop', 'Pa/year', 1),
  numeric('slope_lower', 'Pa/a', 'Growth, lower 95 %', 'Pa/year', 1),
  numeric('slope_upper', 'Pa/a', 'Growth, upper 95 %', 'Pa/year', 1),
  numeric('drop_limit_Pa', 'Pa', 'Limit of the drop', 'Pa', 0),
  numeric('probability_over_by_horizon', '1', 'Chance over the limit by the horizon', '', 2),
  date('exceeds_on_50', '50 % chance of being over on'),
  /** within, growing, over or unknown. */
  text('verdict', 'Verdict'),
  numeric('drop_now_sd_Pa', 'Pa', 'Drop now, standard deviation', 'Pa', 0),
  numeric('growth_p_value', '1', 'p value of growth', '', 4),
  numeric('growth_false_discovery_rate', '1', 'False discovery rate of growth', '', 3),
  date('last_read_on', 'Last read'),
  date('horizon_on', 'Horizon'),
  /** register or low_pressure_rule; '' where no limit is known. */
  text('limit_source', 'Limit from'),
  numeric('supply_min_Pa', 'Pa', 'Plate minimum', 'Pa', 0),
  numeric('supply_max_Pa', 'Pa', 'Plate maximum', 'Pa', 0),
  /** restriction, regulator, creep, shared_line, hunting, steady, or '' where the columns do not say. */
  text('pattern', 'Pattern'),
  text('reason', 'Why unknown'),
];

export const supplyPointsSchema: Schema = [
  text('unit', 'Unit'),
  date('day', 'Day'),
  numeric('drop_Pa', 'Pa', 'Drop at rated input', 'Pa', 0),
];

export const supplyPathSchema: Schema = [
  text('unit', 'Unit'),
  date('day', 'Day'),
  numeric('level', 'Pa', 'Drop', 'Pa', 0),
  numeric('lower', 'Pa', 'Lower 95 %', 'Pa', 0),
  numeric('upper', 'Pa', 'Upper 95 %', 'Pa', 0),
];

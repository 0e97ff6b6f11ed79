import { groupedDigits } from '../quantities/grouped-digits.ts';

/** Sentences of drift, supply and instruments: named functions of strings and numbers. */

export const noSuchInput = (cell: string, role: string): string =>
  `${cell}: it reads ${role} and the notebook has no finished cell of that name; name one in the cell's sentence.`;

export const lacksColumns = (cell: string, role: string, columns: string): string =>
  `${cell}: the table of ${role} lacks the columns ${columns}; read it from a cell that has them.`;

export const unequalRows = (cell: string, readings: number, derived: number): string =>
  `${cell}: readings has ${readings} rows and derive ${derived}; name the derive cell that reads the same readings.`;

export const notFinite = (cell: string, name: string, from: number, to: number, found: string): string =>
  `${cell}: ${name} must be a number from ${from} to ${to}, it is ${found}; give such a number.`;

export const notAChoice = (cell: string, name: string, choices: string, found: string): string =>
  `${cell}: ${name} must be one of ${choices}, it is ${found}; choose one of these.`;

const counted = (number: number, one: string): string =>
  `${groupedDigits(String(number))} ${number === 1 ? one : `${one}s`}`;
const has = (number: number): string => (number === 1 ? 'has' : 'have');

// Why something is unknown; each fits after "unknown: ".
export const noReadings = (): string => 'no usable reading';
export const noReadingsSince = (day: string): string => `no usable reading since other hardware was fitted on ${day}`;
export const retiredOn = (day: string): string => `retired on ${day}`;
export const tooOld = (day: string, years: number): string =>
  `the last reading is of ${day}, more than ${years} years before`;
export const tooFewVisits = (visits: number, intervals: number, least: number): string =>
  `${counted(visits, 'visit')} to this lane, and in the whole fleet ${counted(intervals, 'interval')} from one visit to what the next found, of at least ${least} that a rate asks for`;
export const noBand = (): string => 'neither the register nor an as-left reading nor the burner gives a band';
export const emptyBand = (lower: string, upper: string): string =>
  `the band has no width (lower ${lower}, upper ${upper})`;

/** Units in the readings that the register does not have are shown, but are none of the fleet. */
const ofUnits = (units: number, strangers: number): string =>
  `${counted(units, 'unit')}${strangers === 0 ? '' : ` and of ${strangers} not in the register`}`;

export const driftAnswer = (
  lanes: number,
  units: number,
  strangers: number,
  outside: number,
  leaving: number,
  unknown: number,
): string =>
  lanes === 0
    ? 'No lane could be followed: no readings.'
    : `${counted(lanes, 'lane')} of ${ofUnits(units, strangers)} followed: ${outside} more likely outside than inside now, ${leaving} more likely than not to leave by the horizon, ${unknown} unknown.`;

export const bandFromTarget = (lanes: number): string =>
  `${counted(lanes, 'lane')} ${has(lanes)} a target without a tolerance in the register; the usual tolerance of their class was taken.`;
export const bandFromLeft = (lanes: number): string =>
  `${counted(lanes, 'lane')} ${has(lanes)} no target in the register; the median of their last three as-left readings and the usual tolerance of their class were taken.`;
export const bandFromClass = (lanes: number): string =>
  `${counted(lanes, 'lane')} ${has(lanes)} neither a target nor an as-left reading; the usual settings of their class were taken.`;
export const unknownLanes = (lanes: number, example: string): string =>
  `${counted(lanes, 'lane')} ${lanes === 1 ? 'is' : 'are'} unknown, for example because: ${example}.`;
export const spreadRemark = (
  units: number,
  reading: string,
  visit: string,
  wander: string,
  rate: string,
  analyzer: string,
): string =>
  `From ${units} units, in points of O2: a reading repeats within ${reading}, a visit adds ${visit}, analyzers differ by ${analyzer}, a level wanders ${wander} in a year, rates of one class differ by ${rate} a year (standard deviations).`;
export const spreadDefaulted = (units: number): string =>
  `${units} units say little about how readings and rates spread: typical values of the trade weigh in, and intervals are as wide as these.`;
export const intervalsRemark = (): string =>
  'Intervals are empirical-Bayes: they hold for 95 % of a fleet’s lanes on average, not for each lane.';
export const unchangedHardware = (): string =>
  'Projections assume unchanged hardware and gas; old readings do not show today’s condition.';
export const asMeasuredRemark = (): string =>
  'Levels are judged as measured: season and weather are not taken out and will look like drift.';

export const airRemark = (
  lanes: number,
  sampled: number | undefined,
  changed: number,
  onlyMeasured: number,
  onlyReference: number,
  reference: AirSpread,
  measured: AirSpread,
): string =>
  `What reference air does${sampled === undefined ? '' : `, by ${counted(sampled, 'unit')} taken at random`}: ${changed} of ${counted(lanes, 'lane')} change their verdict; ${onlyMeasured} would be called outside or leaving as measured only, ${onlyReference} at reference air only. Rates lie ${reference.rate} points of O2 a year from zero at reference air and ${measured.rate} as measured (median); a visit adds ${reference.visit} and ${measured.visit} (standard deviation).`;
/** Points of O2, as text. */
interface AirSpread {
  readonly rate: string;
  readonly visit: string;
}
export const airSame = (): string =>
  'Reference air changes no reading here: no burner’s air was read warmer, colder or thinner than it, or no burner follows the air’s density.';
export const gasRemark = (months: number, spread: string, largest: string, day: string, units: number): string =>
  `${counted(months, 'month')} of gas zones differ by ${spread} points of O2 (standard deviation) in what all their units read: heating value of the gas, or weather that the air’s density does not tell. It was taken out of the levels; the largest was ${largest} in ${day} (${counted(units, 'unit')}).`;
export const gasSame = (months: number): string =>
  `No common effect of the gas was found: ${counted(months, 'month')} in which at least four units of one gas zone were read do not differ by more than the units do.`;
export const gasTooFew = (): string =>
  'Whether the gas itself changed from month to month cannot be told: too few months in which at least four units of one gas zone were read.';

export const noDrop = (): string => 'no visit with both static and running pressure at the highest fire';
export const noDropLimit = (): string =>
  'the register gives no limit of the drop and the service is not known to be low-pressure';
export const notEnoughDrops = (): string => 'a single reading shows no growth';
export const supplyAnswer = (
  units: number,
  strangers: number,
  over: number,
  growing: number,
  within: number,
  unknown: number,
): string =>
  units + strangers === 0
    ? 'No gas supply could be followed: no readings.'
    : `Gas supply of ${ofUnits(units, strangers)}: ${over} over their limit, ${growing} growing toward it, ${within} within, ${unknown} unknown.`;
export const lowPressureRule = (units: number): string =>
  `${units} units have no limit of the drop in the register; 1 in. w.c. (249 Pa), the rule of thumb for low-pressure service, was taken.`;
export const notNormalized = (units: number): string =>
  `${units} units have drops without a clocked heat input; they were taken as read at the rated input.`;
export const supplyFirst = (): string =>
  'A gas supply fault is cured at the supply: never re-tune air for it. Above the plate’s maximum, shut and correct first.';

export const instrumentsAnswer = (analyzers: number, biased: number, confounded: number): string =>
  analyzers === 0
    ? 'No reading names its analyzer.'
    : `${counted(analyzers, 'analyzer')} compared: ${biased} biased, ${confounded} not to be told apart from the units they read.`;
export const biasOf = (quantity: string, bias: string, sd: string): string =>
  `reads ${quantity} ${bias} points beyond the fleet’s mean (standard deviation ${sd})`;
export const constantSince = (day: string): string => `, taken as constant since its first reading on ${day}`;
export const changedSince = (day: string, before: string): string => ` since ${day}; before that day ${before}`;
export const explainsDrift = (analyzer: string, times: string, byBias: string, share: number): string =>
  `${analyzer}: where it followed another analyzer O2 came out ${times} points from the visit before, ${byBias} of them by the two biases; its bias makes ${share} % of the fleet’s apparent drift (squares of the changes between visits).`;
export const asMostRead = (): string =>
  'it reads as most analyzers do; the fleet’s mean is drawn off by one that does not';
export const withinBias = (): string => 'no bias beyond the tolerance is shown';
export const confoundedBias = (): string =>
  'it has hardly read a unit that another analyzer read before or after: its bias cannot be told from those units';
export const noneCompared = (most: number): string =>
  `no reading of it was used in the fit, or it is not among the ${most} analyzers with the most readings, which are told apart`;
export const sharedBias = (): string =>
  'Biases are relative to the fleet’s mean, weighted by readings: a bias that all analyzers share cannot be known.';
export const anonymousReadings = (readings: number): string =>
  `${readings} readings do not name their analyzer; each visit was given a bias of its own.`;

export const notAText = (cell: string, name: string, found: string): string =>
  `${cell}: ${name} must be text, it is ${found}; give it as text.`;
export const notABand = (cell: string, found: string): string =>
  `${cell}: the usual bands must be rows with burner, control, fuelKind, fire (text) and fromO2, toO2, below, above (points of O2), found ${found}; correct that row.`;

export const lookingBack = (day: string): string => `as it stood on ${day}`;
export const backcheckAnswer = (
  quarters: number,
  raised: number,
  foundOutside: number,
  expectedOutside: string,
  leadDays: number,
  coverage: string,
  forecasts: number,
): string => {
  if (forecasts === 0) return `Over ${quarters} past quarters no forecast could be held against a later visit.`;
  const found =
    raised === 0
      ? 'no lane would have been raised before a visit'
      : `${counted(raised, 'lane')} would have been raised before a visit, ${foundOutside} of them were then found outside where ${expectedOutside} were to be expected, the visit often coming long before the horizon (median ${leadDays} days after the lane was raised)`;
  return `Over ${quarters} past quarters ${found}; ${coverage} of ${forecasts} next readings lay in their 95 % interval.`;
};
export const backcheckCaution = (): string =>
  'Lanes that were adjusted between, or that nobody visited, do not appear; the register’s bands of each day are taken as it dates them.';
export const calibrationAlternative = (bins: number, forecasts: number): string =>
  `${forecasts} forecasts in ${bins} groups by the chance that was said, each with the share then found outside.`;

export const lateDrifts = (lanes: number): string =>
  `${lanes === 1 ? 'One fire has' : `${lanes} fires have`} not always drifted as now: the readings show a change of rate on the way (column "Drifts so since"), and the rate told is the one since then.`;
export const airNotRead = (lanes: number, sd: string): string =>
  `The air temperature of ${counted(lanes, 'lane')} was not read, or not always, and is assumed. A place that is warmer or colder than that moves all readings of a lane alike, so that however many there are its level at reference air is known to no better than about ±${sd} points of O2. Read the combustion air, or say in derive what it usually is.`;
export const grossLeftOut = (readings: number): string =>
  `${counted(readings, 'reading')} ${readings === 1 ? 'lies' : 'lie'} far from the visit before and from the one after; ${readings === 1 ? 'it is' : 'they are'} shown and left out of the fit, since no drift moves so.`;
/** A first or last step that is unlike all others of its fire. */
export const suddenLevels = (readings: number): string =>
  `${counted(readings, 'reading')} ${readings === 1 ? 'lies' : 'lie'} so far from the first visit, or at the last one from the visit before, as no other of the same fire: the level since then is taken as it was read, and the step tells of no drift. Look for what else happened: at the burner, the probe and what was typed.`;

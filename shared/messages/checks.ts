import { groupedDigits } from '../quantities/grouped-digits.ts';

/** What the checks say. Numbers come as text, already rounded. */
const count = (number: number, one: string, many = `${one}s`): string =>
  `${groupedDigits(String(number))} ${number === 1 ? one : many}`;

export const noReadings = (cell: string): string =>
  `checks reads the cell "${cell}" for readings, which has none; name the readings cell.`;
export const badSwitch = (found: string): string =>
  `checks: "suspects" is "${found}"; choose in (suspect readings are used) or out (they are left out).`;
export const badFuels = (): string =>
  'checks: "fuels" should be a list of compositions; write them as the cell derive has them.';

export const badSkip = (): string => 'checks: "skip" should be a list of names of checks; give it as texts.';
export const unknownCheck = (found: string, nearest: string): string =>
  `checks: there is no check "${found}"${nearest && ` (did you mean "${nearest}"?)`}; correct the list "skip".`;
export const answer = (readings: number, impossible: number, suspect: number, notes: number, lines: number): string =>
  lines === 0
    ? `${count(readings, 'reading')} checked: nothing was found.`
    : `${count(readings, 'reading')} checked: ${[
        impossible > 0 ? `${groupedDigits(String(impossible))} with an impossible value, which is left out` : '',
        suspect > 0 ? `${groupedDigits(String(suspect))} suspect` : '',
        notes > 0 ? `${groupedDigits(String(notes))} with a note` : '',
      ]
        .filter((part) => part !== '')
        .join(', ')}; told in ${count(lines, 'line')}.`;
/** One line for many readings that a check says the same about. */
export const together = (
  gist: string,
  readings: number,
  analyzer: string,
  file: string,
  first: string,
  last: string,
  example: string,
): string =>
  `${gist}: ${count(readings, 'reading')}${analyzer === '' ? '' : ` of analyzer ${analyzer}`}${file === '' ? '' : ` in ${file}`}, ${first === last ? `on ${first}` : `${first} to ${last}`}. The first: ${example}`;
/** A fuel as people say it. */
export const fuelWords = (fuel: string): string =>
  fuel === '' ? 'none of the usual fuels' : fuel.replaceAll('_', ' ');
export const suspectsIn = (rows: number): string =>
  `${count(rows, 'suspect reading')} ${rows === 1 ? 'is' : 'are'} used as ${rows === 1 ? 'it is' : 'they are'}; have suspect readings left out to see what changes without ${rows === 1 ? 'it' : 'them'}.`;
export const suspectsOut = (rows: number): string =>
  `${count(rows, 'suspect reading')} left out of the calculations; have suspect readings used to see what changes with ${rows === 1 ? 'it' : 'them'}.`;
export const highCoValueOut = (unit: string, day: string, co: string, finding: string): string =>
  `${unit} on ${day} read ${co} ppm CO, and another value of that reading cannot be (${finding}): that value is left out, the CO counts. A high CO is a danger whatever else is wrong with its row.`;
export const highCoKept = (unit: string, day: string, co: string, finding: string): string =>
  `${unit} on ${day} read ${co} ppm CO, and the reading is suspect (${finding}): it is used all the same, since a high CO is a danger until a later reading shows it gone.`;

export const o2OutOfRange = (o2: string): string =>
  `O2 of ${o2} % is outside what an analyzer can read in flue gas (0 to 21.5 %).`;
export const co2OverMax = (co2: string, max: string, fuel: string): string =>
  `CO2 of ${co2} % is more than ${fuel} can give (${max} %).`;
export const excludeEachOther = (o2: string, co2: string, expected: string): string =>
  `O2 of ${o2} % goes with about ${expected} % CO2, not with ${co2} %: one of the two cannot be.`;
export const temperatureOutOfRange = (name: string, value: string, from: string, to: string): string =>
  `${name} of ${value} °C is outside ${from} to ${to} °C.`;
export const negative = (name: string, value: string): string => `${name} is ${value}; it cannot be below zero.`;
export const probeInAir = (o2: string, flue: string): string =>
  flue === ''
    ? `O2 of ${o2} % is nearly that of air: the probe was out, or the analyzer purging.`
    : `O2 of ${o2} % is nearly that of air while the flue is at ${flue} °C: the probe fell out during the test.`;
export const co2Disagrees = (co2: string, expected: string, o2: string): string =>
  `Measured CO2 of ${co2} %, where O2 of ${o2} % goes with ${expected} %.`;
export const purging = (co2: string, flue: string): string =>
  `CO2 of ${co2} % is that of air${flue === '' ? '' : ` while the flue is at ${flue} °C`}: the probe was out, or the analyzer purging.`;
export const otherFuel = (implied: string, other: string, max: string, fuel: string): string =>
  `O2 and CO2 imply a CO2max of ${implied} %, that of ${other}; ${fuel} has ${max} %.`;
export const otherFuelGist = (other: string, fuel: string): string =>
  `CO2 was calculated for ${other} where the unit burns ${fuel}`;
export const excessAirMismatch = (printed: string, computed: string): string =>
  `Printed excess air is ${printed} %, O2 gives ${computed} %.`;
export const airRatio = (printed: string, computed: string): string =>
  `The excess air column holds ${printed}, the air ratio that belongs to ${computed} % excess air.`;
export const airRatioGist = (): string => 'The excess air column holds air ratios (lambda), not per cent';
export const airFreeAtThree = (airFree: string, computed: string): string =>
  `The air-free CO of ${airFree} ppm is what raw CO gives at 3 % O2; air-free it is ${computed} ppm.`;
export const airFreeIsRawGist = (): string => 'The column of air-free CO holds raw CO';
export const airFreeTwiceGist = (): string => 'The air-free CO was converted twice';
export const airFreeAtThreeGist = (): string => 'The column of air-free CO holds CO at 3 % O2';
export const airFreeMismatchGist = (): string => 'Air-free CO that raw CO and O2 do not give';
export const airFreeIsRaw = (airFree: string, computed: string): string =>
  `The air-free CO of ${airFree} ppm equals the raw one; raw CO and O2 give ${computed} ppm air-free.`;
export const airFreeTwice = (airFree: string, computed: string): string =>
  `The air-free CO of ${airFree} ppm looks converted twice: raw CO and O2 give ${computed} ppm.`;
export const airFreeMismatch = (airFree: string, computed: string): string =>
  `The air-free CO is ${airFree} ppm, raw CO and O2 give ${computed} ppm.`;
export const efficiencyBasis = (printed: string, basis: string, usual: string): string =>
  `The printed efficiency of ${printed} % is ${basis}; this unit's are usually ${usual}.`;
export const efficiencyBasisGist = (basis: string, usual: string): string =>
  `Printed efficiencies are ${basis} where their units' are usually ${usual}`;
export const efficiencyFitsFuel = (fuel: string, basis: string): string =>
  `Printed efficiencies fit ${fuel} (${basis}), not the fuel of the unit: that fuel was chosen on the analyzer, or the register names the wrong one`;
export const efficiencyFitsScale = (basis: string): string =>
  `Printed efficiencies (${basis}) fit only if the temperatures are on the other scale, °F for °C or °C for °F`;
export const efficiencyMismatch = (printed: string, gross: string, net: string): string =>
  `The printed efficiency is ${printed} %; O2 and temperatures give about ${gross} % gross or ${net} % net.`;
export const manifoldOverSupply = (manifold: string, supply: string): string =>
  `Manifold pressure of ${manifold} Pa is above the running supply of ${supply} Pa.`;
export const flueUnderAir = (flue: string, air: string): string =>
  `Flue gas at ${flue} °C, combustion air at ${air} °C.`;
export const flueUnderWater = (flue: string, water: string): string =>
  `Flue gas at ${flue} °C, return water at ${water} °C.`;
export const flueUnderSupply = (flue: string, water: string): string =>
  `Flue gas at ${flue} °C, supply water at ${water} °C.`;
export const rateDisagrees = (fire: string, rate: string): string =>
  `The fire is called ${fire}, the firing rate was ${rate} %.`;
export const ambientCo = (co: string): string => `${co} ppm CO in the room where the analyzer was.`;
export const calibrationOverdue = (days: string): string =>
  `The analyzer was last calibrated ${days} days before the reading.`;
export const scale = (flue: string, usual: string, other: string, airToo: boolean): string =>
  `Flue temperature of ${flue} °C where this unit usually has ${usual} °C; on the other scale that would be ${other} °C${airToo ? ', and the air temperature is off by the same scale' : ''}.`;
const PRESSURES: Readonly<Record<string, string>> = {
  supply_running_Pa: 'Running supply',
  supply_static_Pa: 'Static supply',
  manifold_Pa: 'Manifold pressure',
};
export const pressureUnit = (name: string, value: string, usual: string, factor: string): string =>
  `${PRESSURES[name] ?? name} of ${value} Pa where this unit usually has ${usual} Pa: a factor of about ${factor}, as between two units of pressure.`;
export const pressureOffPlate = (name: string, value: string, lower: string, upper: string, factor: string): string =>
  `${PRESSURES[name] ?? name} of ${value} Pa, far outside the rating plate's ${lower} to ${upper} Pa, but within it by a factor of about ${factor}, as between two units of pressure.`;

// Repairs: clauses of what a correction would do.
export const setAside = (): string => 'set this reading aside';
export const swapFires = (): string => 'swap high and low fire of these two readings';
export const swapStates = (): string => 'swap as found and as left of these two readings';
export const swapUnits = (one: string, other: string, day: string): string =>
  `swap the readings of ${one} and ${other} of ${day}`;
export const changeValue = (name: string, from: string, to: string): string =>
  `change ${PRESSURES[name]?.toLowerCase() ?? name} from ${from} to ${to} Pa`;
export const rescale = (isFahrenheit: boolean): string =>
  isFahrenheit ? 'read flue and air temperature as °F' : 'read flue and air temperature as °C';

export const clockBefore = (day: string, what: string): string => `Taken on ${day}, ${what}.`;
export const beforeInstalled = (day: string): string => `before the unit was installed (${day})`;
export const beforeCalibrated = (day: string): string => `before its analyzer's calibration of ${day}`;
export const factoryDay = (): string => 'a day that clocks fall back to when their battery is empty';
export const firesSwapped = (signs: string): string => `High fire looks like low fire: ${signs}.`;
export const twinsSwapped = (unit: string, other: string): string =>
  `${unit} and ${other} both jump at this visit, and each fits the other's past better than its own.`;
export const asLeftCopied = (values: string): string => `As left equals as found in all of ${values}.`;
export const asLeftMissing = (): string =>
  'The burner was adjusted at this visit, and no reading tells how it was left.';
export const leftBeforeFound = (left: string, found: string): string => `As left at ${left}, as found at ${found}.`;
export const coldStart = (found: string, left: string): string =>
  `Flue at ${found} °C as found and ${left} °C as left with O2 nearly the same: the first was likely taken before the unit was hot.`;
export const sampleLeak = (readings: string, rise: string): string =>
  `All ${readings} readings of this analyzer on this day have O2 about ${rise} points higher than the unit's last, at the same flue temperature and air-free CO; the fuel factor cannot show it, since O2 and CO2 thin out together.`;
export const sensorFloor = (least: string, readings: string): string =>
  `The lowest of ${readings} CO readings of this analyzer on this day is ${least} ppm.`;
export const oneMinute = (other: string): string => `The same analyzer was at ${other} in the same minute.`;
export const rounded = (share: string, readings: string): string =>
  `${share} % of this technician's ${readings} O2 readings end in .0 or .5.`;
export const sameCo = (co: string, readings: string, years: string): string =>
  `All ${readings} CO readings of this unit over ${years} years are ${co} ppm, while its O2 moves.`;

// On the page.
export const suspectsSwitch = (): string => 'Suspect readings are';
export const suspectsUsed = (): string => 'used';
export const suspectsLeftOut = (): string => 'left out';
export const comparing = (): string => 'Calculating the raised units anew ...';
export const raisedChange = (suspects: 'in' | 'out'): string =>
  suspects === 'out'
    ? 'Without the suspect readings the list of raised units changes so:'
    : 'With the suspect readings the list of raised units changes so:';
export const moreChanges = (more: number): string => `and ${count(more, 'further change')}.`;
export const repairsHead = (repairs: number): string => `${count(repairs, 'repair')} proposed, none made`;
export const repairEvidence = (unit: string, finding: string): string => `${unit}: ${finding}`;

/** What is missing from a result while a cell that it can do without has none. */
export const leftOut = (cell: string, lost: string): string =>
  `Cell ${cell} has no result at present, so this was calculated without it: ${lost}; put ${cell} right, and this is calculated again.`;

const LOST_IN_RAISE: Readonly<Record<string, string>> = {
  events: 'units laid up or retired by an event are judged as if in use',
  derive:
    'fuels are those written on the readings, CO is judged from the readings alone, and no reading is looked at for doubt or hot-weather air',
  drift: 'no unit is raised for leaving its tolerance, and none is shown to be within it',
  supply: 'pressures and drops are judged as last read, no growing drop is raised, and no supply is shown to be good',
  instruments: 'no analyzer is named as reading high or low',
};
export const leftOutOfRaise = (parameter: string, cell: string): string =>
  leftOut(cell, LOST_IN_RAISE[parameter] ?? 'part of the list may be missing');

const LOST_IN_SAVINGS: Readonly<Record<string, string>> = {
  fuelUse: 'the fuel of a year is that of the register, where it has one',
  drift: 'how long a saving lasts is not known from the drift',
};
export const leftOutOfSavings = (parameter: string, cell: string): string =>
  leftOut(cell, LOST_IN_SAVINGS[parameter] ?? 'part of the savings may be missing');

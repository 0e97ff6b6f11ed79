/** How each command is typed: its line, what it does, and its options. Every option of a command stands here. */

interface Option {
  readonly flag: string;
  /** As typed after the flag. */
  readonly value: string;
  readonly needed?: true;
  readonly words: string;
}

interface Usage {
  readonly does: string;
  /** What stands before the options. */
  readonly files: string;
  readonly options: readonly Option[];
}

const AS_OF = 'day to look from, YYYY-MM-DD';
const FAIL_ON: Option = {
  flag: 'fail-on',
  value: 'TIER',
  words: 'end with status 4 where a unit is raised there or graver: safety, open, supply, tolerance, cost, data',
};
const PROFILE: Option = { flag: 'profile', value: 'FILE...', words: 'how exports of known shapes are read, as saved' };
const DATE_ORDER: Option = {
  flag: 'date-order',
  value: 'dmy|mdy|ymd',
  words: 'what stands first in dates such as 3/4',
};
const SINGLE_READING: Option = {
  flag: 'single-reading',
  value: 'as_found|as_left',
  words: 'state of the only reading of a visit',
};
const REVISED: Option = {
  flag: 'revised',
  value: 'keep_last|keep_both',
  words: 'which counts where two files tell one reading differently',
};
const ACCEPT: Option = {
  flag: 'accept',
  value: 'KIND...',
  words: 'what evidence proposes and you accept: fires, states, fuels, units, events; of one unit fires:B-07',
};
const SUSPECTS: Option = {
  flag: 'suspects',
  value: 'in|out',
  words: 'whether readings that a check finds suspect are used; in where left out',
};
const FUEL: Option = { flag: 'fuel', value: 'NAME', words: 'fuel where neither reading nor register names one' };

const USAGES: Readonly<Record<string, Usage>> = {
  start: {
    does: 'Prints the raised units of the sample campus and serves the notebook to this machine (PORT, default 4173).',
    files: '',
    options: [],
  },
  review: {
    does: 'Calculates the campus review over your files and writes every result.',
    files: '',
    options: [
      { flag: 'readings', value: 'FILE...', needed: true, words: 'exports of readings, or folders of them' },
      { flag: 'register', value: 'FILE', words: 'the register of units; without one, defaults stand in and are told' },
      { flag: 'out', value: 'DIR', needed: true, words: 'folder for the results' },
      { flag: 'events', value: 'FILE', words: 'what happened to the units between the readings' },
      { flag: 'fuel-use', value: 'FILE', words: 'what fuel they used and what it cost' },
      { flag: 'as-of', value: 'DAY', words: `${AS_OF}; today where left out` },
      { flag: 'horizon', value: 'DAYS', words: 'how far ahead, 1 to 3653; 365 where left out' },
      FUEL,
      PROFILE,
      DATE_ORDER,
      SINGLE_READING,
      REVISED,
      ACCEPT,
      SUSPECTS,
      FAIL_ON,
    ],
  },
  calculate: {
    does: 'Calculates a saved notebook over the data files beside it and writes every result.',
    files: 'NOTEBOOK.json',
    options: [
      { flag: 'out', value: 'DIR', needed: true, words: 'folder for the results' },
      { flag: 'as-of', value: 'DAY', words: `${AS_OF}; the notebook's own where left out` },
      FAIL_ON,
    ],
  },
  check: {
    does: 'Says what would be read from the files, set aside and asked; writes nothing.',
    files: 'FILE...',
    options: [PROFILE, DATE_ORDER, SINGLE_READING, REVISED, ACCEPT],
  },
  working: {
    does: 'Prints how one derived number came about, down to the line of the file; over exports, or of any cell of a notebook.',
    files: '[NOTEBOOK.json]',
    options: [
      { flag: 'unit', value: 'ID', needed: true, words: 'whose number' },
      { flag: 'column', value: 'NAME', needed: true, words: 'which number, such as efficiency_gross_pct' },
      {
        flag: 'readings',
        value: 'FILE...',
        words: 'exports of readings, or folders of them, where there is no notebook',
      },
      { flag: 'cell', value: 'NAME', words: 'of which cell, such as savings, raise or drift; derive where left out' },
      { flag: 'register', value: 'FILE', words: 'the register of units' },
      { flag: 'on', value: 'DAY', words: 'of which day, YYYY-MM-DD; the last where left out' },
      { flag: 'fire', value: 'FIRE', words: 'high, low, mid or single' },
      { flag: 'state', value: 'STATE', words: 'as_found, as_left, trial or unknown' },
      FUEL,
      PROFILE,
      DATE_ORDER,
      SINGLE_READING,
      REVISED,
    ],
  },
  origin: {
    does: 'Prints where each value of an accepted reading stands: file, line, column and the text as written.',
    files: '',
    options: [
      { flag: 'readings', value: 'FILE...', needed: true, words: 'exports of readings, or folders of them' },
      { flag: 'unit', value: 'ID', needed: true, words: 'whose reading' },
      { flag: 'register', value: 'FILE', words: 'the register of units' },
      { flag: 'on', value: 'DAY', words: 'of which day, YYYY-MM-DD; the last where left out' },
      { flag: 'fire', value: 'FIRE', words: 'high, low, mid, single or unnamed' },
      { flag: 'state', value: 'STATE', words: 'as_found, as_left, trial or unknown' },
      PROFILE,
      DATE_ORDER,
      SINGLE_READING,
      REVISED,
      ACCEPT,
    ],
  },
  merge: {
    does: 'Makes several notebooks of one fleet one.',
    files: 'NOTEBOOK.json NOTEBOOK.json...',
    options: [
      { flag: 'out', value: 'NOTEBOOK.json', needed: true, words: 'the notebook to write' },
      { flag: 'keep', value: 'first|second', words: 'which counts where they contradict each other' },
    ],
  },
  compare: {
    does: 'Says which units are raised otherwise in two notebooks, or on two days of one.',
    files: 'NOTEBOOK.json [OTHER.json]',
    options: [
      { flag: 'from', value: 'DAY', words: 'day that the first is looked at from' },
      { flag: 'to', value: 'DAY', words: 'day that the second is looked at from' },
    ],
  },
};

const usageOf = (command: string): Usage => USAGES[command] ?? { does: '', files: '', options: [] };
const typed = ({ flag, value }: Option): string => `--${flag} ${value}`;
const begin = (command: string, files: string): string =>
  command === 'start' ? 'npm start' : `npm run --silent ${command} --${files === '' ? '' : ` ${files}`}`;

/** The whole command in one line, what may be left out in brackets. */
export function usageLine(command: string): string {
  const { files, options } = usageOf(command);
  return [begin(command, files), ...options.map((one) => (one.needed ? typed(one) : `[${typed(one)}]`))].join(' ');
}

/** The commands, a line each. */
export function usageOverview(): string[] {
  const names = Object.keys(USAGES);
  const wide = Math.max(...names.map((name) => name.length));
  return names.flatMap((name) => {
    const [first = '', ...more] = folded(USAGES[name].does, 76 - wide, '');
    return [`  ${name.padEnd(wide)}  ${first}`, ...more.map((line) => `${' '.repeat(wide + 4)}${line}`)];
  });
}

/** The command explained, in lines of at most 80 characters. */
export function usageHelp(command: string): string[] {
  const { does, files, options } = usageOf(command);
  const needed = options.filter((one) => one.needed).map(typed);
  const rest = options.length > needed.length ? ['[options]'] : [];
  const wide = Math.max(0, ...options.map((one) => typed(one).length));
  return [
    ...folded(does, 80, ''),
    '',
    ...folded([begin(command, files), ...needed, ...rest].join(' '), 80, '    ').map((line) => `  ${line}`),
    ...(options.length > 0 ? [''] : []),
    ...options.flatMap((one) => {
      const [first = '', ...more] = folded(one.words, 76 - wide, '');
      return [`  ${typed(one).padEnd(wide)}  ${first}`, ...more.map((line) => `${' '.repeat(wide + 4)}${line}`)];
    }),
  ];
}

function folded(text: string, width: number, indent: string): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (longer.length > width - 2 && line !== '') {
      lines.push(line);
      line = `${indent}${word}`;
    } else line = longer;
  }
  return [...lines, line];
}

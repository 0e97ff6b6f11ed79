import { catalogue } from '../../cells/catalogue.ts';

process.stdout.write(`${[...catalogue.keys()].join('\n')}\n`);

import { expect, test } from 'vitest';
import { catalogue } from '../../cells/catalogue.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import { Session } from '../../src/notebook/session.ts';
import { sampleFiles, sampleNotebook } from './sample-notebook.ts';

test('what a unit must hold between visits is judged anew, and the fleet is not fitted again', async () => {
  const session = new Session(catalogue);
  session.open(sampleNotebook(), sampleFiles());
  await session.calculate();
  // The register gives BRI-3 a target and no in-service limits; narrow ones far off leave nothing of its level inside.
  const filled = [
    { unit: 'BRI-3', field: 'co2_high_service_lower_pct', value: '9.9' },
    { unit: 'BRI-3', field: 'co2_high_service_upper_pct', value: '10.1' },
  ];
  expect(session.setParameter('register', 'filled', filled).status).toBe('value');
  await session.calculate();
  expect(session.why('drift')).toMatch(/^Judged again without fitting again\./);
  const drift = session.result('drift')?.tables['drift'];
  if (!drift) throw new Error('no drift');
  const [unit, fire] = [textsOf(drift, 'unit'), textsOf(drift, 'fire')];
  const row = unit.codes.findIndex((_, i) => textAt(unit, i) === 'BRI-3' && textAt(fire, i) === 'high');
  expect(numbersOf(drift, 'lower_limit')[row]).toBe(9.9);
  expect(numbersOf(drift, 'probability_out_by_horizon')[row]).toBeGreaterThan(0.99);
});

import { expect, test } from 'vitest';
import { computeFit } from '../../../cells/drift/compute.ts';
import { judgeInShards } from '../../../cells/drift/judge-in-shards.ts';
import { DRIFT_DEFAULTS } from '../../../cells/drift/parameters.ts';
import { exampleContext, exampleInputs, exampleOf } from '../read-example.ts';

test('another horizon asks for chances anew, and for no date of leaving', async () => {
  const example = exampleOf('drift');
  const [inputs, context] = [exampleInputs(example), await exampleContext(example)];
  const fit = await computeFit(DRIFT_DEFAULTS, inputs, context);
  if (fit.status !== 'value') throw new Error(JSON.stringify(fit));
  const { limits, units } = inputs.get('register')?.tables ?? {};
  const tables = { limits, units, events: undefined };
  const judge = async (horizonDays: number, of: object, bands = DRIFT_DEFAULTS.bands) => {
    const rows = await judgeInShards(context, fit.value, tables, { ...DRIFT_DEFAULTS, horizonDays, bands }, of);
    return rows.map(({ fromO2, ...row }) => row);
  };
  const [same, other] = [{}, {}];
  const before = await judge(365, same);
  const after = await judge(800, same);
  const dated = before.filter(({ judged }) => judged.leavesOn.some(Number.isFinite));
  expect(dated.length).toBeGreaterThan(0);
  expect(after).toEqual(await judge(800, other));
  after.forEach(({ judged, lane }, row) => {
    if (lane >= 0) expect(judged.leavesOn).toBe(before[row].judged.leavesOn);
  });
  expect(after.map(({ judged }) => judged.outBy)).not.toEqual(before.map(({ judged }) => judged.outBy));
  // Back again, and against another usual band: what is kept is still that of the lane as it is now.
  expect(await judge(365, same)).toEqual(before);
  const wider = DRIFT_DEFAULTS.bands.map((band) => ({ ...band, below: 2, above: 2 }));
  expect(await judge(365, same, wider)).toEqual(await judge(365, {}, wider));
});

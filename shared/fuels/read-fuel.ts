import * as message from '../messages/fuels.ts';
import { nearestName } from '../names/nearest-name.ts';
import { fail, type Outcome, succeed } from '../outcome.ts';
import type { Composition, Fuel } from './fuel.ts';
import { GAS_COMPONENTS } from './gas-table.ts';

/** How far a composition may be from 100 % before it is refused; within, it is scaled to 100. */
const SLACK_PCT = 2;
const ELEMENTS = ['C', 'H', 'O', 'N', 'S', 'water', 'ash'];

/**
 * A fuel of the user's own, as a notebook holds it: a gas by mole percent,
 * `{"name": "town_supply", "mole_pct": {"methane": 93.1, "ethane": 4.2, ...}}`, or a liquid by mass percent of its elements,
 * `{"name": "our_oil", "mass_pct": {"C": 86.6, "H": 13.1, ...}, "gross_MJ_per_kg": 45.4}`.
 */
export function readFuel(raw: unknown): Outcome<Fuel> {
  if (typeof raw !== 'object' || raw === null) return fail(message.notAFuel(JSON.stringify(raw) ?? 'nothing'));
  const given = raw as Readonly<Record<string, unknown>>;
  const { name, title } = given;
  if (typeof name !== 'string' || !/^[a-z][a-z0-9_]{0,59}$/.test(name)) return fail(message.badFuelName(String(name)));
  const composition = 'mole_pct' in given ? readGas(name, given.mole_pct) : readLiquid(name, given);
  if (composition.status !== 'value') return composition;
  return succeed({
    name,
    title: typeof title === 'string' && title !== '' ? title : name.replaceAll('_', ' '),
    composition: composition.value,
    source: 'ownAnalysis',
    co2maxSdPct: 0.05,
  });
}

function readGas(fuel: string, raw: unknown): Outcome<Composition> {
  const parts = readParts(fuel, raw, [...GAS_COMPONENTS.keys()]);
  if (parts.status !== 'value') return parts;
  const burns = Object.entries(parts.value).some(
    ([name, share]) => share > 0 && (GAS_COMPONENTS.get(name)?.gross.at25C ?? 0) > 50,
  );
  return burns ? succeed({ kind: 'gas', moles: parts.value }) : fail(message.burnsNot(fuel));
}

function readLiquid(fuel: string, given: Readonly<Record<string, unknown>>): Outcome<Composition> {
  const parts = readParts(fuel, given.mass_pct, ELEMENTS);
  if (parts.status !== 'value') return parts;
  const gross = given.gross_MJ_per_kg;
  if (!(typeof gross === 'number' && gross > 5 && gross < 150))
    return fail(message.badHeatingValue(fuel, JSON.stringify(gross) ?? 'nothing'));
  const mass = parts.value;
  if (!((mass.C ?? 0) + (mass.H ?? 0) > 0)) return fail(message.burnsNot(fuel));
  return succeed({ kind: 'ultimate', mass, grossJperKg: gross * 1e6 });
}

/** Fractions that sum to 1, from percentages that sum to 100 or nearly. */
function readParts(fuel: string, raw: unknown, known: readonly string[]): Outcome<Readonly<Record<string, number>>> {
  if (typeof raw !== 'object' || raw === null) return fail(message.noComposition(fuel));
  const entries = Object.entries(raw as Readonly<Record<string, unknown>>);
  for (const [name, share] of entries) {
    if (!known.includes(name))
      return fail(message.unknownComponent(fuel, name, nearestName(name, known), known.join(', ')));
    if (!(typeof share === 'number' && share >= 0 && share <= 100))
      return fail(message.badShare(fuel, name, JSON.stringify(share) ?? 'nothing'));
  }
  const sum = entries.reduce((total, [, share]) => total + (share as number), 0);
  if (Math.abs(sum - 100) > SLACK_PCT) return fail(message.sumsNot(fuel, Math.round(sum * 100) / 100));
  return succeed(Object.fromEntries(entries.map(([name, share]) => [name, (share as number) / sum])));
}

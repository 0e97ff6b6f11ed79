import type { Fuel } from './fuel.ts';

/** Every fuel that can be named without saying what it is made of; each row's source is in shared/sources/fuels.ts. */
export const FUELS: readonly Fuel[] = [
  {
    name: 'natural_gas',
    title: 'natural gas, typical pipeline',
    composition: {
      kind: 'gas',
      moles: {
        methane: 0.949,
        ethane: 0.025,
        propane: 0.005,
        n_butane: 0.001,
        i_butane: 0.001,
        n_pentane: 0.0005,
        nitrogen: 0.0115,
        carbon_dioxide: 0.007,
      },
    },
    source: 'typicalNaturalGas',
    co2maxSdPct: 0.1,
  },
  {
    name: 'natural_gas_lean',
    title: 'natural gas, lean, with inert gas',
    composition: {
      kind: 'gas',
      moles: { methane: 0.87, ethane: 0.012, propane: 0.003, nitrogen: 0.105, carbon_dioxide: 0.01 },
    },
    source: 'typicalNaturalGas',
    co2maxSdPct: 0.1,
  },
  {
    name: 'natural_gas_rich',
    title: 'natural gas, rich, of the kind shipped liquid',
    composition: {
      kind: 'gas',
      moles: { methane: 0.89, ethane: 0.075, propane: 0.025, n_butane: 0.004, i_butane: 0.003, nitrogen: 0.003 },
    },
    source: 'typicalNaturalGas',
    co2maxSdPct: 0.1,
  },
  {
    name: 'methane',
    title: 'methane',
    composition: { kind: 'gas', moles: { methane: 1 } },
    source: 'iso6976',
    co2maxSdPct: 0,
  },
  {
    name: 'ethane',
    title: 'ethane',
    composition: { kind: 'gas', moles: { ethane: 1 } },
    source: 'iso6976',
    co2maxSdPct: 0,
  },
  {
    name: 'propane',
    title: 'propane',
    composition: { kind: 'gas', moles: { propane: 1 } },
    source: 'iso6976',
    co2maxSdPct: 0.05,
  },
  {
    name: 'butane',
    title: 'butane',
    composition: { kind: 'gas', moles: { n_butane: 0.7, i_butane: 0.3 } },
    source: 'iso6976',
    co2maxSdPct: 0.05,
  },
  {
    name: 'lpg',
    title: 'liquefied petroleum gas, mostly propane',
    composition: { kind: 'gas', moles: { propane: 0.9, ethane: 0.04, n_butane: 0.04, i_butane: 0.02 } },
    source: 'typicalLpg',
    co2maxSdPct: 0.1,
  },
  {
    name: 'hydrogen',
    title: 'hydrogen',
    composition: { kind: 'gas', moles: { hydrogen: 1 } },
    source: 'iso6976',
    co2maxSdPct: 0,
  },
  {
    name: 'no2_oil',
    title: 'No. 2 fuel oil',
    composition: {
      kind: 'ultimate',
      mass: { C: 0.865, H: 0.133, S: 0.001, N: 0.0001, ash: 0.0009 },
      grossJperKg: 45.6e6,
    },
    source: 'distillateOil',
    co2maxSdPct: 0.15,
  },
  {
    name: 'no6_oil',
    title: 'No. 6 fuel oil',
    composition: {
      kind: 'ultimate',
      mass: { C: 0.8726, H: 0.1049, S: 0.0084, N: 0.0028, O: 0.0064, ash: 0.0049 },
      grossJperKg: 42.5e6,
    },
    source: 'residualOil',
    co2maxSdPct: 0.3,
  },
];

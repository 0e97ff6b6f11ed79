/**
 * The sample's own small stoichiometry, kept apart from the product's science on purpose: a sample made with the
 * science that reads it could not show a fault of it.
 */
export interface FuelPhysics {
  /** Dry CO2 at no excess air, %. */
  readonly co2Max: number;
  lambdaFromO2(o2: number): number;
  o2FromLambda(lambda: number): number;
  co2FromO2(o2: number): number;
  o2FromCo2(co2: number): number;
  /** Combustion efficiency on the higher heating value, %; water condenses where the flue is below its dew point. */
  efficiencyGross(o2: number, flueC: number, airC: number): number;
  /** Combustion efficiency on the lower heating value, %, as instruments set to it print. */
  efficiencyNet(o2: number, flueC: number, airC: number): number;
}

const O2_IN_AIR = 20.95;

/** Per unit of fuel (gas: m3 at 0 °C; oil: kg): air, dry flue and water in m3 at 0 °C, heating values in kJ. Round handbook figures. */
interface FuelFacts {
  readonly co2Max: number;
  readonly air: number;
  readonly dryFlue: number;
  readonly water: number;
  readonly higher: number;
  readonly lower: number;
}

const FACTS: Readonly<Record<'natural_gas' | 'no2_oil', FuelFacts>> = {
  natural_gas: { co2Max: 11.85, air: 9.75, dryFlue: 8.756, water: 1.96, higher: 40100, lower: 36190 },
  no2_oil: { co2Max: 15.4, air: 11.2, dryFlue: 10.46, water: 1.44, higher: 45500, lower: 42680 },
};

/** Saturation pressure of water, kPa, by Magnus's formula. */
const saturationKPa = (celsius: number): number => 0.61094 * Math.exp((17.625 * celsius) / (celsius + 243.04));

/** kJ carried off by the flue, above the air's temperature, and what is left of the water's latent heat at 25 °C. */
function losses(fuel: FuelFacts, lambda: number, flueC: number, airC: number): { sensible: number; latent: number } {
  const dry = fuel.dryFlue + (lambda - 1) * fuel.air;
  const saturation = saturationKPa(Math.min(flueC, 95));
  const vapour = flueC > 95 ? fuel.water : Math.min(fuel.water, (dry * saturation) / (101.3 - saturation));
  return { sensible: (dry * 1.37 + vapour * 1.56) * (flueC - airC), latent: vapour * 1963 };
}

export function fuelPhysics(name: 'natural_gas' | 'no2_oil'): FuelPhysics {
  const fuel = FACTS[name];
  const k = fuel.dryFlue / fuel.air;
  const lambdaFromO2 = (o2: number): number => 1 + (k * o2) / (O2_IN_AIR - o2);
  return {
    co2Max: fuel.co2Max,
    lambdaFromO2,
    o2FromLambda: (lambda) => (O2_IN_AIR * (lambda - 1)) / (lambda - 1 + k),
    co2FromO2: (o2) => (fuel.co2Max * (O2_IN_AIR - o2)) / O2_IN_AIR,
    o2FromCo2: (co2) => O2_IN_AIR * (1 - co2 / fuel.co2Max),
    efficiencyGross: (o2, flueC, airC) => {
      const { sensible, latent } = losses(fuel, lambdaFromO2(o2), flueC, airC);
      return 100 * (1 - (sensible + latent) / fuel.higher);
    },
    efficiencyNet: (o2, flueC, airC) => 100 * (1 - losses(fuel, lambdaFromO2(o2), flueC, airC).sensible / fuel.lower),
  };
}

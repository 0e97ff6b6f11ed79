/**
 * Three figures for the oxygen in dry air are in use. Each relation names the one it is pinned to; they are never mixed.
 */

/** Volume fraction for excess air and thermochemistry, %. Air itself measures 20.946. */
export const AIR_OXYGEN_PCT = 20.95;

/** Volume fraction written into air-free carbon monoxide and regulatory corrections (EPA Method 19), %. */
export const REGULATORY_OXYGEN_PCT = 20.9;

/** The units in which a torque is shown. */
export type TorqueUnit = 'N·m' | 'lbf·ft' | 'lbf·in' | 'kgf·m' | 'kgf·cm'

const poundForce = 0.45359237 * 9.80665 // N

/** Newton metres of a unit: exact by definition; NIST SP 811, appendix B. */
export const torqueScale: Readonly<Record<TorqueUnit, number>> = {
  N·m: 1,
  lbf·ft: poundForce * 0.3048,
  lbf·in: poundForce * 0.0254,
  kgf·m: 9.80665,
  kgf·cm: 0.0980665,
}

/**
 * Why a line about shims was not understood.
 *
 * - `valve`: no position, clearance and shim in this order.
 * - `comma`: a comma that may be a decimal comma or part two numbers.
 * - `inches`: too thin for millimetres; inches are said with their unit.
 * - `turned-round`: the shim stands where the clearance belongs.
 * - `too-large`: no clearance, or no shim, is that thick.
 * - `code`: digits as they are etched on a shim, where nothing else says that they are hundredths of a millimetre.
 * - `twice`: a valve, or a range for the same valves, that is there twice.
 * - `limit-missing`: one limit of two, or none. `limits`: the least is more than the most.
 * - `step-missing`, `step`: sizes from one to another without a step, or with one that does not lead from end to end.
 * - `size`: no size of a shim. `too-many`: more valves or sizes than can be.
 */
export type ShimFault =
  | 'valve'
  | 'comma'
  | 'inches'
  | 'turned-round'
  | 'too-large'
  | 'code'
  | 'twice'
  | 'limit-missing'
  | 'limits'
  | 'step-missing'
  | 'step'
  | 'size'
  | 'too-many'

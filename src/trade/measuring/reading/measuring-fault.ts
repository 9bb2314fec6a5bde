/**
 * Why something about a measurement was not understood.
 *
 * - `empty`: nothing there.
 * - `number`: no number, or more of them than there is room for.
 * - `comma`: a comma that may be a decimal comma or part two numbers.
 * - `unit`: millimetres or inches, where not all numbers say it and some are inches.
 * - `label`: words with no reading behind them, or readings with none where others have some.
 * - `twice`: two readings for the same place. `too-many`: more than 200 readings.
 * - `count`: not as many readings as there are positions, or as fill the grid.
 * - `bare-limit`: one number that may be the most or the least.
 * - `limits`: no form of a limit. `turned-round`: the least is more than the most.
 * - `dual-units`: two figures said to be the same that are not.
 * - `what`: nothing that is measured. `grid`: no rows and columns of two and more, or more than 200 points in all.
 * - `resolution`: an instrument without what it reads to, or one that reads to nothing.
 */
export type MeasuringFault =
  | 'empty'
  | 'number'
  | 'comma'
  | 'unit'
  | 'label'
  | 'twice'
  | 'too-many'
  | 'count'
  | 'bare-limit'
  | 'limits'
  | 'turned-round'
  | 'dual-units'
  | 'resolution'
  | 'what'
  | 'grid'

import { expect, test } from 'vitest'
import { worked } from './worked.ts'

const under = 'Worked out, not a specification: the service manual decides.'

test.each([
  ['= 22 lbf·ft', ['22 lbf·ft = 29.83 N·m', '264 lbf·in · 3.042 kgf·m · 304.2 kgf·cm']],
  ['=22 lbf·ft in kgf·m', ['22 lbf·ft = 3.042 kgf·m']],
  // 1.2345 in was measured to a tenth of a thou: no figure of it is lost.
  ['= 1.2345 in', ['1.2345 in = 31.3563 mm', '1234.5 thou · 31356.3 µm']],
  ['= 1/2 in', ['1/2 in = 12.7 mm', '500 thou · 12700 µm']],
  ['= 88 °C', ['88 °C = 190.4 °F']],
  ['= 40 ± 4 N·m in lbf·ft', ['40 ± 4 N·m = 29.5 ± 2.95 lbf·ft']],
  ['= 37-43 Nm in lbf·ft', ['37 to 43 N·m = 27.29 to 31.72 lbf·ft']],
  // A difference of 4 °C is one of 7.2 °F.
  ['= 88 ± 4 °C', ['88 ± 4 °C = 190.4 ± 7.2 °F']],
  ['= 80..90 °C', ['80 to 90 °C = 176 to 194 °F']],
  ['= 0.10 mm (0.004 in)', ['0.10 mm and 0.004 in agree: 0.10 mm = 0.003937 in, within the rounding.']],
  [
    '= 1.0 mm = 0.004 in',
    [
      '1.0 mm and 0.004 in do not agree: 1.0 mm = 0.03937 in.',
      'A decimal point in the wrong place? 0.04 in would agree.',
    ],
  ],
  [
    '= 120 Nm (90 lbf·ft)',
    [
      '120 N·m and 90 lbf·ft do not agree: 120 N·m = 88.51 lbf·ft.',
      'They are 1.7 % apart: rounded more than written, or one is wrong.',
    ],
  ],
  [
    '= 36 Nm (367 kgf·cm, 27 lbf·ft)',
    [
      '36 N·m and 367 kgf·cm agree: 36 N·m = 367.1 kgf·cm, within the rounding.',
      '36 N·m and 27 lbf·ft agree: 36 N·m = 26.55 lbf·ft, within the rounding.',
    ],
  ],
])('%s', (line, rows) => expect(worked(line)).toEqual([...rows, under]))

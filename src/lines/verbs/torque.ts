import { readTorque } from '../../trade/quantity.ts'
import type { Ask } from '../reading.ts'
import type { Verb } from '../verb.ts'

export const torqueVerbs: readonly Verb[] = [
  {
    words: ['='],
    topic: 'arithmetic',
    forms: ['= AMOUNT'],
    says: 'Shows an amount in the other units of its kind.',
    examples: ['= 22 lbf·ft'],
    read(line): Ask {
      const typed = line.takeRest('AMOUNT')
      const torque = readTorque(typed)
      if (!torque.understood) return line.notUnderstood(torque.part || typed, `= ${torque.nearest}`)
      return { ask: 'sum', sum: { sum: 'convert', torque: torque.value } }
    },
  },
]

import { type MisplacedFault, readMisplaced } from '../../trade/timing/read-misplaced.ts'
import { readTeeth } from '../../trade/timing/read-teeth.ts'
import type { Line } from '../line.ts'
import type { Ask } from '../reading.ts'
import { misread } from '../stopped.ts'
import type { Verb } from '../verb.ts'

export const timingVerbs: readonly Verb[] = [
  {
    words: ['teeth'],
    topic: 'arithmetic',
    forms: [
      'teeth CRANK/CAM [off 1 late | off 15 deg crank late | off 16 pins for 15 tight] [runs clockwise] [chain 126]',
      'teeth 24/36 30/40: through an intermediate shaft',
    ],
    says: 'Shows what one tooth of a timing drive is worth, and which way a mark that is off goes back.',
    examples: [
      'teeth 24/48',
      'teeth 24/48 off 1 late',
      'teeth 24/48 off 15 deg crank late',
      'teeth 24/48 off 7.5 deg cam clockwise, runs clockwise',
      'teeth 24/48 off 16 pins for 15 tight',
      'teeth 24/48 chain 126',
      'teeth 24/36 30/40',
    ],
    read(line): Ask {
      const [pins] =
        line.take(/,? (?:chain|belt)(?: of)? (\d{1,4})(?: ?(?:pins?|links?|teeth|tooth))?(?= |,|$)/i) ?? []
      const off = takeOff(line)
      const typed = line.takeRest('CRANK/CAM')
      const stages = readTeeth(typed)
      if (!stages.understood) return line.notUnderstood(typed, nearest(typed) ?? `teeth ${stages.nearest}`)
      if (pins !== undefined && Number(pins) < FEWEST_PINS)
        line.notUnderstood(`chain ${pins}`, `${line.verb} ${typed} chain 126`)
      return {
        ask: 'sum',
        sum: {
          sum: 'timing',
          question: { stages: stages.value, off, pins: pins === undefined ? null : Number(pins) },
        },
      }
    },
  },
]

const FEWEST_PINS = 20

/** What a line has to say besides, by the fault that it was not said. */
const missing: Partial<Record<MisplacedFault, string>> = {
  empty: 'HOW MUCH',
  'crank-or-cam': 'crank or cam',
  'early-or-late': 'early or late',
  'tight-or-slack': 'tight or slack',
  'which-way-it-runs': 'the way it runs',
}

/** How a mark is off, taken away from the end of the line. */
function takeOff(line: Line) {
  const [teeth = '', typed] = line.take(/^(.*?)(?:^|,? )(?:off|found|counted)(?= |$)(.*)$/i) ?? []
  if (typed === undefined) return null
  line.rest = teeth
  const off = readMisplaced(typed)
  if (off.understood) return off.value
  const form = `teeth ${teeth || '24/48'} off ${off.nearest}`
  const what = missing[off.code]
  if (what !== undefined) return misread({ code: 'missing', verb: line.verb, what, form })
  return line.notUnderstood(off.part || typed || line.whole, form)
}

/** With the word `off` that stands before what is off. */
function nearest(typed: string): string | null {
  const [, teeth, rest] = /^(\d+ ?[/:] ?\d+(?: \d+ ?[/:] ?\d+)?),? (.+)$/.exec(typed) ?? []
  return rest !== undefined && readMisplaced(rest).understood ? `teeth ${teeth} off ${rest}` : null
}

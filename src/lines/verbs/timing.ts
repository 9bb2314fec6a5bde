import { type MisplacedFault, readMisplaced } from '../../trade/timing/read-misplaced.ts'
import { readTeeth } from '../../trade/timing/read-teeth.ts'
import type { TimingQuestion } from '../../trade/timing/work-out.ts'
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
    says: 'Shows what one tooth of a timing drive is worth; and which way a mark that is off goes back.',
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
      const [before, typedOff] =
        line.take(/^(.*?)(?:^|,? )(?:off|found|counted)(?= |$)(.*)$/i)?.map((part) => part.trim()) ?? []
      if (before !== undefined) line.rest = before
      const typed = line.takeRest('CRANK/CAM')
      return { ask: 'sum', sum: { sum: 'timing', question: timingQuestion(line, { typed, typedOff, pins }) } }
    },
  },
]

interface Parts {
  typed: string
  typedOff: string | undefined
  pins: string | undefined
}

function timingQuestion(line: Line, { typed, typedOff, pins }: Parts): TimingQuestion {
  const stages = readTeeth(typed)
  const off = typedOff === undefined ? null : readMisplaced(typedOff)
  const isChain = pins === undefined || Number(pins) >= FEWEST_PINS
  // The whole line, with what was understood as it was typed.
  const form = [
    'teeth',
    stages.understood ? typed : stages.nearest,
    ...(off ? ['off', off.understood ? typedOff : off.nearest] : []),
    ...(pins === undefined ? [] : ['chain', isChain ? pins : '126']),
  ].join(' ')
  if (!stages.understood) return line.notUnderstood(typed, withOff(typed) ?? form)
  if (off && !off.understood) {
    const what = missing[off.code]
    if (what !== undefined) return misread({ code: 'missing', verb: line.verb, what, form })
    return line.notUnderstood(off.part || line.whole, form)
  }
  if (!isChain) return line.notUnderstood(`chain ${pins}`, form)
  return { stages: stages.value, off: off ? off.value : null, pins: pins === undefined ? null : Number(pins) }
}

const FEWEST_PINS = 20

/** What a line has to say besides, by the fault that it was not said. */
const missing: Partial<Record<MisplacedFault, string>> = {
  empty: 'HOW MUCH',
  'crank-or-cam': 'crank or cam',
  'early-or-late': 'early or late',
  'tight-or-slack': 'tight or slack',
  'which-way-it-runs': 'the way it runs',
}

/** With the word `off` that stands before what is off. */
function withOff(typed: string): string | null {
  const [, teeth, rest] = /^(\d+ ?[/:] ?\d+(?: \d+ ?[/:] ?\d+)?),? (.+)$/.exec(typed) ?? []
  return rest !== undefined && readMisplaced(rest).understood ? `teeth ${teeth} off ${rest}` : null
}

import { MACHINE_NUMBER, stepNumber } from '../../label/code.ts'
import type { Errand } from '../errand.ts'
import type { Ask } from '../reading.ts'
import type { Verb } from '../verb.ts'

export const questionVerbs: readonly Verb[] = [
  asks('card', 'Shows where the job stands and what comes next.'),
  {
    words: ['scan'],
    topic: 'questions',
    forms: ['scan CODE', 'scan 3', 'CODE'],
    says: 'Answers a label: what it holds, what that is for, and whether it fits now. A code alone is a scan too.',
    examples: ['scan 3', '3'],
    read: (line) => ({ ask: 'scan', text: line.takeRest('CODE') }),
  },
  asks('back', 'Shows the way back: every step in order, ready, blocked or done.'),
  {
    words: ['where'],
    topic: 'questions',
    forms: ['where [WORDS]'],
    says: 'Shows where pieces are: all that answer to the words, or every container and place.',
    examples: ['where', 'where cam cap I3', 'where is the cylinder head'],
    read: (line) => ({ ask: 'where', words: line.rest.replace(/^(?:is|are) (?:the )?|\?$/gi, '') }),
  },
  asks('due', 'Shows all that is awaited: what is late, to be checked and decided, out, to buy and missing.'),
  asks('left', 'Shows what is left over: everything that stands between the machine and its first start.'),
  {
    words: ['log'],
    topic: 'questions',
    forms: ['log [N]'],
    says: 'Shows the last entries of the journal.',
    examples: ['log', 'log 50'],
    read(line) {
      const last = line.rest === '' ? null : line.takeNumber()
      line.end()
      return { ask: 'log', last }
    },
  },
  {
    words: ['record'],
    topic: 'questions',
    forms: ['record'],
    says: 'Shows the as-built record: all that the journal holds of the job, to be printed and kept.',
    examples: ['record'],
    read(line): Errand {
      line.end()
      return { errand: 'record' }
    },
  },
  {
    words: ['qr'],
    topic: 'questions',
    forms: ['qr N', 'qr machine', 'qr step 4'],
    says: 'Shows a QR symbol to scan from the screen: of a label, used or unused, of the machine or of a step.',
    examples: ['qr 3', 'qr machine', 'qr step 2'],
    read(line) {
      if (line.take(/^(?:the )?(?:machine|job)$/i)) return { ask: 'qr', container: MACHINE_NUMBER }
      const [step] = line.take(/^step (\d{1,9})$/i) ?? []
      if (step === undefined) return { ask: 'qr', container: line.container(line.takeRest('N')) }
      const no = Number(step)
      // There is no such step in any job that has its symbol: the answer says so.
      return { ask: 'qr', container: no >= 1 && no <= 999 ? stepNumber(no) : line.notUnderstood(step) }
    },
  },
  asks(
    'finish',
    'Estimates when the machine is together; says why not earlier and what can be done meanwhile.',
  ),
  asks('proposals', 'Shows steps of the way back that the record suggests; "accept" takes them.'),
  {
    words: ['help'],
    topic: 'questions',
    forms: ['help [WORD]'],
    says: 'Shows what can be written.',
    examples: ['help', 'help fit'],
    read: (line) => ({ ask: 'help', about: line.rest === '' ? null : line.rest }),
  },
]

function asks(word: 'card' | 'back' | 'due' | 'left' | 'finish' | 'proposals', says: string): Verb {
  return {
    words: [word],
    topic: 'questions',
    forms: [word],
    says,
    examples: [word],
    // The left coil and the back plate come off as well.
    meant: /^$/,
    read(line): Ask {
      line.end()
      return { ask: word }
    },
  }
}

import type { Arrow, Errand, Printed } from '../errand.ts'
import type { Line } from '../line.ts'
import { oneOfSet } from '../one-set.ts'
import { takeHow } from '../read-how.ts'
import type { Verb } from '../verb.ts'

const HOW = '[on STOCK] [from LABEL] [to FILE]'

export const labelVerbs: readonly Verb[] = [
  {
    words: ['label'],
    topic: 'labels and pictures',
    forms: ['label N'],
    says: 'Shows what to write on a bag with a marker: its shortest form.',
    examples: ['label 3'],
    read: (line) => ({ ask: 'label', container: line.container(line.takeRest('N')) }),
  },
  {
    words: ['labels blank'],
    topic: 'labels and pictures',
    forms: [
      `labels blank COUNT ${HOW}`,
      'labels blank sheet [on STOCK] [from LABEL]',
      'labels blank again 5..28',
    ],
    says: 'Prints labels that have no container yet: each is dealt a number, and what goes into one opens it.',
    examples: [
      'labels blank 24',
      'labels blank sheet on a4-24 from 5',
      'labels blank 100 on roll-64x34 to tcp 192.168.1.20:9100',
      'labels blank again 5..28',
    ],
    read(line) {
      const how = takeHow(line)
      const [from, to] = line.take(/^again (\d{1,4})(?: ?(?:\.\.|-|to) ?(\d{1,4}))?$/i) ?? []
      if (from !== undefined) {
        return printed({ print: 'blanks-again', from: Number(from), to: Number(to || from) }, how)
      }
      if (line.take(/^sheet$/i)) return printed({ print: 'blanks', count: 'sheet' }, how)
      const count = line.takeNumber('COUNT')
      line.end()
      return printed({ print: 'blanks', count }, how)
    },
  },
  {
    words: ['labels'],
    topic: 'labels and pictures',
    forms: [
      `labels 3, 5..8 ${HOW}`,
      'labels all',
      'labels step 4',
      'labels machine',
      'labels calibration on STOCK',
      'labels ... [copies N] [shift X Y] [as svg|png|label-roll|receipt-roll] [at 203|300]',
      'labels ... [to FILE | tcp HOST[:PORT] | device PATH | -]',
    ],
    says: 'Prints labels of containers: what is in each, how many and where it goes back; or the tag of the machine.',
    examples: [
      'labels 3',
      'labels 3, 5..8 on a4-24 from 9',
      'labels all to labels.pdf',
      'labels step 4 copies 2',
      'labels 3 as png at 300 to bag-3.png',
      'labels machine',
      'labels calibration on a4-24 shift 1.5 -0.5',
    ],
    read(line) {
      const how = takeHow(line)
      if (line.take(/^all$/i)) return printed({ print: 'all-containers' }, how)
      if (line.take(/^(?:the )?machine$/i)) return printed({ print: 'machine' }, how)
      if (line.take(/^calibration$/i)) return printed({ print: 'calibration' }, how)
      const [step] = line.take(/^(?:of )?step (\d{1,4})$/i) ?? []
      if (step !== undefined) return printed({ print: 'containers-of-step', step: Number(step) }, how)
      return printed({ print: 'containers', containers: containersIn(line) }, how)
    },
  },
  {
    words: ['labels stocks', 'stocks'],
    topic: 'labels and pictures',
    forms: ['labels stocks'],
    says: 'Lists the label stocks that are known, with their measures.',
    examples: ['labels stocks'],
    read(line) {
      line.end()
      return { errand: 'stocks' }
    },
  },
  {
    words: ['labels usual'],
    topic: 'labels and pictures',
    forms: [
      'labels usual [on STOCK] [shift X Y] [at DPI] [to tcp HOST]',
      'labels usual',
      'labels usual none',
    ],
    says: 'Keeps the usual stock and printer: used when nothing else is said.',
    examples: [
      'labels usual on a4-24 shift 1 0',
      'labels usual on roll-64x34 to tcp 192.168.1.20',
      'labels usual',
      'labels usual none',
    ],
    read(line) {
      const how = takeHow(line)
      const isNone = line.take(/^none$/i) !== null
      line.end()
      return { errand: 'print-usual', how: isNone ? null : how }
    },
  },
  {
    words: ['flags'],
    topic: 'labels and pictures',
    forms: [`flags HOSE ${HOW}`],
    says: 'Prints two flags to fold around a hose, cable or wire: each with its own end and the other.',
    examples: ['flags coolant hose', 'flags p14 on flag-100x25'],
    read(line) {
      const how = takeHow(line)
      return printed({ print: 'flags', piece: oneOfSet(line, line.takeRest('HOSE')) }, how)
    },
  },
  {
    words: ['template'],
    topic: 'labels and pictures',
    forms: ['template SET [laid out ROWS] [arrow left] [pitch MM] [on a4] [to FILE]'],
    says: 'Draws the positions of a set on paper: as they lie on the machine, to lay the pieces on or push bolts through.',
    examples: [
      'template cam caps',
      'template cam caps laid out 2x4 arrow left',
      'template pump cover bolts laid out 1 2 3 / 6 . 4 / . 5 . pitch 30',
    ],
    read(line) {
      const how = takeHow(line)
      const takePitch = () => line.take(/(?:^| )pitch (\d{1,3}(?:[.,]\d)?)(?: ?mm)?$/i)?.[0]
      const behind = takePitch()
      const arrow = line.take(/(?:^| )arrow (up|down|left|right)$/i)?.[0]
      // Before the arrow or behind it.
      const pitch = behind ?? takePitch()
      const layout = line.take(/(?:^| )laid out (?:as )?(\S.*)$/i)?.[0]
      const pieces = line
        .takeRest('SET')
        .split(/,| and /i)
        .flatMap((words) => line.pieces(words))
      return printed(
        {
          print: 'template',
          pieces: [...new Set(pieces)],
          layout: layout ?? null,
          arrow: (arrow?.toLowerCase() as Arrow | undefined) ?? null,
          pitch: pitch === undefined ? null : Number(pitch.replace(',', '.')),
        },
        how,
      )
    },
  },
  {
    words: ['print plan'],
    topic: 'labels and pictures',
    forms: ['print plan [on a4] [to FILE]'],
    says: 'Prints the way back on paper: every step with its pieces, its bags, and a symbol to scan.',
    examples: ['print plan', 'print plan on letter to plan.pdf'],
    read(line) {
      const how = takeHow(line)
      line.end()
      return printed({ print: 'plan' }, how)
    },
  },
  {
    words: ['photos import'],
    topic: 'labels and pictures',
    forms: ['photos import FOLDER'],
    says: 'Copies a folder of pictures into the job: those after a picture of a label belong to what it labels.',
    examples: ['photos import /media/phone/today'],
    read: (line) => ({ errand: 'photos-import', folder: line.takeRest('FOLDER') }),
  },
  {
    words: ['photos open'],
    topic: 'labels and pictures',
    forms: ['photos open [bag 3 | step 4 | PIECE]'],
    says: 'Opens pictures: of a container, a step, a piece or the whole job.',
    examples: ['photos open', 'photos open bag 3', 'photos open step 4'],
    read(line): Errand {
      if (line.rest === '') return { errand: 'photos-open', of: { of: 'job' } }
      const [step] = line.take(/^step (\d{1,4})$/i) ?? []
      if (step !== undefined) return { errand: 'photos-open', of: { of: 'step', no: Number(step) } }
      if (/^(?:(?:bag|bin|tray|tag|shelf) )?\d/i.test(line.rest)) {
        return { errand: 'photos-open', of: { of: 'container', no: line.container(line.takeRest('N')) } }
      }
      return { errand: 'photos-open', of: { of: 'piece', piece: line.piece(line.takeRest('PIECE')) } }
    },
  },
]

function printed(what: Printed, how: Extract<Errand, { errand: 'print' }>['how']): Errand {
  return { errand: 'print', what, how }
}

/** `3`, `bag 3`, `3, 5..8`: each once, in the order said. */
function containersIn(line: Line): number[] {
  const numbers = line
    .takeRest('N')
    .split(/,| and /i)
    .flatMap((part) => {
      const [, from, to] = /^\s*(\d{1,4}) ?(?:\.\.|-|to) ?(\d{1,4})\s*$/.exec(part) ?? []
      if (from === undefined) return [line.container(part)]
      const first = Number(from)
      const last = Number(to)
      if (last < first || last - first >= 1000) line.notUnderstood(part.trim(), '5..8')
      // A range is what there is in it: numbers that were never dealt or are void leave a hole.
      const inUse = [...line.state.containers.values()]
        .filter(({ no, voided }) => no >= first && no <= last && voided === null)
        .map(({ no }) => no)
      return inUse.length > 0 ? inUse : [first]
    })
  return [...new Set(numbers)]
}

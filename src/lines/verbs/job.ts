import type { Command } from '../../journal/command.ts'
import type { Errand } from '../errand.ts'
import type { Line } from '../line.ts'
import type { Verb } from '../verb.ts'

export const jobVerbs: readonly Verb[] = [
  {
    words: ['stop'],
    topic: 'job',
    forms: ['stop [NOTE]'],
    says: 'Stops work for now: with a note for whoever takes it up again.',
    examples: ['stop', 'stop torque wrench is in the car'],
    read: (line) => ({ do: 'stop', note: line.take(/^:? ?(.*)$/)?.[0] ?? '', abrupt: false }),
  },
  plain('clear', 'clear', 'Asks for the first start. It is cleared only when nothing is left over.'),
  plain('started', 'first-start', 'The machine has run for the first time.'),
  {
    words: ['close'],
    topic: 'job',
    forms: ['close [because NOTE]'],
    says: 'Closes the job; when the checks after the start are done, or handed over in a note.',
    examples: ['close', 'close because the owner checks the level at 100 km'],
    read(line) {
      const note = line.reasonIfAny()
      line.end()
      return { do: 'close-job', note }
    },
  },
  {
    words: ['undo'],
    topic: 'job',
    forms: ['undo', 'undo ENTRY'],
    says: 'Takes back the last entry. With its number, only if nothing was written since.',
    examples: ['undo', 'undo 41'],
    read(line) {
      const entry = line.rest === '' ? undefined : line.takeNumber('ENTRY')
      line.end()
      return { do: 'undo', entry }
    },
  },
  plain('redo', 'redo', 'Takes back an undo.'),
  {
    words: ['backup'],
    topic: 'job',
    forms: ['backup [to FOLDER|FILE]', 'backup all [to FOLDER]'],
    says: 'Puts the job and its pictures into one file; reads it back whole. "putback restore FILE" makes a job of it again.',
    examples: ['backup', 'backup to /media/stick', 'backup all to /media/stick'],
    meant: /^(?:$|all(?: to |$)|to )/i,
    read(line): Errand {
      const isAll = line.take(/^all(?= to |$)/i) !== null
      const [to] = line.take(/^to (.+)$/i) ?? []
      if (/^to$/i.test(line.rest)) line.missing('FOLDER')
      line.end()
      return { errand: 'backup', isAll, to: to ?? null }
    },
  },
  {
    words: ['merge'],
    topic: 'job',
    forms: ['merge PATH', 'merge PATH take'],
    says: 'Brings in a copy of this job; one that was gone on with elsewhere. What does not fit is shown first, "take" leaves it out.',
    examples: ['merge /media/stick/blue-twin', 'merge /media/stick/blue-twin take'],
    read(line): Errand {
      const isTaken = line.take(/ take$/i) !== null
      return { errand: 'merge', path: line.takeRest('PATH'), isTaken }
    },
  },
  {
    words: ['rename job'],
    topic: 'job',
    forms: ['rename job NAME'],
    says: 'Gives the job another name.',
    examples: ['rename job the blue twin, second winter'],
    read: (line) => ({ do: 'describe', name: line.takeRest('NAME') }),
  },
  {
    words: ['describe machine', 'machine'],
    topic: 'job',
    forms: ['describe machine TEXT'],
    says: 'Says what the machine is.',
    examples: ['describe machine parallel twin, water-cooled, 2 x 4 valves'],
    read(line) {
      line.take(/^: ?/)
      return { do: 'describe', machine: line.takeRest('TEXT') }
    },
  },
  {
    words: ['units'],
    topic: 'job',
    forms: ['units metric|us'],
    says: 'Says which gallon and quart a bare one is.',
    examples: ['units metric', 'units us'],
    read(line) {
      const said = line.takeRest('metric or us')
      const units = (['metric', 'us'] as const).find((known) => known === said.toLowerCase())
      return { do: 'describe', units: units ?? line.notUnderstood(said, 'units metric') }
    },
  },
  {
    words: ['archive'],
    topic: 'job',
    forms: ['archive'],
    says: 'Puts the job away: it is listed only when asked for.',
    examples: ['archive'],
    read: (line) => archived(line, true),
  },
  {
    words: ['unarchive'],
    topic: 'job',
    forms: ['unarchive'],
    says: 'Takes the job out of the archive.',
    examples: ['unarchive'],
    read: (line) => archived(line, false),
  },
]

function plain(word: string, command: 'clear' | 'first-start' | 'redo', says: string): Verb {
  return {
    words: [word],
    topic: 'job',
    forms: [word],
    says,
    examples: [word],
    read(line) {
      line.end()
      return { do: command }
    },
  }
}

function archived(line: Line, archived: boolean): Command {
  line.end()
  return { do: 'archive', archived }
}

import type { Line } from '../line.ts'
import { offReading } from '../read-off.ts'
import type { Verb } from '../verb.ts'

export const stripVerbs: readonly Verb[] = [
  {
    words: ['begin', 'strip'],
    topic: 'strip-down',
    forms: ['begin TITLE [after 1,2 | free] [hides | does not hide]'],
    says: 'Begins a strip step. It came off after the step before, unless told otherwise.',
    examples: [
      'begin valve cover off',
      'begin water pump off after 1',
      'begin heat shield off free, does not hide',
    ],
    read(line) {
      const hides = line.take(/,? (does not hide|hides)$/i)?.[0]
      const free = line.take(/,? free$/i) !== null
      const after = line.take(/,? after (?:steps? )?(\d[\d, ]*(?:and \d+)?)$/i)?.[0]
      const title = line.takeRest('TITLE')
      return {
        do: 'begin-strip',
        title,
        after: free ? [] : after === undefined ? undefined : line.numbers(after),
        hides: hides === undefined ? undefined : hides.toLowerCase() === 'hides',
      }
    },
  },
  {
    words: ['end'],
    topic: 'strip-down',
    forms: ['end'],
    says: 'Ends the strip step under way: all that belongs to it is off.',
    examples: ['end'],
    // An end cap comes off as well.
    meant: /^$/,
    read(line) {
      line.end()
      return { do: 'end-strip' }
    },
  },
  {
    words: ['off'],
    topic: 'strip-down',
    forms: [
      'off COUNT SIZE NAME [into PLACE]',
      'off NAME POSITIONS [into tray 3]',
      'off HOSE: END > END',
      'off AID > WHERE',
      'off FLUID out 2.1 L',
    ],
    says: 'Records what came off, as written on the bag; several with ";". Into what is in hand when no place is said.',
    examples: [
      'off 8 M6x25 hex 10 valve cover bolts into new bag',
      'off cam caps I1..I4 into tray 3',
      'off cylinder head onto the bench',
      'off coolant hose: radiator > pump',
      'off rag > inlet port 1; coolant out 2.1 L',
    ],
    read(line) {
      return offReading(line.takeRest('COUNT NAME'), line.state)
    },
  },
  {
    words: ['mark', 'marks'],
    topic: 'strip-down',
    forms: ['mark: TEXT', 'mark I3: TEXT'],
    says: 'Notes a witness mark or how a piece sits. It must be confirmed when the piece goes back.',
    examples: ['mark: cam lobes point outward', 'mark I3: arrow to the chain'],
    read: asBagLine,
  },
  {
    words: ['tool', 'tools'],
    topic: 'strip-down',
    forms: ['tool: NAME, NAME'],
    says: 'Counts tools out of the toolbox. They must be back before the first start.',
    examples: ['tool: crank locking pin', 'tools: magnet, 2 mirrors'],
    read: asBagLine,
  },
  {
    words: ['note', 'notes'],
    topic: 'strip-down',
    forms: ['note: TEXT'],
    says: 'Keeps a note with the step in hand.',
    examples: ['note: gasket stuck to the head'],
    read: asBagLine,
  },
  {
    words: ['caution', 'warning'],
    topic: 'strip-down',
    forms: ['caution: TEXT'],
    says: 'Keeps a caution with the step in hand: shown again on the way back.',
    examples: ['caution: spring under load'],
    read: asBagLine,
  },
  {
    words: ['used'],
    topic: 'strip-down',
    forms: ['used: TOOLS'],
    says: 'Keeps what the step was done with.',
    examples: ['used: 10 mm socket, long extension'],
    read: asBagLine,
  },
  {
    words: ['took'],
    topic: 'strip-down',
    forms: ['took 25 min'],
    says: 'Keeps how long the step took.',
    examples: ['took 25 min'],
    read: ({ whole, state }) => offReading(whole, state),
  },
]

/** Kinds of bag line that say by themselves what they are. The colon may be left out: `note gasket stuck`. */
function asBagLine(line: Line) {
  const { whole, verb, state } = line
  line.take(/^: ?/)
  const text = line.takeRest('TEXT')
  const isAbout = verb.startsWith('mark') && /^[^:]{1,40} ?: ?\S/.test(text)
  return offReading(isAbout ? whole : `${verb}: ${text}`, state)
}

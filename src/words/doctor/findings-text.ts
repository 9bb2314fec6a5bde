import type { Finding } from '../../session/health.ts'
import { counted } from '../grammar.ts'

/** One kind of damage on its line or lines, as one line of text. */
export function findingText(finding: Finding): string {
  switch (finding.kind) {
    case 'brought':
      return `${entries(finding)}: whole in another file`
    case 'missing':
      return `before line ${finding.line}: ${entries(finding)} missing`
    case 'returns':
      return `${counted(finding.count ?? 0, 'line ends', 'lines end')} in CR LF: an editor saved the file`
    default:
      return `${lines(finding)}: ${whatText(finding)}`
  }
}

function whatText(finding: Finding): string {
  const { kind, isSure, bytes = 0 } = finding
  const entry = entries(finding)
  switch (kind) {
    case 'flipped':
      return `one bit of ${entry} is wrong, and which one is known`
    case 'unended':
      return `${entry} is whole, only the end of its line is gone`
    case 'torn':
      return `${counted(bytes, 'byte')} without the end of a line, no whole entry`
    case 'zeros':
      return `${counted(bytes, 'byte')} of zeros, as a loss of power leaves them`
    case 'mark':
      return 'a byte order mark stands before it: an editor saved the file'
    case 'blank':
      return 'empty'
    case 'doubled':
      return `${entry} a second time`
    case 'moved':
      return `${entry}, which belongs elsewhere in the file`
    case 'foreign':
      return isSure ? 'of another journal: the record is whole without it' : 'of another journal, as it seems'
    case 'other-way':
      return `${entry} told otherwise: a copy of the job that went another way`
    case 'altered':
      return isSure ? `${entry} is not what was written, the copy has it` : `${entry} is not what was written`
    case 'illegible':
      if (finding.entry !== undefined) return `${entry} cannot be read`
      return isSure ? 'no entry, and the record is whole without it' : 'cannot be read as an entry'
    case 'unknown':
      return `${entry} tells nothing that any putback writes`
    case 'unlawful':
      return `${entry} tells what cannot be, such as a piece that is in two places`
    case 'newer':
      return `${entry} was written by a newer putback`
    default:
      return kind
  }
}

function lines({ line, last }: Finding): string {
  return line === last ? `line ${line}` : `lines ${line} to ${last}`
}

function entries({ entry = 0, lastEntry = entry }: Finding): string {
  return entry === lastEntry ? `entry ${entry}` : `entries ${entry} to ${lastEntry}`
}

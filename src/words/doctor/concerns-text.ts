import type { Concern } from '../../session/health.ts'
import { say } from '../cures.ts'
import { counted } from '../grammar.ts'
import { timeText } from '../storage-troubles.ts'

/** What lies around the journal, and what to do about it: one line each, the first few of a kind and the number of the rest. */
export function concernsText(concerns: readonly Concern[]): string[] {
  const kinds = new Map<string, Concern[]>()
  for (const concern of concerns) kinds.set(concern.kind, [...(kinds.get(concern.kind) ?? []), concern])
  return [...kinds.values()].flatMap((alike) => {
    const more = alike.length - SHOWN
    return [...alike.slice(0, SHOWN).map(concernText), ...(more > 0 ? [`and ${more} more like that`] : [])]
  })
}

const SHOWN = 10

function concernText(concern: Concern): string {
  const { path } = concern
  switch (concern.kind) {
    case 'picture-missing':
      return `the picture ${path} is not there: ${say('photos import FOLDER')} with the same picture puts it back`
    case 'picture-changed':
      return `the picture ${path} is not the one recorded: move it away, then ${say('photos import FOLDER')} puts that back`
    case 'link':
      return `${path} is a link, and nothing is read through it: put the file itself there`
    case 'open-to-others':
      return `other users of this machine may look at ${path}: ${say(`chmod go-rwx '${path}'`)} keeps them out`
    case 'draft':
      return `${path} was left by a program that was stopped while it wrote: it can be deleted`
    case 'set-aside':
      return `${path} holds ${counted(concern.bytes, 'byte')}, set aside: delete it when nothing in it is missed`
    case 'lock':
      return lockText(concern)
    default:
      return concern satisfies never
  }
}

function lockText({ path, pid, host, since, holder }: Extract<Concern, { kind: 'lock' }>): string {
  const from = since === null ? '' : ` since ${timeText(since)}`
  switch (holder) {
    case 'living':
      return `process ${pid} is writing in the job${from}`
    case 'dead':
      return `${path} was left by process ${pid}, which is gone: the next one that records lifts it`
    case 'elsewhere':
      return `process ${pid} on ${host} has the job${from}: if nothing records there any more, delete ${path}`
    case 'unnamed':
      return `${path} names nobody: after ten seconds the next one that records lifts it`
    default:
      return holder satisfies never
  }
}

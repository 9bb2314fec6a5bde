import { isTakenBack } from '../../session/views.ts'
import { entryText } from '../../words/entries.ts'
import { goTo, NO_CHOICES, type Page } from '../page.ts'
import { chip, SIGNS } from '../signs.ts'
import { cut, type Line, line, strong } from '../text/line.ts'
import { type Entry, perVersion, type Scene } from './scene.ts'
import { whenText } from './when.ts'

/** The history, newest first; what was taken back is still there and says so. */
export function logPage(scene: Scene): Page {
  const { session } = scene
  const entries = session.entries()
  const inForce = perVersion(session, 'in force', () => new Set(session.state.inForce))
  return {
    title: line(strong('WHAT HAPPENED'), `  ${entries.length} entries, newest first`),
    top: [],
    rows: {
      length: entries.length,
      at: (index) => row(scene, entries[entries.length - 1 - index] as Entry, inForce),
    },
    enter: goTo('where you are', { at: 'now' }),
    choice: NO_CHOICES,
    large: null,
  }
}

function row({ session, width, now }: Scene, entry: Entry, inForce: ReadonlySet<number>): Line {
  const isUndone = isTakenBack(inForce, entry)
  const who = entry.by === undefined ? '' : `${entry.by}: `
  return cut(
    line(
      strong(String(entry.n).padStart(5)),
      '  ',
      whenText(entry.at, now).padEnd(13),
      ...(isUndone ? [chip(SIGNS.undone), ' '] : []),
      who,
      entryText(session.state, entry),
    ),
    width,
  )
}

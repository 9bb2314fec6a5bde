import { isTakenBack } from '../../session/views.ts'
import { entryText } from '../../words/entries.ts'
import { goTo, NO_CHOICES, type Page, type Rows, rowsOf } from '../page.ts'
import { chip, SIGNS } from '../signs.ts'
import { cut, type Line, line, strong } from '../text/line.ts'
import { type Entry, perVersion, type Scene } from './scene.ts'
import { search, wordsNow } from './search.ts'
import { whenText } from './when.ts'

/** The history, newest first; what was taken back is still there and says so. */
export function logPage(scene: Scene, words: string, typed: string): Page {
  const { session } = scene
  const wanted = wordsNow(typed, words)
  const all = session.entries()
  const entries = wanted === '' ? all : found(session, wanted)
  const inForce = perVersion(session, 'in force', () => new Set(session.state.inForce))
  const rows: Rows = {
    length: entries.length,
    at: (index) => row(scene, entries[entries.length - 1 - index] as Entry, inForce),
  }
  return {
    title:
      wanted === ''
        ? line(strong('WHAT HAPPENED'), `  ${all.length} entries, newest first`)
        : line(strong('WHAT HAPPENED'), `  ${entries.length} found for `, strong(wanted)),
    top: [],
    rows: rows.length > 0 ? rows : rowsOf([line('     Nothing answers to these words.')]),
    isNarrowed: wanted !== words,
    enter:
      words === ''
        ? goTo('where you are', { at: 'now' })
        : { says: 'everything again', act: { do: 'turn', to: { at: 'log' } } },
    choice: NO_CHOICES,
    large: null,
  }
}

/** The entries in whose words all of these are. */
function found(session: Scene['session'], words: string): readonly Entry[] {
  return search(session, words, {
    name: 'entries',
    all: () => [...session.entries()],
    textOf: (entry) => `${entry.by ?? ''} ${entryText(session.state, entry)}`,
    idOf: (entry) => String(entry.n),
    isId: (word) => /^\d+$/.test(word),
  })
}

function row({ session, width, now }: Scene, entry: Entry, inForce: ReadonlySet<number>): Line {
  const isUndone = isTakenBack(inForce, entry)
  const who = entry.by === undefined ? '' : `${entry.by}: `
  return cut(
    line(
      strong(String(entry.n).padStart(5)),
      '  ',
      `${whenText(entry.at, now)} `.padEnd(13),
      ...(isUndone ? [chip(SIGNS.undone), ' '] : []),
      who,
      entryText(session.state, entry),
    ),
    width,
  )
}

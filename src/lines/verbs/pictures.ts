import type { Command } from '../../journal/command.ts'
import type { Belongs, PictureId } from '../../journal/entry.ts'
import type { Line } from '../line.ts'
import { readContainer } from '../read-place.ts'
import type { Verb } from '../verb.ts'

export const pictureVerbs: readonly Verb[] = [
  {
    words: ['photo'],
    topic: 'labels and pictures',
    forms: ['photo g3 to bag 5', 'photo g3..g9 to bag 5', 'photo g3, g7 to step 4', 'photo g3 to job'],
    says: 'Says what pictures show: a container, a step, or the job as a whole.',
    examples: ['photo g3 to bag 2', 'photo g3..g9 to bag 2', 'photo g3, g7 to step 1', 'photo g3 to job'],
    read(line) {
      const [said = ''] =
        line.take(/^(g\d.*?)(?= (?:to|of|in|into)(?: |$)|$)/i) ??
        (line.rest === '' ? line.missing('g3') : line.notUnderstood(line.rest, 'photo g3 to bag 5'))
      const pictures = picturesIn(line, said)
      const [to = ''] = line.take(/^(?:to|of|in|into) (.+)$/i) ?? line.missing('to bag 5')
      const isWhole = /^(?:the )?(?:whole )?(?:job|machine)$/i.test(to)
      const belongs = owner(line, to) ?? (isWhole ? 'none' : line.notUnderstood(to, `photo ${said} to bag 5`))
      return pictures.map((picture): Command => ({ do: 'sort-picture', picture, belongs }))
    },
  },
  {
    words: ['photos'],
    topic: 'labels and pictures',
    forms: ['photos [bag 5 | step 4 | PIECE]'],
    says: 'Lists pictures: of a container, a step or a piece, or all of them, and how many are not sorted yet.',
    examples: ['photos', 'photos bag 2', 'photos step 1', 'photos cam cap I3'],
    read(line) {
      if (line.rest === '') return { ask: 'photos', of: null }
      const words = line.takeRest('PIECE').replace(/^of (?:the )?/i, '')
      return { ask: 'photos', of: owner(line, words) ?? { piece: line.piece(words) } }
    },
  },
]

/** `g3`, `g3..g9`, `g3, g7..9`: each once. A range is what there is in it. */
function picturesIn(line: Line, said: string): PictureId[] {
  const found = said.split(/ ?, ?| and /i).flatMap((part): PictureId[] => {
    const [, from, to = from] = /^g(\d{1,9})(?: ?(?:\.\.|-) ?g?(\d{1,9}))?$/i.exec(part) ?? []
    const [first, last] = [Number(from), Number(to)]
    if (from === undefined || last < first) line.notUnderstood(part, 'photo g3..g9 to bag 5')
    const known = [...line.state.pictures.keys()].filter((id) => {
      const no = Number(id.slice(1))
      return no >= first && no <= last
    })
    return known.length > 0 ? known : [`g${first}`]
  })
  return [...new Set(found)]
}

function owner(line: Line, words: string): Belongs | null {
  const step = /^step (\d{1,4})$/i.exec(words)?.[1]
  if (step !== undefined) return { step: Number(step) }
  const no = readContainer(words, line.state)
  return no === null ? null : { container: no }
}

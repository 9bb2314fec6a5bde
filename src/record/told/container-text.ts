import { counted } from '../../words/grammar.ts'
import { ownerName } from '../../words/pictures.ts'
import { containerName, containerPath, placeName } from '../../words/places.ts'
import type { ContainerRecord } from '../facts/containers.ts'
import type { PictureGroup } from '../facts/pictures.ts'
import { type Line, line } from './line.ts'
import { dated, type Telling } from './telling.ts'

/** A container with its name, where it stands and its label. */
export function containerText(telling: Telling, { container, opened }: ContainerRecord): Line {
  const { state, code } = telling
  const { no, voided } = container
  const stands = containerPath(state, no).slice(placeName(state, `c${no}`).length)
  const label = `label ${code(no)}${voided === null ? '' : ', void'}`
  return dated(telling, opened, `${containerName(state, no)}${stands}: ${label}`)
}

/** What pictures there are of one thing, by the names of their files. */
export function pictureText({ state }: Telling, { of, pictures }: PictureGroup): Line {
  const files = pictures.map(({ file }) => file).join(', ')
  return line(`${counted(pictures.length, 'picture')} ${ownerName(state, of)}: ${files}`, 2)
}

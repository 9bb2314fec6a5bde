import type { PicturesOf } from '../../lines/errand.ts'
import type { PicturesAbout } from '../../lines/reading.ts'
import { allPictures, picturesOf } from '../../session/pictures.ts'
import { stepName } from '../../words/names.ts'
import { ownerName } from '../../words/pictures.ts'
import { pieceName } from '../../words/pieces.ts'
import { containerName } from '../../words/places.ts'
import { BACK, type Choice, NO_CHOICES, type Page, type Rows, rowsOf } from '../page.ts'
import { blank, cut, type Line, line, strong } from '../text/line.ts'
import { groups, heading, indented } from './rows.ts'
import { perVersion, type Scene, type State } from './scene.ts'
import { whenText } from './when.ts'

type Picture = ReturnType<typeof allPictures>[number]

/**
 * The pictures of a container, a step, a piece or the whole job: those that nobody sorted first, each to be said whose
 * it is. A picture has the number here that it has in the record.
 */
export function photosPage(scene: Scene, of: PicturesAbout | null): Page {
  const { session } = scene
  const pictures = perVersion(session, `photos ${JSON.stringify(of)}`, () => bySorting(session.state, of))
  const unsorted = pictures.filter(isUnsorted).length
  const whose = of === null ? 'in this job' : `of ${nameOf(session.state, of)}`
  const title = line(
    strong('PICTURES'),
    `  ${pictures.length} ${whose}`,
    unsorted === 0 ? '' : `, ${unsorted} not sorted yet`,
  )
  if (of !== null && !isKnown(session.state, of)) return missing(of)
  if (pictures.length === 0) return { ...nothingYet(scene), title }
  return {
    title,
    top: [],
    rows: pictureRows(scene, { pictures, unsorted, ofMany: of === null || !('container' in of) }),
    enter: { says: 'open them', act: { do: 'errand', errand: { errand: 'photos-open', of: meant(of) } } },
    choice: (no) => sortChoice(pictures, no),
    large: null,
  }
}

function bySorting(state: State, of: PicturesAbout | null): Picture[] {
  const pictures = of === null ? allPictures(state) : picturesOf(state, of)
  return [...pictures.filter(isUnsorted), ...pictures.filter((picture) => !isUnsorted(picture))]
}

function isUnsorted({ belongs }: Picture): boolean {
  return belongs === null
}

function nameOf(state: State, of: PicturesAbout): string {
  if ('container' in of) return containerName(state, of.container)
  return 'step' in of ? stepName(state, of.step) : pieceName(state, of.piece)
}

function isKnown(state: State, of: PicturesAbout): boolean {
  if ('container' in of) return state.containers.has(of.container) || state.blanks.has(of.container)
  return 'step' in of ? state.steps.has(of.step) : state.ledger.accounts.has(of.piece)
}

function missing(of: PicturesAbout): Page {
  const what =
    'container' in of ? `container ${of.container}` : 'step' in of ? `step ${of.step}` : 'such piece'
  return {
    title: line(strong('PICTURES')),
    top: [],
    rows: rowsOf([line(`     There is no ${what} in this job.`)]),
    enter: BACK,
    choice: NO_CHOICES,
    large: null,
  }
}

function meant(of: PicturesAbout | null): PicturesOf {
  if (of === null) return { of: 'job' }
  if ('container' in of) return { of: 'container', no: of.container }
  return 'step' in of ? { of: 'step', no: of.step } : { of: 'piece', piece: of.piece }
}

/** Two lists under their headings, made row by row: a job may have thousands of pictures. */
function pictureRows(
  scene: Scene,
  { pictures, unsorted, ofMany }: { pictures: readonly Picture[]; unsorted: number; ofMany: boolean },
): Rows {
  const parts: (Line | Picture)[] = [
    ...(unsorted > 0 ? [heading('NOT SORTED YET: a number says what it shows')] : []),
    ...pictures.slice(0, unsorted),
    ...(unsorted > 0 && unsorted < pictures.length ? [blank] : []),
    ...(unsorted < pictures.length ? [heading('SORTED: a number says it anew')] : []),
    ...pictures.slice(unsorted),
  ]
  return {
    length: parts.length,
    at(index) {
      const part = parts[index] ?? blank
      return 'id' in part ? pictureRow(scene, part, ofMany) : part
    },
  }
}

const TIME_WIDTH = 17

/** Whose it is stands there where not all are of the same. */
function pictureRow(
  { session, width, now }: Scene,
  { id, file, taken, belongs }: Picture,
  ofMany: boolean,
): Line {
  const when = taken === null ? 'no time' : whenText(taken.slice(0, 19), now)
  return cut(
    line(
      strong(String(numberOf(id)).padStart(5)),
      `  ${when.padEnd(TIME_WIDTH)}  `,
      ...(belongs === null || !ofMany ? [] : [strong(ownerName(session.state, belongs)), '  ']),
      file,
    ),
    width,
  )
}

/** The words that sort a picture, to be completed by a place or a scan. */
function sortChoice(pictures: readonly Picture[], no: number): Choice | undefined {
  const picture = pictures.find(({ id }) => numberOf(id) === no)
  return (
    picture && {
      says: `say what ${picture.id} shows`,
      act: {
        do: 'write',
        before: `photo ${picture.id} to `,
        asks: `Type or scan what ${picture.file} shows, as: bag 5, step 4, job`,
      },
    }
  )
}

function numberOf(id: Picture['id']): number {
  return Number(id.slice(1))
}

function nothingYet({ width }: Scene): Omit<Page, 'title'> {
  return {
    top: [],
    rows: rowsOf(
      groups(
        indented('No picture yet. With the phone: the label first, then what belongs to it.', width),
        indented('Then "photos import" and the folder with the pictures brings them here.', width),
      ),
    ),
    enter: {
      says: 'name the folder with the pictures',
      act: { do: 'write', before: 'photos import ', asks: 'Type the folder, or drop it on this window.' },
    },
    choice: NO_CHOICES,
    large: null,
  }
}

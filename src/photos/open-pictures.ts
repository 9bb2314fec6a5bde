import { spawn } from 'node:child_process'
import { basename, dirname } from 'node:path'
import type { PictureFacts, State } from '../journal/state.ts'
import { plainText } from '../label/plain-text.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { PicturesOf } from '../lines/errand.ts'
import type { ErrandOutcome } from '../session/errands.ts'
import { allPictures, picturesOf } from '../session/pictures.ts'
import type { Session } from '../session/session.ts'
import { isCopyName, photoFile } from '../storage/photo-files.ts'
import { counted } from '../words/grammar.ts'
import { ownerName } from '../words/pictures.ts'
import { told } from '../words/told.ts'
import { refusedWith } from './failed.ts'
import { jobFolderOf } from './job-folder.ts'

export interface OpenOptions {
  platform?: NodeJS.Platform | undefined
  env?: { DISPLAY?: string | undefined; WAYLAND_DISPLAY?: string | undefined } | undefined
  /** Starts a program and answers whether it began; nothing waits for its end. */
  start?: ((opener: Opener) => Promise<boolean>) | undefined
}

/** A program that shows a file, as it is started: no shell reads its words. */
export interface Opener {
  program: string
  args: string[]
  cwd: string
}

/** One opens a window for each, and nobody wants forty. The others stand beside it in the same folder. */
const MOST_OPENED = 4

/**
 * Opens the pictures of a container, a step, a piece or the whole job with the program that this computer shows
 * pictures with, the first few of them; the paths of all are told, so that it is of use over a remote line too.
 */
export async function openPhotos(
  session: Session,
  of: PicturesOf,
  { platform = process.platform, env = process.env, start = startDetached }: OpenOptions = {},
): Promise<ErrandOutcome> {
  const { state } = session
  const pictures = picturesMeant(state, of)
  if (pictures.length === 0) {
    return refusedWith(
      'no-pictures',
      told(
        of.of === 'job' ? 'this job has no pictures' : 'there are no pictures of that',
        'take some after a picture of its label, and say "photos import FOLDER"',
      ),
    )
  }
  const found = pictures.map((picture) => ({ picture, path: photoFile(jobFolderOf(session), picture.file) }))
  const paths = found.flatMap(({ path }) => (path === null ? [] : [path]))
  const opened = await openSome(paths.slice(0, MOST_OPENED))
  return {
    ok: true,
    text: [
      ...found.map(({ picture, path }) => pictureText(state, picture, path)),
      ...openedText(opened, paths.length),
    ],
    entries: [],
    answer: { pictures: found.map(({ picture, path }) => ({ ...picture, path })), opened },
  }

  /** How many were opened; null where there is no screen to open them on. */
  async function openSome(some: readonly string[]): Promise<number | null> {
    const isRemote = platform !== 'darwin' && platform !== 'win32' && !env.DISPLAY && !env.WAYLAND_DISPLAY
    if (isRemote) return null
    let count = 0
    for (const { opener, files } of openersFor(some, platform)) if (await start(opener)) count += files
    return count
  }
}

function picturesMeant(state: State, of: PicturesOf): PictureFacts[] {
  switch (of.of) {
    case 'job':
      return unsortedFirst(allPictures(state))
    case 'container':
      return picturesOf(state, { container: of.no })
    case 'step':
      return picturesOf(state, { step: of.no })
    case 'piece':
      return picturesOf(state, { piece: of.piece as PieceId })
    default:
      return of satisfies never
  }
}

/** Of a whole job only some are opened: best those of which nobody has said yet what they show. */
function unsortedFirst(pictures: readonly PictureFacts[]): PictureFacts[] {
  const isUnsorted = ({ belongs }: PictureFacts) => belongs === null
  return [...pictures.filter(isUnsorted), ...pictures.filter((picture) => !isUnsorted(picture))]
}

/** How a platform shows pictures, with the number of files that each start shows. */
export function openersFor(
  paths: readonly string[],
  platform: NodeJS.Platform,
): { opener: Opener; files: number }[] {
  const [first] = paths
  if (first === undefined) return []
  if (platform === 'darwin') {
    return [{ opener: { program: 'open', args: [...paths], cwd: dirname(first) }, files: paths.length }]
  }
  if (platform !== 'win32') {
    return paths.map((path) => ({
      opener: { program: 'xdg-open', args: [path], cwd: dirname(path) },
      files: 1,
    }))
  }
  // The program reads some characters as commands, and the folder may have any name: it gets the name of the file
  // alone, and only one that this program made.
  return paths
    .filter((path) => isCopyName(basename(path)))
    .map((path) => ({
      opener: {
        program: 'cmd',
        args: ['/d', '/c', 'start', '', basename(path)],
        cwd: dirname(path),
      },
      files: 1,
    }))
}

function startDetached({ program, args, cwd }: Opener): Promise<boolean> {
  return new Promise((resolve) => {
    const child = spawn(program, args, { cwd, detached: true, stdio: 'ignore', windowsHide: true })
    child.once('spawn', () => {
      child.unref()
      resolve(true)
    })
    child.once('error', () => resolve(false))
  })
}

function pictureText(state: State, { id, taken, belongs }: PictureFacts, path: string | null): string {
  const when = taken === null ? 'without a time' : taken.slice(0, 16).replace('T', ' ')
  const where = path === null ? 'its copy is missing: import its folder again' : plainText(path)
  return `${id}  ${when}  ${ownerName(state, belongs)}  ${where}`
}

function openedText(opened: number | null, all: number): string[] {
  if (all === 0) return []
  if (opened === null) return ['There is no screen here to open them on: open the paths where there is one.']
  if (opened === 0) return ['No program that opens pictures could be started: open the paths by hand.']
  return opened < all ? [`${counted(opened, 'picture')} opened of ${all}; the others lie beside.`] : []
}

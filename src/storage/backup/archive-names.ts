import { JOURNAL_NAME } from '../journal/journal-file.ts'
import { PHOTOS_NAME } from '../photo-files.ts'

/** The list of what an archive holds, a file in it. */
export const MANIFEST_NAME = 'manifest.json'

/** The name of a picture inside an archive. */
export function pictureEntry(name: string): string {
  return `${PHOTOS_NAME}/${name}`
}

/** The name that a picture has in the job, by its name inside an archive; null for any other file. */
export function pictureIn(entry: string): string | null {
  const [folder, name = '', ...deeper] = entry.split('/')
  return folder === PHOTOS_NAME && deeper.length === 0 && isPictureName(name) ? name : null
}

/** Whether a file of an archive is one that back-ups have, by its name: nothing leads out of the job's folder. */
export function isArchiveName(name: string): boolean {
  return name === MANIFEST_NAME || name === JOURNAL_NAME || isSetAsideName(name) || pictureIn(name) !== null
}

/**
 * Whether a file beside the journal was set aside from it: a torn end, what was cut off, the journal as it was before it was
 * mended, that of a merged copy. Signs of presence are called alike and are nothing to keep.
 */
export function isSetAsideName(name: string): boolean {
  return /^journal\.(?!open-)[a-z]+-[a-z0-9-]{1,60}$/.test(name)
}

/** A plain name of a file on every system, as the record allows it: no device, nothing that Windows would drop or read. */
export function isPictureName(name: string): boolean {
  return (
    /^(?!\.)[^/\\:*?"<>|\p{C}]{1,120}$/u.test(name) &&
    !/[. ]$/.test(name) &&
    !/^(?:con|prn|aux|nul|conin\$|conout\$|com[\d¹²³]|lpt[\d¹²³]) *(?:\.|$)/i.test(name)
  )
}

/** What two names have in common that are one name on some system. */
export function foldedName(name: string): string {
  return name.normalize('NFKC').toLowerCase()
}

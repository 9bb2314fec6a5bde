import type { Entry } from '../journal/entry.ts'
import { picturesIn } from '../journal/recorded-pictures.ts'

/**
 * Entries of a copy with its pictures under the names that their files got here. One whose file did not come along keeps
 * its name, unless that is the name of another picture here.
 */
export function namedHere(
  ours: readonly Entry[],
  fits: readonly Entry[],
  names: ReadonlyMap<string, string>,
): Entry[] {
  const taken = new Set(picturesIn(ours).map(({ file }) => file.toLowerCase()))
  return fits.map((entry) => {
    if (entry.type !== 'pictures-added') return entry
    const pictures = entry.pictures.map((picture) => {
      const file = names.get(picture.sha256) ?? freeName(picture.file, taken)
      taken.add(file.toLowerCase())
      return { ...picture, file }
    })
    return { ...entry, pictures }
  })
}

/** `lid.jpg`, else `lid-2.jpg`: as short as the longest name that an entry takes. */
function freeName(file: string, taken: ReadonlySet<string>): string {
  if (!taken.has(file.toLowerCase())) return file
  const { stem, ending } = nameParts(file)
  for (let number = 2; ; number += 1) {
    const behind = `-${number}${ending}`
    const name = `${stem.slice(0, LONGEST_NAME - behind.length)}${behind}`
    if (!taken.has(name.toLowerCase())) return name
  }
}

/** `lid` and `.jpg`. */
function nameParts(file: string): { stem: string; ending: string } {
  const [, stem = file, ending = ''] = /^(.+)(\.[^.]{1,8})$/.exec(file) ?? []
  return { stem, ending }
}

const LONGEST_NAME = 120

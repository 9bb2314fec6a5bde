/**
 * Why an archive is not taken:
 * - not-an-archive: no ZIP file, or one that was cut
 * - foreign: it has no list of its files, or one that no back-up has
 * - newer: a newer program made it
 * - name: a file in it has a name that no back-up has
 * - twice: two files in it have the same name, or one that differs only in capitals
 * - link: a file in it is a link or a folder
 * - encrypted: a file in it is encrypted
 * - packed: a file in it is packed as no back-up packs it, or into far too little
 * - too-large: it holds more than any job
 * - not-listed, missing: the list of its files and what is there do not agree
 * - changed: the bytes of a file are not those that were put in
 * - journal: its list tells of another journal than the one in it
 */
export type BadArchiveCode =
  | 'not-an-archive'
  | 'foreign'
  | 'newer'
  | 'name'
  | 'twice'
  | 'link'
  | 'encrypted'
  | 'packed'
  | 'too-large'
  | 'not-listed'
  | 'missing'
  | 'changed'
  | 'journal'

/** An archive that is not what this program wrote. Nothing of it is to be used. */
export class BadArchive extends Error {
  override readonly name = 'BadArchive'
  readonly code: BadArchiveCode
  readonly path: string
  /** The file in it that gives it away, fit to be shown. */
  readonly file: string | null

  constructor(code: BadArchiveCode, path: string, file: string | null = null, cause?: unknown) {
    super(`${path}: ${code}${file === null ? '' : ` (${file})`}`, { cause })
    this.code = code
    this.path = path
    this.file = file === null ? null : file.replaceAll(/\p{C}/gu, '�').slice(0, SHOWN_CHARACTERS)
  }
}

const SHOWN_CHARACTERS = 60
